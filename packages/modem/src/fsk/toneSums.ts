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
	const make = () => new Float64Array(most + 2);
	const [lowRe, lowIm, highRe, highIm] = [make(), make(), make(), make()];
	return (samples, lowHz, highHz) => {
		const [lowTurn, highTurn] = [(2 * Math.PI * lowHz) / MODEM_RATE_HZ, (2 * Math.PI * highHz) / MODEM_RATE_HZ];
		const low = { re1: cos(lowTurn), im1: -sin(lowTurn), re2: cos(2 * lowTurn), im2: -sin(2 * lowTurn) };
		const high = { re1: cos(highTurn), im1: -sin(highTurn), re2: cos(2 * highTurn), im2: -sin(2 * highTurn) };
		let lowOscRe = 1;
		let lowOscIm = 0;
		let highOscRe = 1;
		let highOscIm = 0;
		let lr = 0;
		let li = 0;
		let hr = 0;
		let hi = 0;
		// Both tones in one loop and by two samples at a time: an oscillator has to wait for its own last turn.
		for (let i = 0; i < samples.length; i += 2) {
			const x = samples[i]!;
			const y = i + 1 < samples.length ? samples[i + 1]! : 0;
			lr += x * lowOscRe;
			li += x * lowOscIm;
			hr += x * highOscRe;
			hi += x * highOscIm;
			lowRe[i + 1] = lr;
			lowIm[i + 1] = li;
			highRe[i + 1] = hr;
			highIm[i + 1] = hi;
			lr += y * (lowOscRe * low.re1 - lowOscIm * low.im1);
			li += y * (lowOscRe * low.im1 + lowOscIm * low.re1);
			hr += y * (highOscRe * high.re1 - highOscIm * high.im1);
			hi += y * (highOscRe * high.im1 + highOscIm * high.re1);
			lowRe[i + 2] = lr;
			lowIm[i + 2] = li;
			highRe[i + 2] = hr;
			highIm[i + 2] = hi;
			const lowNext = lowOscRe * low.re2 - lowOscIm * low.im2;
			lowOscIm = lowOscRe * low.im2 + lowOscIm * low.re2;
			lowOscRe = lowNext;
			const highNext = highOscRe * high.re2 - highOscIm * high.im2;
			highOscIm = highOscRe * high.im2 + highOscIm * high.re2;
			highOscRe = highNext;
		}
		return { lowRe, lowIm, highRe, highIm, length: samples.length };
	};
}
