import { hz } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { planDifference } from "./planDifference.ts";
import type { Plan, PlannedPlace } from "./planDocument.ts";

const place = (number: number, khz: number): PlannedPlace =>
	({
		bank: "voice",
		place: number,
		tag: `T${khz}`,
		receiveHz: hz(khz * 1_000),
		transmitHz: null,
		mode: "USB",
		what: `${khz}`,
	}) as PlannedPlace;

const plan = (places: readonly PlannedPlace[], hours: readonly [number, number], days: readonly [number, number] = [1, 3]): Plan =>
	({
		status: "optimal",
		gap: 0,
		places,
		legs: [
			{ name: "out", days: days[0] },
			{ name: "home", days: days[1] },
		],
		served: hours.map((after, i) => ({ want: "time", leg: i === 0 ? "out" : "home", hoursPerDay: { before: 0, after } })),
	}) as unknown as Plan;

describe("planDifference", () => {
	it("tells what comes, goes and moves, and the hours over all legs by their days", () => {
		const before = plan([place(1, 4_000), place(2, 5_000), place(3, 6_000)], [4, 8]);
		const after = plan([place(1, 4_000), place(2, 7_000), place(9, 6_000)], [4, 12]);
		const difference = planDifference(before, after);
		expect(difference.enters).toEqual([{ bank: "voice", place: 2, tag: "T7000", what: "7000" }]);
		expect(difference.leaves).toEqual([{ bank: "voice", place: 2, tag: "T5000", what: "5000" }]);
		expect(difference.moves.map(({ from, to }) => [from.place, to.place])).toEqual([[3, 9]]);
		expect(difference.hours).toEqual([{ want: "time", before: 7, after: 10 }]);
	});

	it("is nothing from a plan to itself, repeated places too", () => {
		const same = plan([place(1, 4_000), place(2, 4_000)], [1, 1]);
		expect(planDifference(same, same)).toMatchObject({ enters: [], leaves: [], moves: [] });
		expect(planDifference(same, plan([place(1, 4_000), place(5, 4_000)], [1, 1])).moves).toHaveLength(1);
	});
});
