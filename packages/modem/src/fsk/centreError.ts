import { atan2 } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import type { BitClock } from "./bitClock.ts";
import type { ToneSums } from "./toneSums.ts";

export interface CentreError {
	/** Hz by which both tones lie higher than assumed. */
	readonly hz: number;
	readonly variance: number;
}

/** From how much the phase turns from the first half of each bit to the second: needs no phase from bit to bit. */
export function centreError(sums: ToneSums, clock: BitClock, first: number, softs: Float64Array): CentreError {
	const count = softs.length;
	const within = (sample: number) => Math.min(sums.length, Math.max(0, Math.round(sample)));
	let re = 0;
	let im = 0;
	let size = 0;
	for (let k = 0; k < count; k++) {
		const start = clock.startSample + (first + k) * clock.bitSamples;
		const from = within(start);
		const middle = within(start + 0.5 * clock.bitSamples);
		const to = within(start + clock.bitSamples);
		const sumRe = softs[k]! > 0 ? sums.highRe : sums.lowRe;
		const sumIm = softs[k]! > 0 ? sums.highIm : sums.lowIm;
		const ar = sumRe[middle]! - sumRe[from]!;
		const ai = sumIm[middle]! - sumIm[from]!;
		const br = sumRe[to]! - sumRe[middle]!;
		const bi = sumIm[to]! - sumIm[middle]!;
		re += br * ar + bi * ai;
		im += bi * ar - br * ai;
		size += Math.sqrt((ar * ar + ai * ai) * (br * br + bi * bi));
	}
	const hzPerRadian = MODEM_RATE_HZ / (Math.PI * clock.bitSamples);
	return { hz: atan2(im, re) * hzPerRadian, variance: angleVariance(re, im, size, count) * hzPerRadian * hzPerRadian };
}

/** Variance, in radians squared, of the angle of a sum of `count` vectors of total length `size`, from how well they agree. */
export function angleVariance(re: number, im: number, size: number, count: number): number {
	const agreement = (re * re + im * im) / (size * size + 1e-300);
	return (1 - Math.min(agreement, 0.9999)) / (2 * count * agreement + 1e-9);
}
