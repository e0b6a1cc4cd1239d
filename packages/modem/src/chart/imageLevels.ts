import { CHART_DEVIATION_HZ } from "./chartFigures.ts";

export interface GreyLevels {
	readonly blackHz: number;
	readonly whiteHz: number;
	/** Hz, one sigma, of the middle between them. */
	readonly uncertaintyHz: number;
}

const BIN_HZ = 10;
const BINS = 400;
/** Bins over which a count is averaged. */
const SMOOTH = 2;
/** Share of the values beyond the outermost shade, and how far inwards from there its peak may lie, Hz. */
const OUTSIDE = 0.01,
	INWARDS_HZ = 200;
/** Shares of the usual span between which the outermost shades are black and white; below the last, it's a narrow one. */
const SPAN_FROM = 0.95,
	SPAN_TO = 1.06,
	SPAN_NARROW = 0.55;
/** Hz. Uncertainty with both ends found, and with one, the other taken to lie the usual span off. Estimates. */
const BOTH_HZ = 12,
	ONE_HZ = 40;

/** Black and white from a picture's own frequencies, where no phasing told them: the outermost shades that occur often. */
export function imageLevels(hz: Float32Array): GreyLevels {
	const counts = new Float64Array(BINS);
	for (let n = 0; n < hz.length; n++) {
		const bin = Math.min(BINS - 1, Math.floor(hz[n]! / BIN_HZ));
		counts[bin] = counts[bin]! + 1;
	}
	const [low, high] = [shareBin(counts, OUTSIDE * hz.length), shareBin(counts, (1 - OUTSIDE) * hz.length)];
	const inwards = INWARDS_HZ / BIN_HZ;
	const black = peakIn(counts, low - SMOOTH, low + inwards);
	const white = peakIn(counts, high - inwards, high + SMOOTH);
	const span = (white.hz - black.hz) / (2 * CHART_DEVIATION_HZ);
	if ((span > SPAN_FROM && span < SPAN_TO) || span < SPAN_NARROW) {
		return { blackHz: black.hz, whiteHz: white.hz, uncertaintyHz: BOTH_HZ };
	}
	const isWhiteSure = white.count > black.count;
	const blackHz = isWhiteSure ? white.hz - 2 * CHART_DEVIATION_HZ : black.hz;
	return { blackHz, whiteHz: blackHz + 2 * CHART_DEVIATION_HZ, uncertaintyHz: ONE_HZ };
}

/** The bin up to which `count` values lie. */
function shareBin(counts: Float64Array, count: number): number {
	let [bin, sum] = [0, 0];
	while (bin < BINS - 1 && sum + counts[bin]! < count) sum += counts[bin++]!;
	return bin;
}

function peakIn(counts: Float64Array, from: number, to: number): { readonly hz: number; readonly count: number } {
	let best = { hz: from * BIN_HZ, count: -1 };
	for (let bin = Math.max(0, from); bin <= Math.min(BINS - 1, to); bin++) {
		let [count, moment] = [0, 0];
		for (let k = Math.max(0, bin - SMOOTH); k <= Math.min(BINS - 1, bin + SMOOTH); k++) {
			count += counts[k]!;
			moment += counts[k]! * (k + 0.5) * BIN_HZ;
		}
		if (count > best.count && count > 0) best = { hz: moment / count, count };
	}
	return best;
}
