/** Share of the middling column's variance that a margin's columns stay below. */
const QUIET = 0.2;
/** Share of a line that the margin takes at least, and at most to be one. */
const NARROWEST = 0.025,
	WIDEST = 0.3;
/** Share of a line from the middle of the margin to where the line begins: half of the dead sector of 5 %. */
const HALF_DEAD_SECTOR = 0.025;

/**
 * Column at which lines begin, from a picture alone: the longest strip that is the same in all rows, taken round the edge, is the
 * margin with the dead sector in it. Null when nothing stands out.
 */
export function marginColumn(rows: readonly Float64Array[]): number | null {
	const columns = rows[0]?.length ?? 0;
	const variances = Array.from({ length: columns }, (_, column) => varianceOf(rows, column));
	const limit = QUIET * (variances.toSorted((a, b) => a - b)[Math.floor(columns / 2)] ?? 0);
	let best = { from: 0, length: 0 };
	for (let from = 0; from < columns; from++) {
		let length = 0;
		while (length < columns && variances[(from + length) % columns]! < limit) length++;
		if (length > best.length) best = { from, length };
	}
	if (best.length < NARROWEST * columns || best.length > WIDEST * columns) return null;
	const start = Math.round(best.from + best.length / 2 - HALF_DEAD_SECTOR * columns);
	return (start + columns) % columns;
}

function varianceOf(rows: readonly Float64Array[], column: number): number {
	let [sum, square] = [0, 0];
	for (const row of rows) {
		sum += row[column]!;
		square += row[column]! * row[column]!;
	}
	const mean = sum / rows.length;
	return square / rows.length - mean * mean;
}
