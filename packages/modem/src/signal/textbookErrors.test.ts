import { describe, expect, it } from "vitest";
import { throughHfChannel } from "./hfChannel.ts";
import { meanPower } from "./join.ts";
import { keyedBits } from "./keyed.ts";
import { withNoiseAtEbN0 } from "./noise.ts";
import { prng } from "./random.ts";

// Two orthogonal tones (200 Hz apart at 100 Bd), the stronger of the two energies taken in each bit: the receiver that the textbook's
// formulas are of. They hold maker, noise and fading to an absolute scale. Proakis, Digital Communications, non-coherent FSK; from memory.
const KEYING = { baud: 100, lowHz: 1_600, highHz: 1_800 };
const BIT_SAMPLES = 80;

function errorsOf(samples: Float64Array, bits: Uint8Array): number {
	const energy = (from: number, toneHz: number) => {
		let [real, imaginary] = [0, 0];
		for (let n = 0; n < BIT_SAMPLES; n++) {
			real += samples[from + n]! * Math.cos((2 * Math.PI * toneHz * n) / 8_000);
			imaginary += samples[from + n]! * Math.sin((2 * Math.PI * toneHz * n) / 8_000);
		}
		return real * real + imaginary * imaginary;
	};
	return bits.reduce((errors, bit, i) => {
		const heard = energy(i * BIT_SAMPLES, KEYING.highHz) > energy(i * BIT_SAMPLES, KEYING.lowHz) ? 1 : 0;
		return errors + (heard === bit ? 0 : 1);
	}, 0);
}

const random = prng(20261127);
const BITS = Uint8Array.from({ length: 30_000 }, () => (random() < 0.5 ? 0 : 1));

describe("errors of the textbook's receiver", () => {
	it.each([6, 8])("in white noise at Eb/N0 of %d dB are 0.5 exp(-Eb/2N0)", (ebN0Db) => {
		const signal = keyedBits(BITS, KEYING);
		const errors = errorsOf(withNoiseAtEbN0(signal, ebN0Db, { bitsPerSecond: 100, random: prng(1) }), BITS);
		const wanted = BITS.length * 0.5 * Math.exp(-(10 ** (ebN0Db / 10)) / 2);
		expect(Math.abs(errors - wanted)).toBeLessThan(4 * Math.sqrt(wanted));
	});

	it("in slow Rayleigh fading at a mean Eb/N0 of 10 dB are 1 / (2 + Eb/N0)", () => {
		const signal = keyedBits(BITS, KEYING);
		const faded = throughHfChannel(signal, { delayS: 0, spreadHz: 4 }, prng(2));
		const errors = errorsOf(withNoiseAtEbN0(faded, 10, { bitsPerSecond: 100, random: prng(3), signalPower: meanPower(signal) }), BITS);
		const wanted = BITS.length / 12;
		// 300 s hold 2100 independent fades; the chance of an error has a standard deviation of 0.126 over them: four sigma are 13 %
		expect(Math.abs(errors / wanted - 1)).toBeLessThan(0.13);
	});
});
