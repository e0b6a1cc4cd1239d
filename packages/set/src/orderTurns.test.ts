import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fewestTurns } from "./fewestTurns.ts";
import { orderTurns } from "./orderTurns.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import type { Turn } from "./types.ts";

const turn = (stepHz: number, clicks: number): Turn => ({ stepHz: hz(stepHz), clicks });

describe("orderTurns", () => {
	it("leaves an order alone that stays within the range", () => {
		const turns = [turn(10_000, 5), turn(1_000, -2)];
		expect(orderTurns(hz(8_113_000), turns, { fromHz: 500_000, toHz: 29_999_900 })).toEqual(turns);
	});

	it("puts the way back before the way over the edge", () => {
		expect(orderTurns(hz(99), [turn(10, 1), turn(1, -9)], { fromHz: 0, toHz: 100 })).toEqual([turn(1, -9), turn(10, 1)]);
	});

	it("splits one step's turns where nothing else keeps the dial in the range", () => {
		expect(orderTurns(hz(0), [turn(10, 10), turn(1, -1)], { fromHz: 0, toHz: 99 })).toEqual([turn(10, 9), turn(1, -1), turn(10, 1)]);
	});

	it("returns the turns as they are where no order keeps the dial in the range", () => {
		const turns = [turn(10, 1), turn(7, -1)];
		expect(orderTurns(hz(1), turns, { fromHz: 0, toHz: 5 })).toEqual(turns);
	});

	it("keeps the dial of every shipped set with a knob within its range, click by click, and loses no click", () => {
		let compared = 0;
		for (const { receive, tuningStepsHz, entry } of shippedProfiles()) {
			if (entry === "keypad") continue;
			const [range] = receive;
			const finest = tuningStepsHz[0];
			if (range === undefined || finest === undefined) throw new Error("a profile has a range and a step");
			const dial = fc.oneof(
				fc.integer({ min: range.fromHz / finest, max: range.toHz / finest }),
				fc.integer({ min: range.fromHz / finest, max: range.fromHz / finest + 200 }),
				fc.integer({ min: range.toHz / finest - 200, max: range.toHz / finest }),
			);
			fc.assert(
				fc.property(dial, dial, (a, b) => {
					const turns = fewestTurns(hz(a * finest), hz(b * finest), tuningStepsHz, true) ?? [];
					let at = a * finest;
					for (const { stepHz, clicks } of orderTurns(hz(at), turns, range)) {
						at += stepHz * clicks;
						expect(at).toBeGreaterThanOrEqual(range.fromHz);
						expect(at).toBeLessThanOrEqual(range.toHz);
						compared++;
					}
					expect(at).toBe(b * finest);
				}),
				{ seed: 20261124, numRuns: 1_000 },
			);
		}
		expect(compared).toBeGreaterThan(4_000);
	});
});
