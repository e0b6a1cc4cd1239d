import { describe, expect, it } from "vitest";
import { analytic } from "./analytic.ts";

describe("analytic", () => {
	it.each([8_000, 48_000])("turns every tone by a quarter, at %d samples a second", (rateHz) => {
		let compared = 0;
		for (const toneHz of [100, 300, 1_000, 1_700, 3_000, rateHz / 2 - 100]) {
			const { real, imaginary } = analytic(
				Float64Array.from({ length: 0.25 * rateHz }, (_, n) => Math.cos((2 * Math.PI * toneHz * n) / rateHz)),
				rateHz,
			);
			expect(real).toHaveLength(imaginary.length);
			for (let n = rateHz / 10; n < rateHz / 10 + 400; n++, compared++) {
				expect(Math.abs(imaginary[n]! - Math.sin((2 * Math.PI * toneHz * n) / rateHz))).toBeLessThan(7e-4);
			}
		}
		expect(compared).toBe(6 * 400);
	});
});
