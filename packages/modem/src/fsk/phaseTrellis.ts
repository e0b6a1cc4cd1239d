import { atan2, cos, exp, log, sin } from "@skipwright/units";
import type { BitTones } from "./bitTones.ts";
import { believedSize, type EnvelopeEvidence } from "./envelopeEvidence.ts";
import { logBesselI0 } from "./logBessel.ts";

/** Phases told apart. At 170 Hz and 100 Bd a bit turns the one tone against the other by 0.7 of a turn: 14 of 20 steps exactly. */
const PHASES = 20;
/** Radians, standard deviation: how far the phase may stray from one bit to the next (fading, what is left of an error of the centre). */
const STRAY = 0.2;
/** Share of bits after which the phase may be anything: clicks, hits. */
const HIT = 0.02;
/** Steps on either side to which straying is followed: three deviations. */
const REACH = 3;
/** Energy over noise density that a bit is believed to have at most: the steps of phase are too coarse for more. */
const MOST = 25;
/** Natural logarithm of the odds against a sender of continuous phase before anything was heard, paid also for the one phase fitted. */
const AGAINST = 4;
/** Bits on either side whose evidence says whether the phase is continuous. */
const MODEL_REACH = 32;

const COS = Float64Array.from({ length: PHASES }, (_, m) => cos((2 * Math.PI * m) / PHASES));
const SIN = Float64Array.from({ length: PHASES }, (_, m) => sin((2 * Math.PI * m) / PHASES));

/**
 * Evidence of each bit when the sender's phase may be continuous: sums over all sequences of bits and phases, forwards and backwards
 * (Bahl, Cocke, Jelinek and Raviv 1974), the phase in steps, straying a little. Where the phase proves not to be continuous, the
 * evidence of the envelopes stays: both models' posteriors are mixed by how well they foretold the bits nearby.
 *
 * `turnsPerBit`: of the higher tone against the lower; `turns`: the same from where both oscillators started to the first bit's start.
 */
export function withPhase(
	tones: BitTones,
	envelopes: EnvelopeEvidence,
	turnsPerBit: number,
	turns: number,
): { readonly softs: Float64Array; readonly continuity: number } {
	const count = envelopes.softs.length;
	const offset = toneOffset(tones, envelopes, turnsPerBit, turns);
	const weights = bitWeights(tones, envelopes, turnsPerBit, turns, offset);
	const kernels = { low: strayKernel(0), high: strayKernel(turnsPerBit) };

	const forward = new Float64Array((count + 1) * PHASES).fill(1 / PHASES, 0, PHASES);
	const gain = new Float64Array(count); // log odds of the phase model against the envelopes alone, bit by bit
	for (let k = 0; k < count; k++) {
		const here = k * PHASES;
		const next = here + PHASES;
		let sum = 0;
		for (let m = 0; m < PHASES; m++) {
			const low = forward[here + m]! * weights.low[here + m]!;
			const high = forward[here + m]! * weights.high[here + m]!;
			sum += low + high;
			spread(forward, next, m, low, kernels.low);
			spread(forward, next, m, high, kernels.high);
		}
		for (let m = 0; m < PHASES; m++) forward[next + m] = ((1 - HIT) * forward[next + m]!) / sum + HIT / PHASES;
		gain[k] = log(sum) - weights.alone[k]!;
	}

	const softs = new Float64Array(count);
	let later = new Float64Array(PHASES).fill(1);
	for (let k = count - 1; k >= 0; k--) {
		const here = k * PHASES;
		const before = new Float64Array(PHASES);
		let [low, high, sum] = [0, 0, 0];
		for (let m = 0; m < PHASES; m++) {
			const l = weights.low[here + m]! * (HIT + (1 - HIT) * gathered(later, m, kernels.low));
			const h = weights.high[here + m]! * (HIT + (1 - HIT) * gathered(later, m, kernels.high));
			low += forward[here + m]! * l;
			high += forward[here + m]! * h;
			before[m] = l + h;
			sum += l + h;
		}
		for (let m = 0; m < PHASES; m++) before[m] = (before[m]! * PHASES) / sum;
		later = before;
		softs[k] = log(high / low);
	}

	const gains = new Float64Array(count + 1);
	for (let k = 0; k < count; k++) gains[k + 1] = gains[k]! + gain[k]!;
	let continuity = 0;
	for (let k = 0; k < count; k++) {
		const odds = gains[Math.min(count, k + MODEL_REACH + 1)]! - gains[Math.max(0, k - MODEL_REACH)]! - AGAINST;
		const share = logistic(odds);
		continuity += share / count;
		const high = share * logistic(softs[k]!) + (1 - share) * logistic(envelopes.softs[k]!);
		const low = share * logistic(-softs[k]!) + (1 - share) * logistic(-envelopes.softs[k]!);
		softs[k] = log(high / low);
	}
	return { softs, continuity };
}

/**
 * The phase, in radians, by which the way from sender to here turns the higher tone more than the lower: from bits that follow one
 * of the other tone.
 */
function toneOffset(tones: BitTones, { softs }: EnvelopeEvidence, turnsPerBit: number, turns: number): number {
	let [re, im] = [0, 0];
	for (let k = 1; k < softs.length; k++) {
		const [before, here] = [softs[k - 1]!, softs[k]!];
		if (before > 0 === here > 0) continue;
		const weight = Math.min(Math.abs(before), Math.abs(here), 10);
		const [high, low] = here > 0 ? [k, k - 1] : [k - 1, k];
		// turned back to the border between the two bits
		const border = 2 * Math.PI * fraction(turns + k * turnsPerBit);
		const [hr, hi] = turned(tones.highRe[high]!, tones.highIm[high]!, cos(border), sin(border));
		const [lr, li] = [tones.lowRe[low]!, tones.lowIm[low]!];
		const scale = weight / Math.sqrt((hr * hr + hi * hi) * (lr * lr + li * li) + 1e-300);
		re += scale * (hr * lr + hi * li);
		im += scale * (hi * lr - hr * li);
	}
	return atan2(im, re);
}

/**
 * Likelihoods of each bit, either way, at each phase (that of the lower tone at the bit's start, as if it ran through), over a scale of
 * the bit's own; and the logarithm of their sum over all phases alike, which is what the envelopes alone say.
 */
function bitWeights(tones: BitTones, levels: EnvelopeEvidence, turnsPerBit: number, turns: number, offset: number) {
	const count = levels.softs.length;
	const low = new Float64Array(count * PHASES);
	const high = new Float64Array(count * PHASES);
	const alone = new Float64Array(count);
	for (let k = 0; k < count; k++) {
		const start = 2 * Math.PI * fraction(turns + k * turnsPerBit) - offset;
		const [hr, hi] = turned(tones.highRe[k]!, tones.highIm[k]!, cos(start), sin(start));
		const noiseLow = Math.max(levels.noiseLow, levels.low[k]! / MOST);
		const noiseHigh = Math.max(levels.noiseHigh, levels.high[k]! / MOST);
		const sizeLow = believedSize(tones.lowEnergy[k]!, levels.low[k]!, noiseLow);
		const sizeHigh = believedSize(tones.highEnergy[k]!, levels.high[k]!, noiseHigh);
		const gainLow = sizeLow / Math.sqrt(tones.lowEnergy[k]! + 1e-300);
		const gainHigh = sizeHigh / Math.sqrt(tones.highEnergy[k]! + 1e-300);
		const baseLow = levels.low[k]! / noiseLow;
		const baseHigh = levels.high[k]! / noiseHigh;
		const scale = Math.max(sizeLow - baseLow, sizeHigh - baseHigh);
		for (let m = 0; m < PHASES; m++) {
			low[k * PHASES + m] = exp(gainLow * (tones.lowRe[k]! * COS[m]! + tones.lowIm[k]! * SIN[m]!) - baseLow - scale);
			high[k * PHASES + m] = exp(gainHigh * (hr * COS[m]! + hi * SIN[m]!) - baseHigh - scale);
		}
		alone[k] = log(exp(logBesselI0(sizeLow) - baseLow - scale) + exp(logBesselI0(sizeHigh) - baseHigh - scale));
	}
	return { low, high, alone };
}

/** How a phase strays within a bit, after turning by that many turns: shares of the steps from `first` on. */
function strayKernel(turns: number): { readonly first: number; readonly shares: Float64Array } {
	const steps = fraction(turns) * PHASES;
	const nearest = Math.round(steps);
	const deviation = (STRAY * PHASES) / (2 * Math.PI);
	const shares = Float64Array.from({ length: 2 * REACH + 1 }, (_, i) => {
		const away = (nearest + i - REACH - steps) / deviation;
		return exp(-0.5 * away * away);
	});
	const sum = shares.reduce((total, share) => total + share, 0);
	return { first: nearest - REACH + PHASES, shares: shares.map((share) => share / sum) };
}

function spread(
	into: Float64Array,
	at: number,
	m: number,
	value: number,
	{ first, shares }: { first: number; shares: Float64Array },
): void {
	for (let i = 0; i < shares.length; i++) {
		const to = at + ((first + m + i) % PHASES);
		into[to] = into[to]! + value * shares[i]!;
	}
}

function gathered(from: Float64Array, m: number, { first, shares }: { first: number; shares: Float64Array }): number {
	let sum = 0;
	for (let i = 0; i < shares.length; i++) sum += from[(first + m + i) % PHASES]! * shares[i]!;
	return sum;
}

function turned(re: number, im: number, turnRe: number, turnIm: number): readonly [number, number] {
	return [re * turnRe - im * turnIm, re * turnIm + im * turnRe];
}

function fraction(turns: number): number {
	return turns - Math.floor(turns);
}

/** 1 / (1 + exp(-x)), never quite 0. */
function logistic(x: number): number {
	return 1 / (1 + exp(-Math.max(-300, Math.min(300, x))));
}
