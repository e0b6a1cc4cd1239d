import { exp, log } from "@skipwright/units";
import type { BitTones } from "./bitTones.ts";
import { logBesselI0 } from "./logBessel.ts";

export interface EnvelopeEvidence {
	/** Log-likelihood ratios, positive: the higher tone. */
	readonly softs: Float64Array;
	/** Energies of a bit of either tone, local means without the noise. */
	readonly low: Float64Array;
	readonly high: Float64Array;
	/** Mean energies of the noise alone in either tone's correlation. */
	readonly noiseLow: number;
	readonly noiseHigh: number;
	/** Share of the bits whose tone is thought to have faded altogether. */
	readonly faded: number;
	/** Energy of a bit, mean over the bits and both tones, without the noise. */
	readonly level: number;
	/** The same over the noise density, mean over the bits and both tones. */
	readonly ebN0: number;
}

/** Bits on either side whose level counts as a bit's own. */
const LEVEL_REACH = 12;
/** Least noise for a given level: more than 23 dB over the noise nothing is sure any more but the bits. */
const LEAST_NOISE = 0.005;
const ROUNDS = 3;
/** A weight from which on a tone is there, and none of its bits faded. */
const SURE = 30;
/** Share of bits thought faded before anything is known, and at least. */
const FIRST_FADED = 0.01;
const LEAST_FADED = 0.0005;

/**
 * Evidence of each bit from its two envelopes alone: levels and noise of either tone are estimated from the bits themselves
 * (expectation-maximisation), each level locally, so that fading of one tone leaves the other's word its weight. `leak` is the share of a
 * tone's energy that the other's correlation holds: (sin(pi h) / (pi h))^2 for a shift of h times the bit rate.
 */
export function envelopeEvidence({ lowEnergy, highEnergy }: BitTones, leak: number): EnvelopeEvidence {
	const count = lowEnergy.length;
	const softs = new Float64Array(count);
	const share = new Float64Array(count);
	let off = 0;
	for (let k = 0; k < count; k++) {
		const low = lowEnergy[k]!;
		const high = highEnergy[k]!;
		off += Math.min(low, high);
		share[k] = high > low ? 1 : 0;
	}
	let noiseLow = Math.max(off / count, 1e-300);
	let noiseHigh = noiseLow;
	let faded = FIRST_FADED;
	let noises = { low: 0, high: 0, level: 0 };
	const levels = { low: new Float64Array(count), high: new Float64Array(count) };
	const room = { weights: new Float64Array(count + 1), energies: new Float64Array(count + 1) };
	for (let round = 0; round < ROUNDS; round++) {
		for (let k = 0; k < count; k++) share[k] = 1 - share[k]!;
		localLevels(levels.low, lowEnergy, share, noiseLow, room);
		for (let k = 0; k < count; k++) share[k] = 1 - share[k]!;
		localLevels(levels.high, highEnergy, share, noiseHigh, room);
		noises = meanNoises(lowEnergy, highEnergy, share, levels, leak);
		const least = LEAST_NOISE * noises.level;
		noiseLow = Math.max(least, noises.low);
		noiseHigh = Math.max(least, noises.high);
		let fadedSum = 0;
		for (let k = 0; k < count; k++) {
			const high = toneWeight(highEnergy[k]!, levels.high[k]!, noiseHigh);
			const low = toneWeight(lowEnergy[k]!, levels.low[k]!, noiseLow);
			const likelyHigh = orFaded(high, faded);
			const likelyLow = orFaded(low, faded);
			const soft = (high > SURE ? high : log(likelyHigh)) - (low > SURE ? low : log(likelyLow));
			softs[k] = soft;
			share[k] = soft > 30 ? 1 : soft < -30 ? 0 : logistic(soft);
			fadedSum += (share[k]! * faded) / likelyHigh + ((1 - share[k]!) * faded) / likelyLow;
		}
		faded = Math.max(LEAST_FADED, fadedSum / count);
	}
	const ebN0 = (2 * noises.level) / Math.max(noises.low + noises.high, noises.level * 1e-5, 1e-300);
	return { softs, ...levels, noiseLow, noiseHigh, faded, level: noises.level, ebN0 };
}

/** Share of all energy by which the stronger tone of each bit leads: 1/2 for noise, near 1 for clean keying. */
export function toneLead({ lowEnergy, highEnergy }: BitTones): number {
	let [total, led] = [0, 0];
	for (let k = 0; k < lowEnergy.length; k++) {
		total += lowEnergy[k]! + highEnergy[k]!;
		led += Math.abs(highEnergy[k]! - lowEnergy[k]!);
	}
	return total > 0 ? led / total : 0;
}

/** Log-likelihood that a tone of that level is in the energy, less that it is noise alone. */
function toneWeight(energy: number, level: number, noise: number): number {
	return logBesselI0(believedSize(energy, level, noise)) - level / noise;
}

/**
 * 2 sqrt(level energy) / noise, the argument of I0. A bit far stronger than its neighbours is a click, not a signal:
 * its amplitude is believed up to twice the level's and four deviations of noise.
 */
export function believedSize(energy: number, level: number, noise: number): number {
	const size = (2 * Math.sqrt(level * energy)) / noise;
	const ratio = level / noise;
	return Math.min(size, 4 * ratio + 8 * Math.sqrt(ratio));
}

/**
 * Puts energy above the noise where the tone is thought on (`shares`), near each bit, into `levels`. Where neighbourhoods differ no more than chance makes them, their
 * mean counts; the more they differ, the more each counts for itself.
 */
function localLevels(
	levels: Float64Array,
	energy: Float64Array,
	shares: Float64Array,
	noise: number,
	{ weights: weightSum, energies: energySum }: { readonly weights: Float64Array; readonly energies: Float64Array },
): void {
	const count = energy.length;
	for (let k = 0; k < count; k++) {
		weightSum[k + 1] = weightSum[k]! + shares[k]!;
		energySum[k + 1] = energySum[k]! + shares[k]! * (energy[k]! - noise);
	}
	const mean = Math.max(0, energySum[count]! / (weightSum[count]! + 1e-9));
	const chance = noise * (noise + 2 * mean); // variance of one bit's energy
	let spread = 0;
	for (let k = 0; k < count; k++) {
		const a = Math.max(0, k - LEVEL_REACH);
		const b = Math.min(count, k + LEVEL_REACH + 1);
		const weight = weightSum[b]! - weightSum[a]! + 1e-9;
		const level = (energySum[b]! - energySum[a]!) / weight;
		levels[k] = level;
		spread += ((level - mean) * (level - mean) - chance / weight) * weight;
	}
	const variance = Math.max(0, spread / ((2 * LEVEL_REACH + 1) * (weightSum[count]! + 1e-9)));
	for (let k = 0; k < count; k++) {
		const weight = weightSum[Math.min(count, k + LEVEL_REACH + 1)]! - weightSum[Math.max(0, k - LEVEL_REACH)]! + 1e-9;
		const own = variance / (variance + chance / weight + 1e-300);
		levels[k] = Math.max(0, mean + own * (levels[k]! - mean));
	}
}

/** Mean energy of either tone where it is thought off, of both together as far as they differ by chance; and of both tones where they are on. */
function meanNoises(
	lowEnergy: Float64Array,
	highEnergy: Float64Array,
	share: Float64Array,
	levels: { readonly low: Float64Array; readonly high: Float64Array },
	leak: number,
) {
	const count = share.length;
	let [lowSum, highSum, highShare, levelSum] = [0, 0, 0, 0];
	for (let k = 0; k < count; k++) {
		lowSum += share[k]! * (lowEnergy[k]! - leak * levels.high[k]!);
		highSum += (1 - share[k]!) * (highEnergy[k]! - leak * levels.low[k]!);
		highShare += share[k]!;
		levelSum += levels.low[k]! + levels.high[k]!;
	}
	const both = Math.max(1e-300, (lowSum + highSum) / count);
	const low = Math.max(0, lowSum) / (highShare + 1e-9);
	const high = Math.max(0, highSum) / (count - highShare + 1e-9);
	// two means of that many energies of noise differ so much by chance alone, as a share of it squared
	const chance = 1 / (highShare + 1e-9) + 1 / (count - highShare + 1e-9);
	const apart = ((high - low) / both) * ((high - low) / both);
	const own = apart > 0 ? Math.max(0, 1 - (2 * chance) / apart) : 0;
	return {
		low: both + own * (low - both),
		high: both + own * (high - both),
		level: levelSum / 2 / count,
	};
}

/** Likelihood of a tone of that weight that is not there after all for that share of the bits: noise alone has weight 0. */
function orFaded(weight: number, faded: number): number {
	return weight > SURE ? Number.POSITIVE_INFINITY : (1 - faded) * exp(weight) + faded;
}

function logistic(x: number): number {
	return 1 / (1 + exp(-x));
}
