import { exp } from "@skipwright/units";
import type { BitClock } from "./bitClock.ts";
import { logBesselI0 } from "./logBessel.ts";
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

/** Those of `count` bits from bit `first` on, each over its own samples from `from` to `to` of it (0 to 1). */
export function bitTones(sums: ToneSums, { startSample, bitSamples }: BitClock, first: number, count: number, from = 0, to = 1): BitTones {
	const make = () => new Float64Array(count);
	const bits = { lowRe: make(), lowIm: make(), highRe: make(), highIm: make(), lowEnergy: make(), highEnergy: make() };
	const last = sums.lowRe.length - 1;
	for (let i = 0; i < count; i++) {
		const start = startSample + (first + i) * bitSamples;
		const a = Math.min(last, Math.max(0, Math.round(start + from * bitSamples)));
		const b = Math.min(last, Math.max(0, Math.round(start + to * bitSamples)));
		const [lr, li] = [sums.lowRe[b]! - sums.lowRe[a]!, sums.lowIm[b]! - sums.lowIm[a]!];
		const [hr, hi] = [sums.highRe[b]! - sums.highRe[a]!, sums.highIm[b]! - sums.highIm[a]!];
		bits.lowRe[i] = lr;
		bits.lowIm[i] = li;
		bits.highRe[i] = hr;
		bits.highIm[i] = hi;
		bits.lowEnergy[i] = lr * lr + li * li;
		bits.highEnergy[i] = hr * hr + hi * hi;
	}
	return bits;
}

export interface BitEvidence {
	/** Log-likelihood ratios, positive: the higher tone. */
	readonly softs: Float64Array;
	/** Energy of a bit over noise density, mean over the bits and both tones. */
	readonly ebN0: number;
	/** Share of all energy by which the stronger tone of each bit leads: 1/2 for noise, near 1 for clean keying. */
	readonly lead: number;
}

/** Bits on either side whose level counts as a bit's own. */
const LEVEL_REACH = 12;
/** Bits' worth of the mean level of all that is mixed in. */
const LEVEL_PRIOR = 2;
/** Least noise for a given level: more than 23 dB over the noise nothing is sure any more but the bits. */
const LEAST_NOISE = 0.005;
const ROUNDS = 3;

/**
 * Evidence of each bit from its two envelopes alone: levels and noise of either tone are estimated from the bits themselves
 * (expectation-maximisation), each level locally, so that fading of one tone leaves the other's word its weight.
 */
export function bitEvidence({ lowEnergy, highEnergy }: BitTones): BitEvidence {
	const count = lowEnergy.length;
	const softs = new Float64Array(count);
	const share = new Float64Array(count);
	let total = 0;
	let led = 0;
	let off = 0;
	for (let k = 0; k < count; k++) {
		const [low, high] = [lowEnergy[k]!, highEnergy[k]!];
		total += low + high;
		led += Math.abs(high - low);
		off += Math.min(low, high);
		share[k] = high > low ? 1 : 0;
	}
	if (total === 0) return { softs, ebN0: 0, lead: 0 };
	let noiseLow = Math.max(off / count, 1e-300);
	let noiseHigh = noiseLow;
	let levels = { low: new Float64Array(count), high: new Float64Array(count) };
	for (let round = 0; round < ROUNDS; round++) {
		levels = {
			low: localLevels(lowEnergy, share, true, noiseLow),
			high: localLevels(highEnergy, share, false, noiseHigh),
		};
		const { low, high } = noises(lowEnergy, highEnergy, share, levels);
		noiseLow = low;
		noiseHigh = high;
		for (let k = 0; k < count; k++) {
			const soft = toneWeight(highEnergy[k]!, levels.high[k]!, noiseHigh) - toneWeight(lowEnergy[k]!, levels.low[k]!, noiseLow);
			softs[k] = soft;
			share[k] = soft > 30 ? 1 : soft < -30 ? 0 : logistic(soft);
		}
	}
	let ebN0 = 0;
	for (let k = 0; k < count; k++) ebN0 += (levels.low[k]! / noiseLow + levels.high[k]! / noiseHigh) / 2 / count;
	return { softs, ebN0, lead: led / total };
}

/** Log-likelihood that a tone of that level is in the energy, less that it is noise alone. */
function toneWeight(energy: number, level: number, noise: number): number {
	return logBesselI0((2 * Math.sqrt(level * energy)) / noise) - level / noise;
}

/** Mean energy above the noise where the tone is thought on, near each bit. `share` is that of the higher tone, `isOther` asks for the lower. */
function localLevels(energy: Float64Array, share: Float64Array, isOther: boolean, noise: number): Float64Array<ArrayBuffer> {
	const count = energy.length;
	const weightSum = new Float64Array(count + 1);
	const energySum = new Float64Array(count + 1);
	for (let k = 0; k < count; k++) {
		const weight = isOther ? 1 - share[k]! : share[k]!;
		weightSum[k + 1] = weightSum[k]! + weight;
		energySum[k + 1] = energySum[k]! + weight * (energy[k]! - noise);
	}
	const mean = weightSum[count]! > 0 ? energySum[count]! / weightSum[count]! : 0;
	const levels = new Float64Array(count);
	for (let k = 0; k < count; k++) {
		const [a, b] = [Math.max(0, k - LEVEL_REACH), Math.min(count, k + LEVEL_REACH + 1)];
		const weight = weightSum[b]! - weightSum[a]!;
		levels[k] = Math.max(0, (energySum[b]! - energySum[a]! + LEVEL_PRIOR * mean) / (weight + LEVEL_PRIOR));
	}
	return levels;
}

/** Mean energy of either tone where it is thought off; of both together where one is hardly ever off. */
function noises(
	lowEnergy: Float64Array,
	highEnergy: Float64Array,
	share: Float64Array,
	levels: { readonly low: Float64Array; readonly high: Float64Array },
) {
	const count = share.length;
	let [lowSum, highSum, highShare, levelSum] = [0, 0, 0, 0];
	for (let k = 0; k < count; k++) {
		lowSum += share[k]! * lowEnergy[k]!;
		highSum += (1 - share[k]!) * highEnergy[k]!;
		highShare += share[k]!;
		levelSum += levels.low[k]! + levels.high[k]!;
	}
	const both = (lowSum + highSum) / count;
	const least = Math.max((LEAST_NOISE * levelSum) / 2 / count, 1e-300);
	const prior = 4;
	return {
		low: Math.max(least, (lowSum + prior * both) / (highShare + prior)),
		high: Math.max(least, (highSum + prior * both) / (count - highShare + prior)),
	};
}

function logistic(x: number): number {
	return 1 / (1 + exp(-x));
}
