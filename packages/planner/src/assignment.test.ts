import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cheapestAssignment } from "./assignment.ts";

/** Least sum over all ways of giving each row a column of its own. */
function bruteCost(costs: readonly (readonly number[])[], row = 0, taken: ReadonlySet<number> = new Set()): number {
	if (row === costs.length) return 0;
	let least = Number.POSITIVE_INFINITY;
	for (const [column, cost] of costs[row]!.entries()) {
		if (!taken.has(column)) least = Math.min(least, cost + bruteCost(costs, row + 1, new Set([...taken, column])));
	}
	return least;
}

const table = (rows: number, columns: number) =>
	fc.array(fc.array(fc.integer({ min: -9, max: 30 }), { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });

describe("cheapestAssignment", () => {
	it("costs what the cheapest of all ways costs, square and oblong, up to 7", () => {
		let compared = 0;
		const sizes = fc
			.integer({ min: 1, max: 7 })
			.chain((columns) => fc.integer({ min: 1, max: columns }).chain((rows) => table(rows, columns)));
		fc.assert(
			fc.property(sizes, (costs) => {
				const columnOf = cheapestAssignment(costs);
				expect(new Set(columnOf).size).toBe(costs.length);
				expect(columnOf.reduce((sum, column, row) => sum + costs[row]![column]!, 0)).toBe(bruteCost(costs));
				compared++;
			}),
			{ seed: 20261127, numRuns: 300 },
		);
		expect(compared).toBe(300);
	});

	it("takes none, and refuses more rows than columns", () => {
		expect(cheapestAssignment([])).toEqual([]);
		expect(() => cheapestAssignment([[1], [2]])).toThrow("Cannot assign 2 rows as there are 1 columns");
	});
});
