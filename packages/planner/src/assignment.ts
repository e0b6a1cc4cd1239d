/**
 * The cheapest way to give each row a column of its own, by shortest augmenting paths in O(rows^2 columns) (the Hungarian method as in
 * Jonker and Volgenant 1987).
 * @param costs one row each, as many columns as rows or more; whole numbers keep it exact
 * @returns column of each row
 */
export function cheapestAssignment(costs: readonly (readonly number[])[]): readonly number[] {
	const columns = costs[0]?.length ?? 0;
	if (columns < costs.length) throw new RangeError(`Cannot assign ${costs.length} rows as there are ${columns} columns`);
	const rowPrice = costs.map(() => 0);
	const columnPrice: number[] = Array.from({ length: columns }, () => 0);
	/** Row of each column; -1 while it is free. */
	const rowOf: number[] = Array.from({ length: columns }, () => -1);
	for (const row of costs.keys()) {
		const distance: number[] = Array.from({ length: columns }, () => Number.POSITIVE_INFINITY);
		const before: number[] = Array.from({ length: columns }, () => -1);
		const isDone: boolean[] = Array.from({ length: columns }, () => false);
		let at = row;
		let via = -1;
		let end = -1;
		while (end < 0) {
			const reached = via < 0 ? 0 : distance[via]!;
			let next = -1;
			for (let column = 0; column < columns; column++) {
				if (isDone[column]) continue;
				const reduced = reached + costs[at]![column]! - rowPrice[at]! - columnPrice[column]!;
				if (reduced < distance[column]!) {
					distance[column] = reduced;
					before[column] = via;
				}
				if (next < 0 || distance[column]! < distance[next]!) next = column;
			}
			isDone[next] = true;
			via = next;
			if (rowOf[next]! < 0) end = next;
			else at = rowOf[next]!;
		}
		const length = distance[end]!;
		for (let column = 0; column < columns; column++) {
			if (!isDone[column] || column === end) continue;
			rowPrice[rowOf[column]!]! += length - distance[column]!;
			columnPrice[column]! -= length - distance[column]!;
		}
		rowPrice[row]! += length;
		for (let column = end; column >= 0; ) {
			const from = before[column]!;
			rowOf[column] = from < 0 ? row : rowOf[from]!;
			column = from;
		}
	}
	const columnOf = costs.map(() => -1);
	for (const [column, row] of rowOf.entries()) if (row >= 0) columnOf[row] = column;
	return columnOf;
}
