import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { createFft } from "./fft.ts";
import { joined } from "./join.ts";
import { keyedTones } from "./keyed.ts";
import { prng } from "./random.ts";
import { createResampler, resample } from "./resample.ts";

const RATES_HZ = [7_000, 8_000, 11_025, 12_001, 16_000, 22_050, 44_100, 48_000, 96_000, 191_999, 192_000];

function through(samples: ArrayLike<number>, rateHz: number, blockSize: () => number = () => 1_000): Float64Array {
	const resampler = createResampler(rateHz);
	const frames: Float64Array[] = [];
	const all = Float64Array.from(samples);
	for (let at = 0; at < all.length; ) {
		const size = blockSize();
		frames.push(...resampler.push(all.subarray(at, at + size)));
		at += size;
	}
	frames.push(...resampler.end());
	for (const frame of frames) expect(frame).toHaveLength(256);
	return joined(...frames);
}

const sine = (toneHz: number, rateHz: number, seconds = 0.4) => keyedTones([{ toneHz, seconds }], { rateHz, amplitude: 1 });
function greatestDifference(a: Float64Array, b: Float64Array): number {
	expect(a).toHaveLength(b.length);
	return a.reduce((greatest, value, i) => Math.max(greatest, Math.abs(value - b[i]!)), 0);
}

const middle = (samples: Float64Array) => samples.subarray(800, 2_400);

/** dB of the strongest tone up to `highestHz` in 2048 samples, against a sine of peak 1; Blackman and Harris's window, four terms. */
function highestDb(samples: Float64Array, highestHz: number): number {
	const fft = createFft(2_048);
	const spectrum = fft.createComplexArray();
	const terms = [0.35875, -0.48829, 0.14128, -0.01168];
	const windowed = samples
		.subarray(0, 2_048)
		.map((sample, i) => sample * terms.reduce((sum, term, k) => sum + term * Math.cos((2 * Math.PI * k * i) / 2_048), 0));
	fft.realTransform(spectrum, windowed);
	let highest = 0;
	for (let bin = 0; bin <= (highestHz / 8_000) * 2_048; bin++)
		highest = Math.max(highest, Math.hypot(spectrum[2 * bin]!, spectrum[2 * bin + 1]!));
	return 20 * Math.log10(highest / (0.35875 * 1_024));
}

describe("createResampler", () => {
	it.each(RATES_HZ)("keeps level and time of 100 to 3400 Hz, from %d Hz", (rateHz) => {
		const highest = Math.min(3_400, 0.46 * rateHz);
		let compared = 0;
		for (const toneHz of [100, 317, 1_000, 1_700, 2_500, 3_000, highest]) {
			const wanted = middle(sine(toneHz, 8_000));
			const got = middle(through(sine(toneHz, rateHz), rateHz));
			// 0.1 dB is 0.0116; a wrong delay of a hundredth of a sample would be 0.026 at 3.3 kHz
			expect(greatestDifference(got, wanted)).toBeLessThan(0.003);
			compared += wanted.length;
		}
		expect(compared).toBe(7 * 1_600);
	});

	it.each(RATES_HZ.filter((rateHz) => rateHz > 8_000))("folds nothing to below 3400 Hz, from %d Hz", (rateHz) => {
		let worstDb = Number.NEGATIVE_INFINITY;
		let tones = 0;
		for (let toneHz = 4_600; toneHz < rateHz / 2; toneHz *= 1.06, tones++) {
			worstDb = Math.max(worstDb, highestDb(through(sine(toneHz, rateHz), rateHz).subarray(600), 3_380));
		}
		expect(tones).toBeGreaterThan(rateHz > 16_000 ? 14 : 2);
		expect(worstDb).toBeLessThan(-60);
	});

	it("answers the same to the bit whatever the blocks", () => {
		const random = prng(5);
		for (const rateHz of [7_000, 8_000, 12_001, 44_100, 48_000, 191_999]) {
			const samples = Float64Array.from({ length: 30_000 }, () => random() - 0.5);
			const whole = through(samples, rateHz, () => samples.length);
			for (const size of [() => 1_999, () => 1 + Math.floor(random() * 9_000)]) expect(through(samples, rateHz, size)).toEqual(whole);
			expect(through(samples.subarray(0, 3_000), rateHz, () => 1)).toEqual(through(samples.subarray(0, 3_000), rateHz));
			expect(Math.abs(whole.length - (30_000 * 8_000) / rateHz)).toBeLessThan(257);
		}
	});

	it.each([12_001, 44_100])("keeps time over two minutes, from %d Hz", (rateHz) => {
		const got = through(sine(1_234.5, rateHz, 120), rateHz, () => 65_536);
		const from = got.length - 10 * 256;
		const wanted = Float64Array.from({ length: 1_600 }, (_, i) => Math.sin((2 * Math.PI * 1_234.5 * (from + i)) / 8_000));
		expect(greatestDifference(got.subarray(from, from + 1_600), wanted)).toBeLessThan(0.002);
	});

	it("counts what is no number and takes it as 0", () => {
		const resampler = createResampler(8_000);
		const [frame] = [
			...resampler.push([1, Number.NaN, Number.POSITIVE_INFINITY, -1, Number.NEGATIVE_INFINITY, -1e300]),
			...resampler.end(),
		];
		expect(frame!.subarray(0, 7)).toEqual(Float64Array.of(1, 0, 0, -1, 0, 0, 0));
		expect(resampler.badSamples()).toBe(4);
	});

	it.each([6_999, 192_001, 8_000.5, 0, -1, Number.NaN, Number.POSITIVE_INFINITY])("refuses %d Hz", (rateHz) => {
		expect(() => createResampler(rateHz)).toThrow(RangeError);
	});

	it("gives nothing for nothing", () => {
		const resampler = createResampler(48_000);
		expect([...resampler.push([]), ...resampler.end()]).toEqual([]);
	});
});

/** Tones and truth as `tools/oracles/signals.py` makes them. */
function oracleTones(rateHz: number, seconds: number): Float64Array {
	const low = Array.from({ length: 40 }, (_, i) => ({ toneHz: 137 + 81.3 * i, phase: (i * i) % 7 })).filter(
		({ toneHz }) => toneHz < 0.42 * rateHz,
	);
	const high = Array.from({ length: 60 }, (_, i) => ({ toneHz: 4_700 + 1_733.1 * i, phase: (i * i) % 5 })).filter(
		({ toneHz }) => toneHz < 0.49 * rateHz,
	);
	return Float64Array.from({ length: seconds * rateHz }, (_, n) =>
		[...low, ...high].reduce((sum, { toneHz, phase }) => sum + 0.02 * Math.sin((2 * Math.PI * toneHz * n) / rateHz + phase), 0),
	);
}

describe("against scipy's resample_poly, tones in the pass band and above it", () => {
	const file = join(import.meta.dirname, "../../truth/resampled.csv");
	const { rows } = readCsv(file, readFileSync(file, "utf8"), { required: ["rate_hz", "n", "value"] });
	it.each([...new Set(rows.map(({ cells }) => Number(cells["rate_hz"])))])("from %d Hz", (rateHz) => {
		const samples = oracleTones(rateHz, 0.25);
		const truth = rows.filter(({ cells }) => Number(cells["rate_hz"]) === rateHz);
		expect(truth).toHaveLength(80);
		for (const [answer, most] of [
			[through(samples, rateHz), 5e-4],
			[resample(samples, rateHz, 8_000), 3e-5],
		] as const) {
			const worst = Math.max(...truth.map(({ cells }) => Math.abs(answer[Number(cells["n"])]! - Number(cells["value"]))));
			expect(worst).toBeLessThan(most);
		}
	});
});

describe("resample", () => {
	it.each(RATES_HZ)("there and back is what it was, by way of %d Hz", (rateHz) => {
		for (const toneHz of [100, 1_000, 0.4 * Math.min(rateHz, 8_000)]) {
			const there = resample(sine(toneHz, 8_000), 8_000, rateHz);
			expect(there).toHaveLength(Math.round(0.4 * rateHz));
			const back = middle(resample(there, rateHz, 8_000));
			const was = middle(sine(toneHz, 8_000));
			expect(greatestDifference(back, was)).toBeLessThan(0.001);
		}
	});
});
