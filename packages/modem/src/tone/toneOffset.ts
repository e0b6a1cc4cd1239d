import type { HeardTone } from "./heardTone.ts";

/** What tones that were heard say about the set, beside those that were sent. */
export type ToneOffset =
	| {
			/** All tones moved by the same hertz: the set is off tune. */
			readonly verdict: "shift";
			readonly offsetHz: number;
			/** Hz, one sigma. */
			readonly uncertaintyHz: number;
			readonly pairs: readonly TonePairing[];
	  }
	| {
			/** All tones moved in proportion: the recorder's clock. Positive: it runs slow, so that all it holds seems high. */
			readonly verdict: "scale";
			readonly partsPerMillion: number;
			readonly uncertaintyPpm: number;
			readonly pairs: readonly TonePairing[];
	  }
	| { readonly verdict: "cannot tell"; readonly why: string; readonly pairs: readonly TonePairing[] };

export interface TonePairing {
	readonly expectedHz: number;
	readonly heardHz: number;
	readonly uncertaintyHz: number;
}

/** Hz. The farthest that a set is looked for off tune, and the most by which a recorder's clock is believed wrong. */
const MOST_SHIFT_HZ = 150,
	MOST_SCALE = 0.005;
/** Hz, one sigma. What senders' tones, hum and the path add to each tone's own uncertainty: selective-calling tones are true to 0.15 %. */
const TONE_HZ = 0.3;
/** Sigmas within which tones agree. */
const AGREES = 3;
/** Hz about where an expected tone should lie within which another tone speaks against it. */
const CONFLICT_HZ = 12;
/** Power of a conflicting tone, dB below the weakest that agrees. */
const CONFLICT_DB = 10;

interface Fit {
	readonly pairs: readonly TonePairing[];
	/** Of the model: hertz, or hertz a hertz. */
	readonly value: number;
	readonly sigma: number;
	readonly conflicts: number;
	/** Sum of squares over sigmas. */
	readonly misfit: number;
}

/**
 * Tells a set that is off tune (every tone moves by the same hertz) from a recorder whose clock is wrong (every tone moves in proportion).
 * @param expectedTonesHz tones that were sent, some of which may be absent; other tones may be there
 */
export function toneOffset(heard: readonly HeardTone[], expectedTonesHz: readonly number[]): ToneOffset {
	const shift = bestFit(heard, expectedTonesHz, MOST_SHIFT_HZ, () => 1);
	const scale = bestFit(heard, expectedTonesHz, MOST_SCALE, (expectedHz) => expectedHz);
	const most = Math.max(shift?.pairs.length ?? 0, scale?.pairs.length ?? 0);
	if (most === 0) return { verdict: "cannot tell", why: "None of the expected tones was heard.", pairs: [] };
	const [isShift, isScale] = [shift, scale].map((fit) => fit !== null && fit.pairs.length === most && fit.conflicts === 0) as [
		boolean,
		boolean,
	];
	const none = scale !== null && isScale && Math.abs(scale.value) < AGREES * scale.sigma;
	const isLone = most === 1 && expectedTonesHz.length > 1; // of several only one fits: it may be any tone
	if (isShift && (none || (!isLone && !isScale) || (most > 1 && shift!.misfit + DECIDES < scale!.misfit))) {
		return { verdict: "shift", offsetHz: shift!.value, uncertaintyHz: shift!.sigma, pairs: shift!.pairs };
	}
	if (isScale && (!isShift || (most > 1 && scale!.misfit + DECIDES < shift!.misfit))) {
		return { verdict: "scale", partsPerMillion: 1e6 * scale!.value, uncertaintyPpm: 1e6 * scale!.sigma, pairs: scale!.pairs };
	}
	const pairs = (shift ?? scale)!.pairs;
	const why =
		most === 1 && (isShift || isScale)
			? "One tone alone does not part the set's tuning from the recorder's clock."
			: isShift
				? "The tones lie too close together, or were too weak, to part the set's tuning from the recorder's clock."
				: "The tones moved neither by the same hertz nor in proportion.";
	return { verdict: "cannot tell", why, pairs };
}

/** By how much the sum of squares must speak for one model. */
const DECIDES = AGREES * AGREES;

/** The move that most tones agree on, then with the fewest that conflict, then the smallest. */
function bestFit(
	heard: readonly HeardTone[],
	expectedTonesHz: readonly number[],
	most: number,
	unit: (expectedHz: number) => number,
): Fit | null {
	let best: Fit | null = null;
	for (const expectedHz of expectedTonesHz) {
		for (const { audioHz } of heard) {
			const value = (audioHz - expectedHz) / unit(expectedHz);
			if (Math.abs(value) > most) continue;
			const fit = fitAbout(heard, expectedTonesHz, value, unit);
			if (best === null || isBetter(fit, best)) best = fit;
		}
	}
	return best;
}

function isBetter(a: Fit, b: Fit): boolean {
	if (a.pairs.length !== b.pairs.length) return a.pairs.length > b.pairs.length;
	if (a.conflicts !== b.conflicts) return a.conflicts < b.conflicts;
	return Math.abs(a.value) < Math.abs(b.value);
}

function fitAbout(heard: readonly HeardTone[], expectedTonesHz: readonly number[], about: number, unit: (hz: number) => number): Fit {
	const pairs: TonePairing[] = [];
	const unmet: number[] = [];
	let weakestDb = Number.POSITIVE_INFINITY;
	for (const expectedHz of expectedTonesHz) {
		const whereHz = expectedHz + about * unit(expectedHz);
		const near = heard.filter(({ audioHz, uncertaintyHz }) => Math.abs(audioHz - whereHz) < 2 * AGREES * sigmaOf(uncertaintyHz));
		const nearest = near.reduce<HeardTone | null>(
			(a, b) => (a === null || Math.abs(b.audioHz - whereHz) < Math.abs(a.audioHz - whereHz) ? b : a),
			null,
		);
		if (nearest === null) {
			unmet.push(whereHz);
			continue;
		}
		weakestDb = Math.min(weakestDb, nearest.snrDb);
		pairs.push({ expectedHz, heardHz: nearest.audioHz, uncertaintyHz: nearest.uncertaintyHz });
	}
	let [weights, sum] = [0, 0];
	for (const { expectedHz, heardHz, uncertaintyHz } of pairs) {
		const [u, sigma] = [unit(expectedHz), sigmaOf(uncertaintyHz)];
		weights += (u * u) / (sigma * sigma);
		sum += (u * (heardHz - expectedHz)) / (sigma * sigma);
	}
	const value = sum / weights;
	let [misfit, conflicts] = [0, 0];
	for (const { expectedHz, heardHz, uncertaintyHz } of pairs) {
		const off = (heardHz - expectedHz - value * unit(expectedHz)) / sigmaOf(uncertaintyHz);
		misfit += off * off;
		if (Math.abs(off) > AGREES) conflicts++;
	}
	const used = new Set(pairs.map(({ heardHz }) => heardHz));
	for (const whereHz of unmet) {
		const speaksAgainst = ({ audioHz, snrDb }: HeardTone) =>
			!used.has(audioHz) && Math.abs(audioHz - whereHz) < CONFLICT_HZ && snrDb > weakestDb - CONFLICT_DB;
		if (heard.some(speaksAgainst)) conflicts++;
	}
	const scatter = pairs.length > 1 ? Math.max(1, misfit / (pairs.length - 1)) : 1;
	return { pairs, value, sigma: Math.sqrt(scatter / weights), conflicts, misfit };
}

function sigmaOf(uncertaintyHz: number): number {
	return Math.sqrt(uncertaintyHz * uncertaintyHz + TONE_HZ * TONE_HZ);
}
