import { position } from "@skipwright/units";
import { expect, it } from "vitest";
import { planSamples } from "./planSamples.ts";

const DAY = 86_400_000;
const voyage = (days: number) => ({
	points: [
		{ name: "a", position: position(0, 0), arriveMs: 0, departMs: 0 },
		{ name: "b", position: position(10, 10), arriveMs: days * DAY, departMs: days * DAY },
	],
});

it("looks every two days, and at no more than 72 positions of one long leg; the days add up", () => {
	expect([10, 100, 144, 365, 3_650].map((days) => planSamples(voyage(days)).length)).toEqual([5, 50, 72, 72, 72]);
	for (const days of [10, 365]) {
		expect(planSamples(voyage(days)).reduce((sum, sample) => sum + sample.days, 0)).toBeCloseTo(days, 9);
	}
});
