import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { CHART_CENTRE_HZ, LINE_RATES, type LinesPerMinute, lineSeconds } from "./chartFigures.ts";

/** Samples of the track that make one value: 4 ms. */
const STEP_SAMPLES = 32;
const VALUES_PER_S = MODEM_RATE_HZ / STEP_SAMPLES;
/** Values between two looks, and looks whose values are compared with those a line earlier: 1 s and 8 s. */
const HOP_VALUES = 256,
	HOPS = 8,
	LEAST_HOPS = 5;
/** Lags compared, in values: from 80 ms to somewhat over the longest line. */
const FIRST_LAG = 20,
	LAST_LAG = 281;
/** Correlation of a line with the next that is enough; noise and speech stay below 0.2 in 8 s. */
const LEAST_CORRELATION = 0.35;
/** By how much that at a line's length must exceed all others but those at its multiples, or something else repeats. */
const PROMINENCE = 0.08;
/** Share of a line's length within which a lag counts as that length. */
const NEAR = 0.06;
/** Of two lengths the shorter, unless the longer is better by this: two lines correlate nearly as well as one. */
const SHORTER = 0.85;
/** Hz about the usual middle. */
const CLICK_HZ = 900;
/** Hz between the 3rd and the 97th of 100 values, sorted: a chart's least and largest. A keyed signal of 170 Hz shift stays below. */
const LEAST_SPAN_HZ = 220,
	MOST_SPAN_HZ = 1_300;

/** Only each so manieth value is sorted for it. */
const SPAN_EVERY = 5;

export const HOP_FRAMES = (HOP_VALUES * STEP_SAMPLES) / FRAME_SAMPLES;
/** Samples that a finding rests on. */
export const FINDER_SAMPLES = HOPS * HOP_VALUES * STEP_SAMPLES;

export interface FoundLines {
	readonly linesPerMinute: LinesPerMinute;
	/** Of each line with the next, -1 to 1. */
	readonly correlation: number;
}

/** Looks for what repeats line by line at one of the four rates and nowhere else. */
export interface LineFinder {
	/** Takes frequencies, Hz; a finding (or null) at each `HOP_FRAMES` frames, undefined between. */
	frame(hz: Float64Array): FoundLines | null | undefined;
	/** Forgets all. */
	clear(): void;
}

export function createLineFinder(): LineFinder {
	const values = new Float64Array(HOPS * HOP_VALUES + LAST_LAG); // the newest last
	const products = Array.from({ length: HOPS }, () => new Float64Array(LAST_LAG + 1)); // of each hop with what lies a lag earlier
	const correlations = new Float64Array(LAST_LAG + 1);
	const sums = new Float64Array(values.length + 1);
	const squares = new Float64Array(values.length + 1);
	let [filled, hops] = [0, 0];

	function closeHop(): FoundLines | null {
		const own = products[hops++ % HOPS]!;
		const from = values.length - HOP_VALUES;
		for (let lag = FIRST_LAG; lag <= LAST_LAG; lag += 2) {
			let [even, odd] = [0, 0]; // two lags at a time, so that each value is fetched once for both
			let later = values[from - lag - 1]!;
			for (let n = from; n < values.length; n++) {
				const value = values[n]!;
				odd += value * later;
				later = values[n - lag]!;
				even += value * later;
			}
			own[lag] = even;
			own[lag + 1] = odd;
		}
		const found = hops < LEAST_HOPS ? null : find();
		values.copyWithin(0, HOP_VALUES);
		filled = 0;
		return found;
	}

	function find(): FoundLines | null {
		const count = Math.min(hops, HOPS) * HOP_VALUES;
		const from = values.length - count;
		const span = spanOf(values.subarray(from));
		if (span < LEAST_SPAN_HZ || span > MOST_SPAN_HZ) return null;
		correlate(from, count);
		const rates = LINE_RATES.map((linesPerMinute) => {
			const lag = lineSeconds(linesPerMinute) * VALUES_PER_S;
			return { linesPerMinute, lag, correlation: Math.max(correlations[Math.floor(lag)]!, correlations[Math.ceil(lag)]!) };
		}).sort((a, b) => a.lag - b.lag);
		const best = Math.max(...rates.map(({ correlation }) => correlation));
		const found = rates.find(({ correlation }) => correlation >= Math.max(LEAST_CORRELATION, SHORTER * best));
		return found !== undefined && isAlone(found.lag, found.correlation) ? found : null;
	}

	function correlate(from: number, count: number): void {
		for (let n = 0; n < values.length; n++) {
			sums[n + 1] = sums[n]! + values[n]!;
			squares[n + 1] = squares[n]! + values[n]! * values[n]!;
		}
		const to = values.length;
		const mean = (sums[to]! - sums[from]!) / count;
		const variance = (squares[to]! - squares[from]!) / count - mean * mean;
		for (let lag = FIRST_LAG; lag <= LAST_LAG; lag++) {
			const earlier = (sums[to - lag]! - sums[from - lag]!) / count;
			const itsVariance = (squares[to - lag]! - squares[from - lag]!) / count - earlier * earlier;
			let product = 0;
			for (let hop = 0; hop < Math.min(hops, HOPS); hop++) product += products[hop]![lag]!;
			const scale = Math.sqrt(variance * itsVariance);
			correlations[lag] = scale > 1 ? (product / count - mean * earlier) / scale : 0;
		}
	}

	/** Whether nothing else repeats as well, and the best near this length is at it. */
	function isAlone(lineLag: number, correlation: number): boolean {
		for (let lag = FIRST_LAG; lag <= LAST_LAG; lag++) {
			const lines = lag / lineLag;
			const isNear = lines > 0.5 && Math.abs(lines - Math.round(lines)) < NEAR;
			if (correlations[lag]! > correlation + (isNear ? 0.02 : -PROMINENCE)) return false;
		}
		return true;
	}
	return {
		frame(hz) {
			for (let n = 0; n < FRAME_SAMPLES; n += STEP_SAMPLES) {
				let sum = 0;
				for (let k = 0; k < STEP_SAMPLES; k++) sum += hz[n + k]!;
				const value = sum / STEP_SAMPLES - CHART_CENTRE_HZ;
				values[values.length - HOP_VALUES + filled++] = Math.max(-CLICK_HZ, Math.min(CLICK_HZ, value));
			}
			return filled === HOP_VALUES ? closeHop() : undefined;
		},
		clear() {
			values.fill(0);
			hops = 0;
		},
	};
}

function spanOf(values: Float64Array): number {
	const some = new Float64Array(Math.floor(values.length / SPAN_EVERY)).map((_, n) => values[n * SPAN_EVERY]!).sort();
	return some[Math.floor(0.97 * some.length)]! - some[Math.floor(0.03 * some.length)]!;
}
