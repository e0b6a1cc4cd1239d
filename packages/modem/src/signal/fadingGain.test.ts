import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { fadingGain } from "./fadingGain.ts";
import { createFft } from "./fft.ts";
import { prng } from "./random.ts";

// As in truth/fading.csv: 64 samples a second, sigma 1 Hz. So much time holds 0.28 s / sigma an independent value: 58 000 of them.
const COUNT = 1 << 20;
const SECONDS = COUNT / 64;
const GAIN = fadingGain(COUNT, 1, prng(20261127), 64);
const ENVELOPE = GAIN.real.map((real, n) => Math.hypot(real, GAIN.imaginary[n]!));

function correlation(lag: number): number {
	let sum = 0;
	for (let n = lag; n < COUNT; n++) sum += GAIN.real[n]! * GAIN.real[n - lag]! + GAIN.imaginary[n]! * GAIN.imaginary[n - lag]!;
	return sum / (COUNT - lag);
}

describe("fadingGain", () => {
	it("has mean power 1, half in each part, and the parts unrelated", () => {
		let [real, imaginary, cross] = [0, 0, 0];
		for (let n = 0; n < COUNT; n++) {
			real += GAIN.real[n]! ** 2 / COUNT;
			imaginary += GAIN.imaginary[n]! ** 2 / COUNT;
			cross += (GAIN.real[n]! * GAIN.imaginary[n]!) / COUNT;
		}
		// four sigma: 4 sqrt(2) 0.5 / sqrt(58 000) = 0.012
		expect(Math.abs(real - 0.5)).toBeLessThan(0.012);
		expect(Math.abs(imaginary - 0.5)).toBeLessThan(0.012);
		expect(Math.abs(cross)).toBeLessThan(0.009);
	});

	it("has Rayleigh's envelope: Kolmogorov's distance below its 99.9 % point", () => {
		const apart = ENVELOPE.filter((_, n) => n % 32 === 0).sort(); // half a second: correlation of power exp(-9.9)
		const distance = apart.reduce((most, r, i) => {
			const chance = 1 - Math.exp(-r * r);
			return Math.max(most, chance - i / apart.length, (i + 1) / apart.length - chance);
		}, 0);
		expect(apart.length).toBe(32_768);
		expect(distance).toBeLessThan(1.95 / Math.sqrt(apart.length));
	});

	it("has a Gaussian Doppler spectrum about 0 Hz: moments 0, 1 and 3 sigma^4", () => {
		const fft = createFft(COUNT);
		const [a, b] = [fft.createComplexArray(), fft.createComplexArray()];
		fft.realTransform(a, GAIN.real);
		fft.realTransform(b, GAIN.imaginary);
		const moments = [0, 0, 0, 0, 0];
		for (let bin = 0; bin < COUNT / 2; bin++) {
			const f = (64 * bin) / COUNT;
			const [ar, ai, br, bi] = [a[2 * bin]!, a[2 * bin + 1]!, b[2 * bin]!, b[2 * bin + 1]!];
			const up = (ar - bi) ** 2 + (ai + br) ** 2;
			const down = bin === 0 ? 0 : (ar + bi) ** 2 + (br - ai) ** 2;
			for (let k = 0; k <= 4; k++) moments[k]! += f ** k * (up + (k % 2 === 0 ? down : -down));
		}
		// four sigma of power-weighted moments over 58 000 independent values, and 1e-3 for the cubic between points
		expect(Math.abs(moments[1]! / moments[0]!)).toBeLessThan(0.017);
		expect(Math.abs(moments[2]! / moments[0]! - 1)).toBeLessThan(0.03);
		expect(Math.abs(moments[4]! / moments[0]! - 3)).toBeLessThan(0.2);
	});

	it("has the quantiles, the correlation and the crossings of an independent process", () => {
		const file = join(import.meta.dirname, "../../truth/fading.csv");
		const { rows } = readCsv(file, readFileSync(file, "utf8"), { required: ["what", "at", "value"] });
		const sorted = ENVELOPE.slice().sort();
		const compared = { quantile: 0, correlation: 0, crossings: 0 };
		for (const { cells } of rows) {
			const [at, value] = [Number(cells["at"]), Number(cells["value"])];
			if (cells["what"] === "quantile") {
				expect(Math.abs(sorted[Math.floor(at * COUNT)]! / value - 1)).toBeLessThan(at < 0.05 ? 0.08 : 0.02);
				compared.quantile++;
			} else if (cells["what"] === "correlation") {
				expect(Math.abs(correlation(Math.round(at * 64)) - value)).toBeLessThan(0.02);
				compared.correlation++;
			} else {
				let crossings = 0;
				for (let n = 1; n < COUNT; n++) if (ENVELOPE[n - 1]! < at && ENVELOPE[n]! >= at) crossings++;
				// four sigma of as many independent crossings
				expect(Math.abs(crossings / SECONDS / value - 1)).toBeLessThan(4 / Math.sqrt(crossings));
				compared.crossings++;
			}
		}
		expect(compared).toEqual({ quantile: 7, correlation: 5, crossings: 5 });
	});

	it("is the same at a higher sample rate, for the same seed", () => {
		const fine = fadingGain(640, 1, prng(3), 640);
		const coarse = fadingGain(64, 1, prng(3), 64);
		for (let n = 0; n < 64; n++) expect(fine.real[10 * n]).toBeCloseTo(coarse.real[n]!, 9);
	});
});
