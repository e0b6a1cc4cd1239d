import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { joined } from "../signal/join.ts";
import { createResampler } from "../signal/resample.ts";
import { readWav } from "../signal/wav.ts";
import { chartWidth } from "./chartFigures.ts";
import { chartsIn, psnrDb } from "./charts.sample.ts";
import { createDiscriminator } from "./discriminator.ts";
import { createToneRecogniser } from "./toneRecogniser.ts";

const TRUTH = join(import.meta.dirname, "../../truth");
const RECORDINGS = join(import.meta.dirname, "../../../../../shared/recordings");
const hasRecordings = existsSync(RECORDINGS);
if (!hasRecordings) console.info("recordings are not at hand (../shared/recordings): the chart recognisers were not tried on them");

/** A sound at the modem's rate. */
function sound(folder: string, name: string): Float64Array {
	const { data, format } = readWav(name, readFileSync(join(folder, name)));
	const resampler = createResampler(format.rateHz);
	return joined(...resampler.push(data), ...resampler.end());
}

/** The picture of a binary grey bitmap. */
function bitmap(bytes: Uint8Array) {
	const [, width, height] = new TextDecoder("latin1").decode(bytes.subarray(0, 20)).split(/\s+/).map(Number);
	return { width: width!, height: height!, pixels: bytes.subarray(bytes.length - width! * height!) };
}

describe("a chart made apart from the program", () => {
	it("is received: times, clock, tuning, picture", () => {
		const heard = chartsIn(sound(TRUTH, "chart.wav"));
		expect(heard.length).toBe(1);
		const chart = heard[0]!;
		const original = bitmap(readFileSync(join(TRUTH, "chart.pgm")));
		expect([original.width, original.height]).toEqual([181, 24]);
		expect(chart).toMatchObject({ ioc: 576, iocFrom: "start tone", linesPerMinute: 120, began: "start tone", ended: "stop tone" });
		expect([chart.image.width, chart.image.height]).toEqual([chartWidth(576), 24]);
		expect(chart.startS).toBeLessThan(0.3);
		expect(Math.abs(chart.endS - 24)).toBeLessThan(0.05);
		// ten seconds of chart tell the clock to a few parts in a million
		expect(Math.abs(chart.clockPpm - 150)).toBeLessThan(10);
		expect(Math.abs(chart.audioHz - 1_917 / 1.000_15)).toBeLessThan(2);
		expect(Math.abs(chart.blackHz - 1_517)).toBeLessThan(4);
		expect(Math.abs(chart.whiteHz - 2_317)).toBeLessThan(4);
		const pixels = new Uint8Array(chart.image.width * original.height).map((_, n) => {
			const [x, y] = [n % chart.image.width, Math.floor(n / chart.image.width)];
			return original.pixels[y * original.width + Math.floor(((x + 0.5) * original.width) / chart.image.width)]!;
		});
		const ratio = psnrDb(chart.image, { width: chart.image.width, height: 24, pixels });
		console.info(
			`chart of the oracle: PSNR ${ratio.toFixed(1)} dB, clock ${chart.clockPpm.toFixed(1)} ppm, middle ${chart.audioHz.toFixed(1)} Hz`,
		);
		expect(ratio).toBeGreaterThan(20);
	});
});

describe.skipIf(!hasRecordings)("recordings of a second each", () => {
	it("tell start and stop", () => {
		const expected = { "chart-start300.wav": 300, "chart-start300-noisy.wav": 300, "chart-stop450.wav": 450, "chart-image.wav": null };
		for (const [name, toneHz] of Object.entries(expected)) {
			const samples = sound(RECORDINGS, name);
			const [discriminator, tones, hz] = [createDiscriminator(1_900, "middle"), createToneRecogniser(), new Float64Array(256)];
			const found = new Set<number>();
			for (let n = 0; n + 256 <= samples.length; n += 256) {
				discriminator.frame(samples.subarray(n, n + 256), hz);
				const tone = tones.frame(hz);
				if (tone !== null) found.add(tone.toneHz);
			}
			expect([...found]).toEqual(toneHz === null ? [] : [toneHz]);
		}
	});

	it("put together give a chart of 120 lines a minute between 1499 and 2298 Hz, and its picture's two lines again and again", () => {
		const second = (name: string) => sound(RECORDINGS, name).subarray(0, MODEM_RATE_HZ);
		const several = (name: string, times: number) => Array.from({ length: times }, () => second(name));
		const parts = [...several("chart-start300.wav", 5), ...several("chart-image.wav", 12), ...several("chart-stop450.wav", 5)];
		const heard = chartsIn(joined(...parts));
		expect(heard.length).toBe(1);
		const chart = heard[0]!;
		expect(chart).toMatchObject({ ioc: 576, linesPerMinute: 120, began: "start tone", ended: "stop tone" });
		expect(Math.abs(chart.image.height - 24)).toBeLessThanOrEqual(1);
		console.info(
			`recorded lines: black ${chart.blackHz.toFixed(0)}, white ${chart.whiteHz.toFixed(0)} Hz, ${chart.clockPpm.toFixed(1)} ppm`,
		);
		expect(Math.abs(chart.blackHz - 1_499)).toBeLessThan(20);
		expect(Math.abs(chart.whiteHz - 2_298)).toBeLessThan(20);
	});

	it("of other emissions and noise give none", () => {
		const names = readdirSync(RECORDINGS).filter((name) => /^(?:neg|noise|text|teletype|time|tones)-.*\.wav$/.test(name));
		for (const name of names) expect([name, chartsIn(sound(RECORDINGS, name))]).toEqual([name, []]);
		expect(names.length).toBeGreaterThanOrEqual(20);
	});
});
