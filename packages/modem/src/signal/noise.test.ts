import { describe, expect, it } from "vitest";
import { meanPower } from "./join.ts";
import { keyedTones } from "./keyed.ts";
import { whiteNoise, withImpulses, withNoiseAtEbN0, withNoiseAtSnr } from "./noise.ts";
import { prng } from "./random.ts";

const SIGNAL = keyedTones([{ toneHz: 1_700, seconds: 60 }]);

describe("added noise", () => {
	const noiseOf = (noisy: Float64Array) => noisy.map((sample, i) => sample - SIGNAL[i]!);

	it("has the power that Eb/N0 asks for", () => {
		const noise = noiseOf(withNoiseAtEbN0(SIGNAL, 9, { bitsPerSecond: 100, random: prng(1) }));
		// Eb = 0.125 / 100, N0 = Eb / 10^0.9, over 4000 Hz
		expect(meanPower(noise) / ((0.125 / 100 / 10 ** 0.9) * 4_000)).toBeCloseTo(1, 2);
	});

	it("has the power that a ratio in 2700 Hz asks for", () => {
		const noise = noiseOf(withNoiseAtSnr(SIGNAL, -5, { random: prng(2), signalPower: 0.25 }));
		expect(meanPower(noise) / ((0.25 / 10 ** -0.5) * (4_000 / 2_700))).toBeCloseTo(1, 2);
	});

	it("is white: neighbours to ten samples away are unrelated, within four sigma", () => {
		const noise = whiteNoise(400_000, 1, prng(3));
		for (let lag = 1; lag <= 10; lag++) {
			let sum = 0;
			for (let i = lag; i < noise.length; i++) sum += noise[i]! * noise[i - lag]!;
			expect(Math.abs(sum / noise.length)).toBeLessThan(4 / Math.sqrt(noise.length));
		}
	});
});

describe("withImpulses", () => {
	it("adds about as many as asked, of the energy asked, and the same for the same seed", () => {
		const make = () => withImpulses(new Float64Array(8_000 * 600), { random: prng(4), perSecond: 2, amplitude: 3, decayS: 0.001 });
		const samples = make();
		let starts = 0;
		for (let i = 1; i < samples.length; i++) if (samples[i] !== 0 && samples[i - 1] === 0) starts++;
		expect(Math.abs(starts - 1_200)).toBeLessThan(4 * Math.sqrt(1_200));
		// each: 9 (1 + k^2 + k^4 ...) = 9 / (1 - k^2), k = exp(-1 / 8)
		const energy = meanPower(samples) * samples.length;
		expect(energy / ((1_200 * 9) / (1 - Math.exp(-0.25)))).toBeCloseTo(1, 0.6);
		expect(make()).toEqual(samples);
	});
});
