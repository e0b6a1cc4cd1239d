import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { HOPELESS_DB } from "./circuit.ts";
import { MEMORY } from "./fromMemory.ts";
import { chanceOf } from "./reliabilityChance.ts";
import {
	groundRatioLowerDb,
	groundRatioUpperDb,
	signalLowerDb,
	signalUpperDb,
	skyRatioLowerDb,
	skyRatioUpperDb,
	WIDEST_UPPER_DB,
} from "./reliabilitySpread.ts";

const decibels = fc.double({ min: -80, max: 80, noNaN: true });
const spread = fc.double({ min: 0.1, max: 30, noNaN: true });

describe("chanceOf (ITU-R P.842's formulas, from memory; fixed by their own three points)", () => {
	it("is 0.9 a lower decile above the need, 0.5 at it, 0.1 an upper decile under it", () => {
		fc.assert(
			fc.property(decibels, spread, spread, (neededDb, upperDb, lowerDb) => {
				const at = (snrDb: number): number => chanceOf({ snrDb, neededDb, upperDb, lowerDb });
				expect(at(neededDb + lowerDb)).toBeCloseTo(0.9, 9);
				expect(at(neededDb)).toBe(0.5);
				expect(at(neededDb - upperDb)).toBeCloseTo(0.1, 9);
			}),
			{ seed: 3 },
		);
	});

	it("rises with the ratio, so with power, and stays within 0 and 1", () => {
		fc.assert(
			fc.property(
				decibels,
				decibels,
				fc.double({ min: 0, max: 20, noNaN: true }),
				spread,
				spread,
				(snrDb, neededDb, more, upperDb, lowerDb) => {
					const chance = chanceOf({ snrDb, neededDb, upperDb, lowerDb });
					expect(chance).toBeGreaterThanOrEqual(0);
					expect(chance).toBeLessThanOrEqual(1);
					expect(chanceOf({ snrDb: snrDb + more, neededDb, upperDb, lowerDb })).toBeGreaterThanOrEqual(chance);
				},
			),
			{ seed: 3, numRuns: 1000 },
		);
	});

	it("without a spread is all, half or nothing", () => {
		const at = (snrDb: number): number => chanceOf({ snrDb, neededDb: 9, upperDb: 0, lowerDb: 0 });
		expect([at(9.1), at(9), at(8.9)]).toEqual([1, 0.5, 0]);
	});

	it("is nothing where a ratio counts as hopeless, by the widest decile of all", () => {
		const at = (snrDb: number): number => chanceOf({ snrDb, neededDb: 0, upperDb: WIDEST_UPPER_DB, lowerDb: 1 });
		expect(at(-HOPELESS_DB)).toBe(0);
		expect(at(1 - HOPELESS_DB)).toBeGreaterThan(0);
	});
});

describe("the spread of signal to noise", () => {
	it("gives the table's columns and what lies between (ITU-R P.842, from memory)", () => {
		const { overMuf, below60, from60 } = MEMORY.signalDeciles.value;
		expect(overMuf).toHaveLength(10);
		for (const [latitude, { lower, upper }] of [["below60", below60] as const, ["from60", from60] as const]) {
			expect(lower).toHaveLength(10);
			expect(upper).toHaveLength(10);
			overMuf.forEach((ratio, i) => {
				expect(signalLowerDb(ratio, latitude)).toBe(lower[i]);
				expect(signalUpperDb(ratio, latitude)).toBe(upper[i]);
			});
		}
		expect(signalLowerDb(0.9, "below60")).toBeCloseTo(10, 10);
		expect(signalUpperDb(2.5, "from60")).toBeCloseTo(8.5, 10);
		expect(signalLowerDb(0.1, "below60")).toBe(8);
		expect(signalUpperDb(9, "below60")).toBe(7);
	});

	it("adds day, hour and the noise's opposite decile in squares; a ground wave has 3 dB of its own", () => {
		expect(skyRatioLowerDb(0.5, "below60", 10.6)).toBeCloseTo(Math.sqrt(64 + 64 + 10.6 * 10.6), 10);
		expect(skyRatioUpperDb(0.5, "below60", 5.3)).toBeCloseTo(Math.sqrt(36 + 25 + 5.3 * 5.3), 10);
		expect(groundRatioLowerDb(4)).toBe(5);
		expect(groundRatioUpperDb(4)).toBe(5);
	});
});
