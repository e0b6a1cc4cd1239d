import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bestHours } from "./bestHours.ts";

const day = (...spans: readonly (readonly [from: number, to: number, chance: number])[]) =>
	Array.from({ length: 24 }, (_, hour) => spans.find(([from, to]) => hour >= from && hour < to)?.[2] ?? 0);

describe("the best hours of a day", () => {
	test("are the run about as good as the best one, over midnight too", () => {
		expect(bestHours(day([6, 10, 0.9], [10, 12, 0.88], [12, 20, 0.8]))).toEqual({ hour: 6, fromHour: 6, toHour: 12 });
		expect(bestHours(day([22, 24, 0.8], [0, 3, 0.81]))).toEqual({ hour: 0, fromHour: 22, toHour: 3 });
		expect(bestHours(day([20, 24, 0.8]))).toEqual({ hour: 20, fromHour: 20, toHour: 24 });
		expect(bestHours(day([0, 24, 1]))).toEqual({ hour: 0, fromHour: 0, toHour: 24 });
	});

	test("hold the best one, and no hour in them is worse by more than 3 in a hundred; the next on either side is", () => {
		let partial = 0;
		fc.assert(
			fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }), (chances) => {
				const { hour, fromHour, toHour } = bestHours(chances);
				const most = Math.max(...chances);
				const length = toHour > fromHour ? toHour - fromHour : toHour + 24 - fromHour;
				const inside = Array.from({ length }, (_, i) => (fromHour + i) % 24);
				expect(chances[hour]).toBe(most);
				expect(inside).toContain(hour);
				expect(inside.every((at) => chances[at]! >= most - 0.03)).toBe(true);
				if (length === 24) return;
				partial++;
				expect(Math.max(chances[(fromHour + 23) % 24]!, chances[toHour % 24]!)).toBeLessThan(most - 0.03);
			}),
			{ seed: 3, numRuns: 200 },
		);
		expect(partial).toBeGreaterThan(150);
	});
});
