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
}

export function toneSums(samples: Float64Array, lowHz: number, highHz: number): ToneSums {
	const [lowRe, lowIm] = runningSums(samples, lowHz);
	const [highRe, highIm] = runningSums(samples, highHz);
	return { lowRe, lowIm, highRe, highIm };
}

function runningSums(samples: Float64Array, toneHz: number): readonly [Float64Array, Float64Array] {
	const turn = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	const [turnRe, turnIm] = [cos(turn), -sin(turn)];
	const sumRe = new Float64Array(samples.length + 1);
	const sumIm = new Float64Array(samples.length + 1);
	let [oscRe, oscIm, re, im] = [1, 0, 0, 0];
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
	return [sumRe, sumIm];
}
