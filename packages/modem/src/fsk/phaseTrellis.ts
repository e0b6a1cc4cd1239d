import { atan2, cos, exp, log, sin } from "@skipwright/units";
import type { BitTones } from "./bitTones.ts";
import { angleVariance } from "./centreError.ts";
import { believedSize, type EnvelopeEvidence } from "./envelopeEvidence.ts";
import { logBesselI0 } from "./logBessel.ts";

/** Phases told apart. At 170 Hz and 100 Bd a bit turns the one tone against the other by 0.7 of a turn: 14 of 20 steps exactly. */
const PHASES = 20;
/** Radians, standard deviation: how far the phase may stray from one bit to the next. */
const STRAY = 0.2;
/** Steps on either side to which straying is followed: about five deviations. */
const REACH = 3;
/** Share of bits after which the phase may be anything: clicks, hits. */
const HIT = 0.001;
/** Energy over noise density that a bit is believed to have at most: the steps of phase are too coarse for more. */
const MOST = 20;
/** Radians: how far the phase between two bits in turn may be from what a sender of continuous phase makes it. */
const PAIR_STRAY = 0.4;
/** Natural logarithm of the odds against a sender of continuous phase before anything was heard, paid also for the one phase fitted. */
const AGAINST = 4;
/** Bits on either side whose evidence says whether the phase is continuous. */
const MODEL_REACH = 32;
/** A log-likelihood ratio beyond which a bit's phase counts no more than at it. */
const SURE = 10;

const COS = Float64Array.from({ length: PHASES }, (_, m) => cos((2 * Math.PI * m) / PHASES));
const SIN = Float64Array.from({ length: PHASES }, (_, m) => sin((2 * Math.PI * m) / PHASES));

export interface PhaseEvidence {
	/** Log-likelihood ratios, positive: the higher tone. */
	readonly softs: Float64Array;
	/** Share of the bits, 0 to 1, for which the phase counts as continuous. */
	readonly continuity: number;
	/** Turns a bit by which both tones run faster than assumed, where the phase is continuous; and its variance. */
	readonly drift: number;
	readonly driftVariance: number;
}

/**
 * Evidence of each bit when the sender's phase may be continuous: sums over all sequences of bits and phases, forwards and backwards
 * (Bahl, Cocke, Jelinek and Raviv 1974), the phase in steps, straying a little. Where it proves not to be continuous, the envelopes'
 * evidence stays: the posteriors of both are mixed by what the changes of tone nearby say.
 *
 * `turnsPerBit`: of the higher tone against the lower; `turns`: the same from where both oscillators started to the first bit's start.
 */
export function withPhase(tones: BitTones, envelopes: EnvelopeEvidence, turnsPerBit: number, turns: number): PhaseEvidence {
	const count = envelopes.softs.length;
	const { aligned, drift, driftVariance } = align(tones, envelopes.softs, turnsPerBit, turns);
	const softs = sumsOverPhases(aligned, envelopes, turnsPerBit);
	const gains = continuityGains(aligned, envelopes, turnsPerBit);
	let continuity = 0;
	for (let k = 0; k < count; k++) {
		const odds = gains[Math.min(count, k + MODEL_REACH + 1)]! - gains[Math.max(0, k - MODEL_REACH)]! - AGAINST;
		const share = logistic(odds);
		continuity += share / count;
		const high = share * logistic(softs[k]!) + (1 - share) * logistic(envelopes.softs[k]!);
		const low = share * logistic(-softs[k]!) + (1 - share) * logistic(-envelopes.softs[k]!);
		softs[k] = log(high / low);
	}
	return { softs, continuity, drift, driftVariance };
}

/**
 * The tones of each bit turned to the phase that the lower one has, or would have, at the bit's start, less the drift common to all bits and the
 * offset that the way from sender to here gives the higher tone. Both are estimated from pairs of bits in turn: of one tone the drift
 * alone, of both the offset too.
 */
function align(tones: BitTones, softs: Float64Array, turnsPerBit: number, turns: number) {
	const count = softs.length;
	const highRe = new Float64Array(count);
	const highIm = new Float64Array(count);
	for (let k = 0; k < count; k++) rotate(tones.highRe, tones.highIm, k, turns + k * turnsPerBit, highRe, highIm);
	const { lowRe, lowIm } = tones;
	const perBit = 2 * Math.PI * fraction(turnsPerBit);
	const [bitRe, bitIm] = [cos(perBit), sin(perBit)];

	// sums of later times conjugate of earlier: bits of one tone, low then high, high then low
	const same = [0, 0];
	const up = [0, 0];
	const down = [0, 0];
	let total = 0;
	for (let k = 1; k < count; k++) {
		const wasHigh = softs[k - 1]! > 0;
		const isHigh = softs[k]! > 0;
		let [ar, ai] = wasHigh ? [highRe[k - 1]!, highIm[k - 1]!] : [lowRe[k - 1]!, lowIm[k - 1]!];
		const [br, bi] = isHigh ? [highRe[k]!, highIm[k]!] : [lowRe[k]!, lowIm[k]!];
		if (wasHigh) [ar, ai] = [ar * bitRe - ai * bitIm, ar * bitIm + ai * bitRe];
		const weight =
			Math.min(Math.abs(softs[k - 1]!), Math.abs(softs[k]!), SURE) / Math.sqrt((ar * ar + ai * ai) * (br * br + bi * bi) + 1e-300);
		const into = wasHigh === isHigh ? same : isHigh ? up : down;
		total += Math.min(Math.abs(softs[k - 1]!), Math.abs(softs[k]!), SURE);
		into[0]! += weight * (br * ar + bi * ai);
		into[1]! += weight * (bi * ar - br * ai);
	}
	// the offset turns `up` forwards and `down` backwards
	const guess = atan2(same[1]!, same[0]!);
	const c = cos(guess);
	const s = sin(guess);
	const offset = atan2(up[1]! * c - up[0]! * s - (down[1]! * c - down[0]! * s), up[0]! * c + up[1]! * s + (down[0]! * c + down[1]! * s));
	const [oc, os] = [cos(offset), sin(offset)];
	const re = same[0]! + up[0]! * oc + up[1]! * os + down[0]! * oc - down[1]! * os;
	const im = same[1]! + up[1]! * oc - up[0]! * os + down[1]! * oc + down[0]! * os;
	const drift = atan2(im, re) / (2 * Math.PI);
	const driftVariance = angleVariance(re, im, total, count) / (4 * Math.PI * Math.PI);

	const aligned = { ...tones, lowRe: new Float64Array(count), lowIm: new Float64Array(count), highRe, highIm };
	for (let k = 0; k < count; k++) {
		rotate(lowRe, lowIm, k, -k * drift, aligned.lowRe, aligned.lowIm);
		rotate(highRe, highIm, k, -k * drift - offset / (2 * Math.PI), highRe, highIm);
	}
	return { aligned, drift, driftVariance };
}

function rotate(fromRe: Float64Array, fromIm: Float64Array, k: number, turns: number, toRe: Float64Array, toIm: Float64Array): void {
	const angle = 2 * Math.PI * fraction(turns);
	const c = cos(angle);
	const s = sin(angle);
	const re = fromRe[k]!;
	const im = fromIm[k]!;
	toRe[k] = re * c - im * s;
	toIm[k] = re * s + im * c;
}

/** Forward and backward sums over the phase at each bit's start. */
function sumsOverPhases(aligned: BitTones, envelopes: EnvelopeEvidence, turnsPerBit: number): Float64Array {
	const count = envelopes.softs.length;
	const weights = bitWeights(aligned, envelopes);
	const steps = fraction(turnsPerBit) * PHASES;
	const shift = Math.round(steps) % PHASES; // whole steps by which a bit of the higher tone turns
	const [lowKernel, highKernel] = [strayKernel(0), strayKernel(steps - Math.round(steps))];
	// a ring and what lies over its ends
	const low = new Float64Array(PHASES + 2 * REACH);
	const high = new Float64Array(PHASES + 2 * REACH);
	const forward = new Float64Array((count + 1) * PHASES).fill(1 / PHASES, 0, PHASES);
	for (let k = 0; k < count; k++) {
		const here = k * PHASES;
		let sum = 0;
		for (let m = 0; m < PHASES; m++) {
			const l = forward[here + m]! * weights.low[here + m]!;
			const h = forward[here + m]! * weights.high[here + m]!;
			low[REACH + m] = l;
			high[REACH + ((m + shift) % PHASES)] = h;
			sum += l + h;
		}
		closeRing(low);
		closeRing(high);
		const keep = (1 - HIT) / sum;
		for (let m = 0; m < PHASES; m++) {
			let value = 0;
			for (let i = 0; i <= 2 * REACH; i++) value += low[m + 2 * REACH - i]! * lowKernel[i]! + high[m + 2 * REACH - i]! * highKernel[i]!;
			forward[here + PHASES + m] = keep * value + HIT / PHASES;
		}
	}

	const softs = new Float64Array(count);
	const later = new Float64Array(PHASES + 2 * REACH).fill(1);
	const before = new Float64Array(PHASES);
	for (let k = count - 1; k >= 0; k--) {
		const here = k * PHASES;
		let lowSum = 0;
		let highSum = 0;
		let sum = 0;
		for (let m = 0; m < PHASES; m++) {
			const turned = (m + shift) % PHASES;
			let afterLow = 0;
			let afterHigh = 0;
			for (let i = 0; i <= 2 * REACH; i++) {
				afterLow += later[m + i]! * lowKernel[i]!;
				afterHigh += later[turned + i]! * highKernel[i]!;
			}
			const l = weights.low[here + m]! * (HIT + (1 - HIT) * afterLow);
			const h = weights.high[here + m]! * (HIT + (1 - HIT) * afterHigh);
			lowSum += forward[here + m]! * l;
			highSum += forward[here + m]! * h;
			before[m] = l + h;
			sum += l + h;
		}
		for (let m = 0; m < PHASES; m++) later[REACH + m] = (before[m]! * PHASES) / sum;
		closeRing(later);
		softs[k] = log(highSum / lowSum);
	}
	return softs;
}

/** Copies the ends of a ring's middle part to what lies over the other end. */
function closeRing(ring: Float64Array): void {
	for (let i = 0; i < REACH; i++) {
		ring[i] = ring[PHASES + i]!;
		ring[PHASES + REACH + i] = ring[REACH + i]!;
	}
}

/** Likelihoods of each bit, either way, at each phase, over a scale of the bit's own. */
function bitWeights(aligned: BitTones, levels: EnvelopeEvidence): { readonly low: Float64Array; readonly high: Float64Array } {
	const count = levels.softs.length;
	const low = new Float64Array(count * PHASES);
	const high = new Float64Array(count * PHASES);
	for (let k = 0; k < count; k++) {
		const noiseLow = Math.max(levels.noiseLow, levels.low[k]! / MOST);
		const noiseHigh = Math.max(levels.noiseHigh, levels.high[k]! / MOST);
		const sizeLow = believedSize(aligned.lowEnergy[k]!, levels.low[k]!, noiseLow);
		const sizeHigh = believedSize(aligned.highEnergy[k]!, levels.high[k]!, noiseHigh);
		const gainLow = sizeLow / Math.sqrt(aligned.lowEnergy[k]! + 1e-300);
		const gainHigh = sizeHigh / Math.sqrt(aligned.highEnergy[k]! + 1e-300);
		const baseLow = levels.low[k]! / noiseLow;
		const baseHigh = levels.high[k]! / noiseHigh;
		const scale = Math.max(sizeLow - baseLow, sizeHigh - baseHigh, 0);
		const gone = levels.faded * exp(-scale);
		const lowRe = gainLow * aligned.lowRe[k]!;
		const lowIm = gainLow * aligned.lowIm[k]!;
		const highRe = gainHigh * aligned.highRe[k]!;
		const highIm = gainHigh * aligned.highIm[k]!;
		for (let m = 0; m < PHASES; m++) {
			low[k * PHASES + m] = gone + exp(lowRe * COS[m]! + lowIm * SIN[m]! - baseLow - scale);
			high[k * PHASES + m] = gone + exp(highRe * COS[m]! + highIm * SIN[m]! - baseHigh - scale);
		}
	}
	return { low, high };
}

/**
 * Running sum of the log odds of continuous phase against none, from each bit that follows one of the other tone: the difference of two phases
 * of known accuracy, taken as von Mises distributed. Runs of one tone say nothing: a sender that switches between two oscillators keeps
 * their phase too.
 */
function continuityGains(aligned: BitTones, envelopes: EnvelopeEvidence, turnsPerBit: number): Float64Array {
	const { softs } = envelopes;
	const perBit = 2 * Math.PI * fraction(turnsPerBit);
	const [bitRe, bitIm] = [cos(perBit), sin(perBit)];
	const gains = new Float64Array(softs.length + 1);
	for (let k = 1; k < softs.length; k++) {
		gains[k + 1] = gains[k]!;
		const isHigh = softs[k]! > 0;
		if (softs[k - 1]! > 0 === isHigh) continue;
		const [high, low] = isHigh ? [k, k - 1] : [k - 1, k];
		const real = aligned.highRe[high]! * aligned.lowRe[low]! + aligned.highIm[high]! * aligned.lowIm[low]!;
		const imaginary = aligned.highIm[high]! * aligned.lowRe[low]! - aligned.highRe[high]! * aligned.lowIm[low]!;
		const size = Math.sqrt(aligned.highEnergy[high]! * aligned.lowEnergy[low]!) + 1e-300;
		const cosine = (isHigh ? real : real * bitRe - imaginary * bitIm) / size;
		const sizeHigh = believedSize(aligned.highEnergy[high]!, envelopes.high[high]!, envelopes.noiseHigh);
		const sizeLow = believedSize(aligned.lowEnergy[low]!, envelopes.low[low]!, envelopes.noiseLow);
		const sharpness = 1 / (1 / (sizeHigh + 1e-9) + 1 / (sizeLow + 1e-9) + PAIR_STRAY * PAIR_STRAY);
		const isRight = logistic(Math.abs(softs[k - 1]!)) * logistic(Math.abs(softs[k]!));
		gains[k + 1]! += log(1 - isRight + isRight * exp(sharpness * cosine - logBesselI0(sharpness)));
	}
	return gains;
}

/** How a phase strays within a bit after turning by that part of a step: shares of the steps from `REACH` below to `REACH` above. */
function strayKernel(part: number): Float64Array {
	const deviation = (STRAY * PHASES) / (2 * Math.PI);
	const shares = new Float64Array(2 * REACH + 1);
	let sum = 0;
	for (let i = 0; i < shares.length; i++) {
		const away = (i - REACH - part) / deviation;
		shares[i] = exp(-0.5 * away * away);
		sum += shares[i]!;
	}
	return shares.map((share) => share / sum);
}

function fraction(turns: number): number {
	return turns - Math.floor(turns);
}

/** 1 / (1 + exp(-x)), never quite 0. */
function logistic(x: number): number {
	return 1 / (1 + exp(-Math.max(-300, Math.min(300, x))));
}
