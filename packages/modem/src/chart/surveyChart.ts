import { MODEM_RATE_HZ } from "../receiver.ts";
import { type LinesPerMinute, lineSeconds } from "./chartFigures.ts";
import { type GreyLevels, imageLevels } from "./imageLevels.ts";
import { linePeriod } from "./linePeriod.ts";
import { marginColumn } from "./margin.ts";
import { COLUMNS, type PhasingRun, phasingRun, phasingShape } from "./phasing.ts";
import { createLineReader, type LineReader } from "./readLine.ts";
import type { Track } from "./track.ts";

/** Samples that make one shade where shades are counted: 0.5 ms. */
const SHADE_SAMPLES = 4;
/** Seconds from the start in which phasing may lie: 30 s of it, and what a bad start costs. */
const PHASING_WITHIN_S = 75;
/** Share of a line on either side of an edge in which it is measured. */
const EDGE_SHARE = 0.015;
/** Columns beside an edge that are left out of a level. */
const EDGE_COLUMNS = 2;
/** Hz, one sigma, that a discriminator's filter and the sender's own levels leave: estimate. */
const LEAST_UNCERTAINTY_HZ = 0.5;
/** Times the usual distance from the middle beyond which an edge was lost in static. */
const OUTLIER = 3;
/** Variances of the phasing's slope that chance allows. */
const DISAGREEMENT = 6;
/** Lines looked at for the margin, at most. */
const MARGIN_LINES = 400;

/** What the frequencies of a chart, so far, tell of its lines and shades. */
export interface ChartSurvey {
	/** Samples in a line, one sigma of it in parts of a million, and sample at which the picture's first line begins. */
	readonly lineSamples: number;
	readonly linePpm: number;
	readonly firstLineAt: number;
	readonly phaseFrom: "phasing" | "margin" | "nothing";
	readonly levels: GreyLevels;
	/** Phasing lines look so when read from `firstLineAt` on by whole lines; null without phasing. */
	readonly phasingTemplate: Float64Array | null;
}

/** Looks at samples `from` to `to` of a track that holds a chart's lines, phasing included. */
export function surveyChart(track: Track, from: number, to: number, linesPerMinute: LinesPerMinute): ChartSurvey {
	const period = linePeriod(track, from, to, lineSeconds(linesPerMinute) * MODEM_RATE_HZ);
	const lineSamples = period.samples;
	const read = createLineReader(track);
	const lines = Math.floor((to - from) / lineSamples);
	const searched = Math.min(lines, Math.round((PHASING_WITHIN_S * MODEM_RATE_HZ) / lineSamples));
	const shape = phasingShape(rowsOf(read, from, lineSamples, searched, 1));
	if (shape !== null) {
		const beginAt = from + (shape.column / COLUMNS) * lineSamples;
		const rows = rowsOf(read, beginAt, lineSamples, searched - 1, 1);
		const run = phasingRun(rows, shape);
		const levels = phasingLevels(rows.slice(run.from, run.to), shape.share);
		const edges = edgesOf(track, { beginAt, lineSamples, run, levels, isRise: shape.template[0]! > 0 });
		const fit = straightLine(edges);
		// Both measures of the line's length, each by its certainty: the picture's, and the phasing's own. Where they disagree by more
		// than chance allows, the picture leans.
		const b = fit.slopeError * fit.slopeError;
		const a = Math.max(period.uncertainty * period.uncertainty, fit.slope * fit.slope - DISAGREEMENT * b);
		const best = lineSamples + fit.slope * (a / (a + b));
		return {
			lineSamples: best,
			linePpm: (1e6 * Math.sqrt((a * b) / (a + b))) / best,
			firstLineAt: fit.middleValue + fit.middleLine * lineSamples + (run.to - fit.middleLine) * best,
			phaseFrom: "phasing",
			levels,
			phasingTemplate: shape.template,
		};
	}
	const every = Math.max(1, Math.floor(lines / MARGIN_LINES));
	const column = marginColumn(rowsOf(read, from, lineSamples, Math.floor(lines / every), every));
	return {
		lineSamples,
		linePpm: (1e6 * period.uncertainty) / lineSamples,
		firstLineAt: from + ((column ?? 0) / COLUMNS) * lineSamples,
		phaseFrom: column === null ? "nothing" : "margin",
		levels: imageLevels(track.means(from, to, SHADE_SAMPLES)),
		phasingTemplate: null,
	};
}

function rowsOf(read: LineReader, from: number, lineSamples: number, count: number, every: number): readonly Float64Array[] {
	return Array.from({ length: count }, (_, k) => {
		const row = new Float64Array(COLUMNS);
		read(from + k * every * lineSamples, lineSamples, row);
		return row;
	});
}

/** Means of the short and the long part over all phasing lines, away from the edges. */
function phasingLevels(rows: readonly Float64Array[], share: number): GreyLevels {
	const border = Math.round(share * COLUMNS);
	const first = rows.map((row) => meanOf(row.subarray(EDGE_COLUMNS, border - EDGE_COLUMNS)));
	const second = rows.map((row) => meanOf(row.subarray(border + EDGE_COLUMNS, COLUMNS - EDGE_COLUMNS)));
	const [a, b] = [middleOf(first), middleOf(second)];
	const scatter = Math.sqrt(varianceOf(first) + varianceOf(second)) / 2 / Math.sqrt(first.length);
	return {
		blackHz: Math.min(a, b),
		whiteHz: Math.max(a, b),
		uncertaintyHz: Math.sqrt(scatter * scatter + LEAST_UNCERTAINTY_HZ * LEAST_UNCERTAINTY_HZ),
	};
}

interface EdgeSearch {
	readonly beginAt: number;
	readonly lineSamples: number;
	readonly run: PhasingRun;
	readonly levels: GreyLevels;
	readonly isRise: boolean;
}

interface Edge {
	readonly line: number;
	/** Sample of the leading edge, less `line` times the length of a line. */
	readonly at: number;
}

/** The leading edge of each phasing line: around it, the area under the curve tells where it lies, noise and all. */
function edgesOf(track: Track, { beginAt, lineSamples, run, levels, isRise }: EdgeSearch): readonly Edge[] {
	const reach = Math.round(EDGE_SHARE * lineSamples);
	const window = new Float64Array(2 * reach);
	const { blackHz, whiteHz } = levels;
	return Array.from({ length: run.to - run.from }, (_, k) => {
		const line = run.from + k;
		const coarse = Math.round(beginAt + line * lineSamples);
		track.copy(coarse - reach, window);
		const whiteShare = (meanOf(window) - blackHz) / (whiteHz - blackHz);
		const afterSamples = (isRise ? whiteShare : 1 - whiteShare) * window.length;
		return { line, at: coarse + reach - afterSamples - line * lineSamples };
	});
}

interface StraightLine {
	readonly middleLine: number;
	readonly middleValue: number;
	/** Samples a line by which lines are longer than thought, and one sigma. */
	readonly slope: number;
	readonly slopeError: number;
}

/** Least squares through the edges, those lost in static left out. */
function straightLine(edges: readonly Edge[]): StraightLine {
	const usual = middleOf(edges.map(({ at }) => at));
	const scatter = middleOf(edges.map(({ at }) => Math.abs(at - usual)));
	const good = edges.filter(({ at }) => Math.abs(at - usual) <= OUTLIER * scatter + 0.01);
	const middleLine = meanOf(good.map(({ line }) => line));
	const middleValue = meanOf(good.map(({ at }) => at));
	const spread = good.reduce((sum, { line }) => sum + (line - middleLine) * (line - middleLine), 0);
	const slope = good.reduce((sum, { line, at }) => sum + (line - middleLine) * (at - middleValue), 0) / spread;
	const residual = varianceOf(good.map(({ line, at }) => at - slope * (line - middleLine)));
	return { middleLine, middleValue, slope, slopeError: Math.sqrt(residual / spread) };
}

/** Mean of the middle half: single lines lost in static don't count. */
function middleOf(values: readonly number[]): number {
	const sorted = values.toSorted((a, b) => a - b);
	const quarter = Math.floor(sorted.length / 4);
	return meanOf(sorted.slice(quarter, sorted.length - quarter));
}

function meanOf(values: ArrayLike<number>): number {
	let sum = 0;
	for (let n = 0; n < values.length; n++) sum += values[n]!;
	return values.length === 0 ? 0 : sum / values.length;
}

function varianceOf(values: readonly number[]): number {
	const mean = meanOf(values);
	return meanOf(values.map((value) => (value - mean) * (value - mean)));
}
