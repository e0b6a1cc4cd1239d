import { exp, log } from "@skipwright/units";

/** dB above kT0b, and how far the deciles lie from the median, both positive. */
export interface NoiseSource {
	readonly medianDb: number;
	readonly upperDecileDb: number;
	readonly lowerDecileDb: number;
}

/** dB of a factor e of power. */
const DB_PER_E = 10 / Math.LN10;
/** Sigmas from the median to a decile of the normal distribution, as ITU-R P.372 rounds it. */
const SIGMAS_TO_DECILE = 1.282;

/**
 * The sum of independent noises, each log-normal: its mean and variance of power are theirs added up, once with the upper deciles for
 * the median and the upper decile, once with the lower; never above the sum of the medians (`MEMORY.noiseCombination`).
 */
export function combineNoise(sources: readonly NoiseSource[]): NoiseSource {
	const sums = new Float64Array(SUMS);
	const out = new Float64Array(3);
	for (const { medianDb, upperDecileDb, lowerDecileDb } of sources) {
		addNoise(sums, powerOf(medianDb), meanOverMedian(upperDecileDb), meanOverMedian(lowerDecileDb));
	}
	noiseOfSums(out, sums);
	return { medianDb: out[0]!, upperDecileDb: out[1]!, lowerDecileDb: out[2]! };
}

/** Entries that `addNoise` adds to: medians; means and variances with the upper deciles; the same with the lower. */
export const SUMS = 5;

/** kT0b = 1. */
export function powerOf(db: number): number {
	return exp(db / DB_PER_E);
}

/** Mean power of a log-normal noise over its median power. */
export function meanOverMedian(decileDb: number): number {
	const sigma = decileDb / (SIGMAS_TO_DECILE * DB_PER_E);
	return exp((sigma * sigma) / 2);
}

/** Empties `sums`, in place. One by one: `fill` costs more than the sum itself. */
export function clearNoise(sums: Float64Array): void {
	sums[0] = sums[1] = sums[2] = sums[3] = sums[4] = 0;
}

/** Adds one noise to `sums`, in place. */
export function addNoise(sums: Float64Array, medianPower: number, upperRatio: number, lowerRatio: number): void {
	const upper = medianPower * upperRatio;
	const lower = medianPower * lowerRatio;
	sums[0]! += medianPower;
	sums[1]! += upper;
	sums[2]! += upper * upper * (upperRatio * upperRatio - 1);
	sums[3]! += lower;
	sums[4]! += lower * lower * (lowerRatio * lowerRatio - 1);
}

/** Writes median, upper and lower decile in dB to `out` from `at` on, in place. */
export function noiseOfSums(out: Float64Array, sums: Float64Array, at = 0): void {
	const mean = sums[1]!;
	const upper = 1 + sums[2]! / (mean * mean); // e^(sigma^2)
	const lower = 1 + sums[4]! / (sums[3]! * sums[3]!);
	out[at] = DB_PER_E * log(Math.min(mean / Math.sqrt(upper), sums[0]!));
	out[at + 1] = SIGMAS_TO_DECILE * DB_PER_E * Math.sqrt(log(upper));
	out[at + 2] = SIGMAS_TO_DECILE * DB_PER_E * Math.sqrt(log(lower));
}
