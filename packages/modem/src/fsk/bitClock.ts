import type { ToneSums } from "./toneSums.ts";

/** Where bits lie in a stretch: sample at which bit 0 starts, and samples a bit. */
export interface BitClock {
	readonly startSample: number;
	readonly bitSamples: number;
}

/** Steps of a bit at which the tones' energies are worked out: a power of 2. */
const STEPS_PER_BIT = 16;
/** Bits added up before clocks are told apart: the widest error is 0.18 of a bit over them. */
const GROUP_BITS = 16;
/** Greatest clock error looked for, and the step between those tried. */
const WIDEST_ERROR = 0.011;
const ERROR_STEP = 0.001;

/**
 * The clock by which one tone at a time is strongest over a whole stretch, and by how many deviations of chance it is. Energies are
 * first added up over a few bits in which no clock looked for runs away from the nominal one.
 */
export function findClock(sums: ToneSums, nominalBitSamples: number): { readonly clock: BitClock; readonly deviations: number } {
	const step = nominalBitSamples / STEPS_PER_BIT;
	const length = Math.round(nominalBitSamples);
	const count = Math.max(0, Math.floor((sums.length - length) / step) + 1);
	const groups = Math.floor(count / (GROUP_BITS * STEPS_PER_BIT));
	const used = groups * GROUP_BITS * STEPS_PER_BIT;
	const folded = new Float64Array(groups * STEPS_PER_BIT);
	let mean = 0;
	let square = 0;
	for (let i = 0; i < used; i++) {
		const value = strongest(sums, Math.round(i * step), length);
		folded[Math.floor(i / (GROUP_BITS * STEPS_PER_BIT)) * STEPS_PER_BIT + (i % STEPS_PER_BIT)]! += value;
		mean += value / used;
		square += (value * value) / used;
	}
	let best = -1;
	let clock: BitClock = { startSample: 0, bitSamples: nominalBitSamples };
	const errors = Math.round(WIDEST_ERROR / ERROR_STEP);
	for (let e = -errors; e <= errors; e++) {
		const drift = e * ERROR_STEP * STEPS_PER_BIT; // steps a bit
		for (let phase = 0; phase < STEPS_PER_BIT; phase++) {
			let sum = 0;
			for (let g = 0; g < groups; g++) {
				const at = phase + Math.round((g + 0.5) * GROUP_BITS * drift);
				sum += folded[g * STEPS_PER_BIT + (at & (STEPS_PER_BIT - 1))]!;
			}
			if (sum > best) {
				best = sum;
				clock = { startSample: phase * step, bitSamples: (STEPS_PER_BIT + drift) * step };
			}
		}
	}
	const bits = groups * GROUP_BITS;
	const deviation = Math.sqrt(Math.max(1e-300, square - mean * mean) * bits);
	return { clock, deviations: (best - bits * mean) / deviation };
}

/** How much later than said the bits from `first` to `end` start, in samples, and by how many deviations of chance that place stands out. */
export function clockError(
	sums: ToneSums,
	clock: BitClock,
	first: number,
	end: number,
	reachSamples: number,
): { readonly lateSamples: number; readonly deviations: number } {
	const length = Math.round(clock.bitSamples);
	const step = 4;
	const reach = Math.floor(clock.bitSamples / 2 / step); // half a bit, so that what chance gives is seen too
	const near = Math.min(reach - 1, Math.round(reachSamples / step));
	const sumsAt = new Float64Array(2 * reach + 1);
	let sum = 0;
	let square = 0;
	let count = 0;
	for (let k = first; k < end; k++) {
		const base = Math.round(clock.startSample + k * clock.bitSamples);
		if (base - reach * step < 0 || base + length + reach * step > sums.length) continue;
		for (let s = -reach; s <= reach; s++) {
			const a = base + s * step;
			const value = strongest(sums, a, length);
			sumsAt[s + reach]! += value;
			sum += value;
			square += value * value;
			count++;
		}
	}
	if (count === 0) return { lateSamples: 0, deviations: 0 };
	let top = reach - near;
	for (let s = reach - near; s <= reach + near; s++) if (sumsAt[s]! > sumsAt[top]!) top = s;
	const [before, at, after] = [sumsAt[top - 1]!, sumsAt[top]!, sumsAt[top + 1]!];
	const bend = before - 2 * at + after;
	const part = bend < 0 ? Math.min(1, Math.max(-1, (0.5 * (before - after)) / bend)) : 0;
	const steps = 2 * reach + 1;
	const bits = count / steps;
	const mean = sum / count;
	const deviation = Math.sqrt(Math.max(1e-300, square / count - mean * mean) * bits);
	return { lateSamples: (top - reach + part) * step, deviations: (at - mean * bits) / deviation };
}

/** The greater of the two tones' energies over `length` samples from sample `from` on. */
function strongest({ lowRe, lowIm, highRe, highIm }: ToneSums, from: number, length: number): number {
	const to = from + length;
	const hr = highRe[to]! - highRe[from]!;
	const hi = highIm[to]! - highIm[from]!;
	const lr = lowRe[to]! - lowRe[from]!;
	const li = lowIm[to]! - lowIm[from]!;
	return Math.max(hr * hr + hi * hi, lr * lr + li * li);
}
