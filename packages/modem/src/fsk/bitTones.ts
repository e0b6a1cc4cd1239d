import type { BitClock } from "./bitClock.ts";
import type { ToneSums } from "./toneSums.ts";

/** Correlations of each bit with either tone. */
export interface BitTones {
	readonly lowRe: Float64Array;
	readonly lowIm: Float64Array;
	readonly highRe: Float64Array;
	readonly highIm: Float64Array;
	readonly lowEnergy: Float64Array;
	readonly highEnergy: Float64Array;
}

/** Those of `count` bits from bit `first` on. */
export function bitTones(sums: ToneSums, { startSample, bitSamples }: BitClock, first: number, count: number): BitTones {
	const make = () => new Float64Array(count);
	const bits = { lowRe: make(), lowIm: make(), highRe: make(), highIm: make(), lowEnergy: make(), highEnergy: make() };
	const last = sums.length;
	for (let i = 0; i < count; i++) {
		const start = startSample + (first + i) * bitSamples;
		const a = Math.min(last, Math.max(0, Math.round(start)));
		const b = Math.min(last, Math.max(0, Math.round(start + bitSamples)));
		const lr = sums.lowRe[b]! - sums.lowRe[a]!;
		const li = sums.lowIm[b]! - sums.lowIm[a]!;
		const hr = sums.highRe[b]! - sums.highRe[a]!;
		const hi = sums.highIm[b]! - sums.highIm[a]!;
		bits.lowRe[i] = lr;
		bits.lowIm[i] = li;
		bits.highRe[i] = hr;
		bits.highIm[i] = hi;
		bits.lowEnergy[i] = lr * lr + li * li;
		bits.highEnergy[i] = hr * hr + hi * hi;
	}
	return bits;
}
