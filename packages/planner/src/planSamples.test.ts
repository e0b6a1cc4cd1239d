import { position } from "@skipwright/units";
import { expect, it } from "vitest";
import { lowSkySamples, planSamples } from "./planSamples.ts";

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

it("takes sixteen of them at most for a sky with few sunspots, from first to last", () => {
	for (const days of [1, 20, 32, 34, 100, 365]) {
		const all = planSamples(voyage(days));
		const low = lowSkySamples(all);
		expect(low.length).toBeLessThanOrEqual(16);
		expect(low.length).toBeGreaterThanOrEqual(Math.min(8, all.length));
		expect(low[0]).toBe(all[0]);
		expect(all.indexOf(low.at(-1)!)).toBeGreaterThanOrEqual(all.length - Math.ceil(all.length / 16));
	}
});
