import type { Track } from "./track.ts";

/** Samples of the track that make one value, in the search and in the last refinement. */
const COARSE_SAMPLES = 4,
	FINE_SAMPLES = 2;
/** Lines that are added up before anything is shifted: in the search the largest error smears an edge over two values within them. */
const COARSE_BLOCK_LINES = 4,
	FINE_BLOCK_LINES = 4;
/** Lines over which the first comparison goes. */
const FIRST_LINES = 32;
/** Parts of the nominal length by which a line may be longer or shorter: a recorder's clock is rarely off by more than 200 in a million. */
const RANGE = 400e-6;
/** Values by which two trials differ at the end of the lines compared, in the search and in the refinement. */
const COARSE_STEP = 0.5,
	FINE_STEP = 0.5;
/** Steps about the last best in which the next is looked for, with twice as many lines; coarse steps about the search's answer. */
const REACH_STEPS = 2,
	FINE_REACH_STEPS = 4;
/** Steps on either side of the best through which a parabola is laid: the top is some values wide. */
const TOP_STEPS = 4;
/** Hz from one value to the next but one, at most: clicks are cut down to it. */
const STEEPEST_HZ = 400;
/**
 * One sigma of the length found, as a share of it, is this over the square of the lines: 1 in a million at 300. Leaning lines (made
 * charts have ten, as steep as meridians) matter more than noise from 10 to 40 dB, and the fewer lines, the less they differ from upright ones.
 */
const LEANING = 0.1;

export interface LinePeriod {
	readonly samples: number;
	/** Samples, about one sigma. */
	readonly uncertainty: number;
}

/**
 * Length of the lines that samples `from` to `to` hold, measured on the picture itself: lines are laid under one another with a trial
 * length, edges added up column by column, and the sums squared. What stands upright (frame, margin, text, phasing) makes this largest
 * when the length is right; what leans makes no column. First over 32 lines at a time, then twice as many, with trials twice as close
 * about the best; in the end over all lines with values twice as fine.
 */
export function linePeriod(track: Track, from: number, to: number, nominalSamples: number): LinePeriod {
	const coarse = blocksOf(track.means(from, to, COARSE_SAMPLES), nominalSamples / COARSE_SAMPLES, COARSE_BLOCK_LINES);
	if (coarse.sums.length === 0) return { samples: nominalSamples, uncertainty: RANGE * nominalSamples };
	const { lines } = coarse;
	let best: Trial = { stretch: 0, sharpness: 0 };
	let reach = RANGE;
	for (let span = Math.min(FIRST_LINES, lines); ; span = Math.min(2 * span, lines)) {
		const step = (COARSE_STEP * COARSE_SAMPLES) / (span * nominalSamples);
		best = bestOf(trialsAbout(coarse, best.stretch, step, Math.ceil(reach / step), span));
		reach = REACH_STEPS * step;
		if (span === lines) break;
	}
	const roughSamples = nominalSamples * (1 + best.stretch);
	const fine = blocksOf(track.means(from, to, FINE_SAMPLES), roughSamples / FINE_SAMPLES, FINE_BLOCK_LINES);
	if (fine.sums.length === 0) return { samples: roughSamples, uncertainty: (LEANING / (lines * lines)) * roughSamples };
	const step = (FINE_STEP * FINE_SAMPLES) / (fine.lines * roughSamples);
	const steps = Math.ceil((FINE_REACH_STEPS * COARSE_STEP * COARSE_SAMPLES) / (FINE_STEP * FINE_SAMPLES));
	const trials = trialsAbout(fine, 0, step, steps, fine.lines);
	const top = trials.indexOf(bestOf(trials));
	const stretch = trials[top]!.stretch + step * vertex(trials, top);
	return { samples: roughSamples * (1 + stretch), uncertainty: (LEANING / (fine.lines * fine.lines)) * roughSamples };
}

/** Lines in blocks: the edges of a block's lines, added up. */
interface Blocks {
	readonly sums: readonly Float32Array[];
	readonly blockLines: number;
	readonly lines: number;
	/** Values in a line, not whole. */
	readonly lineValues: number;
}

interface Trial {
	/** Share by which a line is longer than the blocks were cut. */
	readonly stretch: number;
	readonly sharpness: number;
}

function trialsAbout(blocks: Blocks, stretch: number, step: number, steps: number, span: number): readonly Trial[] {
	return Array.from({ length: 2 * steps + 1 }, (_, k) => {
		const trial = stretch + (k - steps) * step;
		return { stretch: trial, sharpness: sharpness(blocks, span, trial) };
	});
}

function bestOf(trials: readonly Trial[]): Trial {
	return trials.reduce((a, b) => (b.sharpness > a.sharpness ? b : a));
}

function blocksOf(hz: Float32Array, lineValues: number, blockLines: number): Blocks {
	const columns = Math.floor(lineValues);
	const count = Math.max(0, Math.floor((hz.length - 2) / (blockLines * lineValues)));
	const sums = Array.from({ length: count }, (_, block) => {
		const edges = new Float32Array(columns);
		for (let line = block * blockLines; line < (block + 1) * blockLines; line++) {
			const start = Math.round(line * lineValues);
			for (let n = 0; n < columns; n++) {
				edges[n] = edges[n]! + Math.max(-STEEPEST_HZ, Math.min(STEEPEST_HZ, hz[start + n + 2]! - hz[start + n]!));
			}
		}
		return edges;
	});
	return { sums, blockLines, lines: count * blockLines, lineValues };
}

/** Sum of the squares of the columns' sums, over each `span` lines, where lines are longer by `stretch`. */
function sharpness({ sums, blockLines, lineValues }: Blocks, span: number, stretch: number): number {
	const columns = sums[0]!.length;
	const column = new Float64Array(columns);
	let total = 0;
	for (const [number, block] of sums.entries()) {
		const shift = Math.round(stretch * lineValues * blockLines * number + dither(number));
		const first = ((shift % columns) + columns) % columns;
		for (let n = first; n < columns; n++) column[n - first] = column[n - first]! + block[n]!;
		for (let n = 0; n < first; n++) column[n + columns - first] = column[n + columns - first]! + block[n]!;
		if (((number + 1) * blockLines) % span !== 0 && number !== sums.length - 1) continue;
		for (let n = 0; n < columns; n++) total += column[n]! * column[n]!;
		column.fill(0);
	}
	return total;
}

/** Where the parabola that fits a top and its neighbours best has its vertex, in steps from the top; least squares. */
function vertex(trials: readonly Trial[], top: number): number {
	const reach = Math.min(TOP_STEPS, top, trials.length - 1 - top);
	if (reach === 0) return 0;
	const meanSquare = (reach * (reach + 1)) / 3;
	let [slope, slopes, curve, curves] = [0, 0, 0, 0];
	for (let k = -reach; k <= reach; k++) {
		const { sharpness } = trials[top + k]!;
		slope += k * sharpness;
		slopes += k * k;
		curve += (k * k - meanSquare) * sharpness;
		curves += (k * k - meanSquare) * (k * k - meanSquare);
	}
	return curve < 0 ? Math.max(-reach, Math.min(reach, (-0.5 * (slope / slopes)) / (curve / curves))) : 0;
}

/**
 * -1 to 1, spread like the sum of two independent even numbers over any run of blocks (golden section, root of 2). Shifts go by whole
 * values: with this their rounding smears all trials alike, without it those of few shifts would come out sharpest.
 */
function dither(number: number): number {
	const [a, b] = [0.6180339887498949 * number, 0.4142135623730951 * number];
	return a - Math.floor(a) + (b - Math.floor(b)) - 1;
}
