import { PHASING_PULSE } from "./chartFigures.ts";

/** Columns into which a line is put to look at it. */
export const COLUMNS = 200;
/** Lines that are added up to find the first phasing. */
const BLOCK_LINES = 6;
/** Hz between black and white at least. */
const LEAST_CONTRAST_HZ = 150;
/** Correlation with the phasing found that makes a line one of it, and lines in a row that may fail (a fade, a crash of static). */
const LIKE_PHASING = 0.6,
	FAILED_LINES = 2;
/** Shares of the contrast: how far from its level a column may lie, in the mean. */
const ROUGHNESS = 0.15;

/** What phasing lines look like. */
export interface PhasingShape {
	/** A row that holds it. */
	readonly seed: number;
	/** Column of the rows at which lines begin: the first of the short part, or of the white half. */
	readonly column: number;
	/** Share of the line of the part that begins there. */
	readonly share: number;
	/** A line, 1 where it is white and -1 where black. */
	readonly template: Float64Array;
}

/** Lines that hold phasing: first, and one past the last. */
export interface PhasingRun {
	readonly from: number;
	readonly to: number;
}

/**
 * Finds the first phasing in rows of `COLUMNS` mean frequencies, wherever in them lines begin: a short part (5 %, black or white:
 * polarity is no clue) or two halves.
 */
export function phasingShape(rows: readonly Float64Array[]): PhasingShape | null {
	for (let seed = 0; seed + BLOCK_LINES <= rows.length; seed += BLOCK_LINES / 2) {
		const shape = shapeOf(meanRow(rows.slice(seed, seed + BLOCK_LINES)));
		if (shape === null) continue;
		const { from, to } = phasingRun(rows, { ...shape, seed, template: turned(shape.template, -shape.column) });
		if (to - from >= BLOCK_LINES) return { ...shape, seed };
	}
	return null;
}

/** Whether a row looks like the phasing found. */
export function isLikePhasing(row: Float64Array, template: Float64Array): boolean {
	return correlation(row, template) > LIKE_PHASING;
}

/** The lines about the seed that look like phasing, of rows that begin where lines begin. */
export function phasingRun(rows: readonly Float64Array[], { seed, template }: PhasingShape): PhasingRun {
	const isLike = rows.map((row) => isLikePhasing(row, template));
	const reach = (step: number) => {
		let [last, failed] = [seed, 0];
		for (let row = seed; row >= 0 && row < rows.length && failed <= FAILED_LINES; row += step) {
			if (isLike[row]) last = row;
			failed = isLike[row] ? 0 : failed + 1;
		}
		return last;
	};
	return { from: reach(-1), to: reach(1) + 1 };
}

/** The row as it is when read from `column` on. */
export function turned(row: Float64Array, column: number): Float64Array {
	return row.map((_, n) => row[(n + column + row.length) % row.length]!);
}

/** The two levels of a row, if it has just two, in two parts of the right lengths. */
function shapeOf(row: Float64Array): Pick<PhasingShape, "column" | "share" | "template"> | null {
	const sorted = row.slice().sort();
	const few = Math.round(0.03 * COLUMNS);
	const [low, high] = [mean(sorted.subarray(0, few)), mean(sorted.subarray(-few))];
	if (high - low < LEAST_CONTRAST_HZ) return null;
	const isHigh = Array.from(row, (value) => value > (low + high) / 2);
	const rises = columnsWhere((column) => isHigh[column]! && !isHigh.at(column - 1)!);
	const falls = columnsWhere((column) => !isHigh[column]! && isHigh.at(column - 1)!);
	if (rises.length !== 1 || falls.length !== 1) return null;
	const highShare = isHigh.filter(Boolean).length / COLUMNS;
	const shortShare = Math.min(highShare, 1 - highShare);
	const isPulse = Math.abs(shortShare - PHASING_PULSE) < 0.025;
	if (!isPulse && Math.abs(shortShare - 0.5) > 0.04) return null;
	const column = isPulse && highShare > 0.5 ? falls[0]! : rises[0]!;
	const template = turned(
		Float64Array.from(isHigh, (white) => (white ? 1 : -1)),
		column,
	);
	return roughness(row, isHigh) < ROUGHNESS ? { column, share: isPulse ? PHASING_PULSE : 0.5, template } : null;
}

/** Mean distance of the columns from their own level, as a share of the contrast; a column beside an edge may be anything. */
function roughness(row: Float64Array, isHigh: readonly boolean[]): number {
	const inner = columnsWhere((column) => isHigh.at(column - 1) === isHigh[column] && isHigh[(column + 1) % COLUMNS] === isHigh[column]);
	const level = (white: boolean) => mean(inner.filter((column) => isHigh[column] === white).map((column) => row[column]!));
	const [black, white] = [level(false), level(true)];
	return mean(inner.map((column) => Math.abs(row[column]! - (isHigh[column] ? white : black)))) / (white - black);
}

function columnsWhere(isSo: (column: number) => boolean): readonly number[] {
	return Array.from({ length: COLUMNS }, (_, column) => column).filter(isSo);
}

function meanRow(rows: readonly Float64Array[]): Float64Array {
	return new Float64Array(COLUMNS).map((_, column) => mean(rows.map((row) => row[column]!)));
}

function correlation(a: Float64Array, b: Float64Array): number {
	const [meanA, meanB] = [mean(a), mean(b)];
	let [product, squareA, squareB] = [0, 0, 0];
	for (let n = 0; n < a.length; n++) {
		product += (a[n]! - meanA) * (b[n]! - meanB);
		squareA += (a[n]! - meanA) * (a[n]! - meanA);
		squareB += (b[n]! - meanB) * (b[n]! - meanB);
	}
	const scale = Math.sqrt(squareA * squareB);
	return scale > 0 ? product / scale : 0;
}

function mean(values: ArrayLike<number>): number {
	let sum = 0;
	for (let n = 0; n < values.length; n++) sum += values[n]!;
	return values.length === 0 ? 0 : sum / values.length;
}
