import { describe, expect, it } from "vitest";
import { gaussian, prng } from "./random.ts";

describe("prng", () => {
	it("gives the same numbers for a seed, others for another", () => {
		const take = (seed: number) => Array.from({ length: 5 }, prng(seed));
		expect(take(1)).toEqual(take(1));
		expect(take(1)).not.toEqual(take(2));
	});

	it("is uniform: 100 boxes of a million numbers, chi-squared below its 99.9 % point", () => {
		const random = prng(20261127);
		const boxes = new Float64Array(100);
		for (let i = 0; i < 1_000_000; i++) boxes[Math.floor(random() * 100)]! += 1;
		const chiSquared = boxes.reduce((sum, count) => sum + (count - 10_000) ** 2 / 10_000, 0);
		expect(chiSquared).toBeLessThan(148.2); // 99 degrees of freedom: tables
		expect(chiSquared).toBeGreaterThan(60);
	});
});

describe("gaussian", () => {
	it("has the moments and tails of the unit normal", () => {
		const next = gaussian(prng(7));
		const count = 1_000_000;
		const sums = [0, 0, 0, 0, 0];
		let beyondThree = 0;
		for (let i = 0; i < count; i++) {
			const x = next();
			for (let k = 1; k <= 4; k++) sums[k]! += x ** k / count;
			if (Math.abs(x) > 3) beyondThree++;
		}
		expect(sums[1]).toBeCloseTo(0, 2);
		expect(sums[2]).toBeCloseTo(1, 2);
		expect(Math.abs(sums[3]!)).toBeLessThan(0.01); // four sigma: 4 sqrt(6 / 1e6)
		expect(Math.abs(sums[4]! - 3)).toBeLessThan(0.02); // four sigma: 4 sqrt(24 / 1e6)
		expect(Math.abs(beyondThree - 2_700)).toBeLessThan(210); // 0.27 %, four sigma
	});
});
