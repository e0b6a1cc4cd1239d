import { cos, sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";

/**
 * Running sums of a stretch of samples against two tones: the correlation over any part of it is a difference of two of them.
 * Phases are those of oscillators that start at 0 with the stretch.
 */
export interface ToneSums {
	readonly lowRe: Float64Array;
	readonly lowIm: Float64Array;
	readonly highRe: Float64Array;
	readonly highIm: Float64Array;
	/** Samples summed: number of the last sum. */
	readonly length: number;
}

/** Makes sums of up to `most` samples. The arrays are used again: sums are good until the next ones are asked for. */
export function createToneSums(most: number): (samples: Float64Array, lowHz: number, highHz: number) => ToneSums {
	const make = () => new Float64Array(most + 1);
	const [lowRe, lowIm, highRe, highIm] = [make(), make(), make(), make()];
	return (samples, lowHz, highHz) => {
		sumInto(samples, lowHz, lowRe, lowIm);
		sumInto(samples, highHz, highRe, highIm);
		return { lowRe, lowIm, highRe, highIm, length: samples.length };
	};
}

function sumInto(samples: Float64Array, toneHz: number, sumRe: Float64Array, sumIm: Float64Array): void {
	const turn = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	const turnRe = cos(turn);
	const turnIm = -sin(turn);
	let oscRe = 1;
	let oscIm = 0;
	let re = 0;
	let im = 0;
	for (let i = 0; i < samples.length; i++) {
		const x = samples[i]!;
		re += x * oscRe;
		im += x * oscIm;
		sumRe[i + 1] = re;
		sumIm[i + 1] = im;
		const next = oscRe * turnRe - oscIm * turnIm;
		oscIm = oscRe * turnIm + oscIm * turnRe;
		oscRe = next;
	}
}
