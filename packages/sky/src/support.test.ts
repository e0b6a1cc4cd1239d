import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chanceOfSupport } from "./support.ts";

const spread = fc.record({
	lower: fc.double({ min: 0.5, max: 0.99, noNaN: true }),
	upper: fc.double({ min: 1.01, max: 1.5, noNaN: true }),
});

describe("chance of support", () => {
	it("is 0.9 at the lower decile, 0.5 at the median, 0.1 at the upper: the deciles' meaning", () => {
		fc.assert(
			fc.property(spread, fc.double({ min: 2, max: 30, noNaN: true }), (deciles, muf) => {
				expect(chanceOfSupport(deciles.lower * muf, muf, deciles)).toBeCloseTo(0.9, 9);
				expect(chanceOfSupport(muf, muf, deciles)).toBeCloseTo(0.5, 12);
				expect(chanceOfSupport(deciles.upper * muf, muf, deciles)).toBeCloseTo(0.1, 9);
			}),
			{ seed: 36, numRuns: 500 },
		);
	});

	it("lies between 0 and 1 and falls with frequency", () => {
		fc.assert(
			fc.property(spread, fc.double({ min: 0.1, max: 40, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true }), (deciles, f, more) => {
				const lower = chanceOfSupport(f, 10, deciles);
				const higher = chanceOfSupport(f + more, 10, deciles);
				return lower <= 1 && higher >= 0 && higher <= lower;
			}),
			{ seed: 37, numRuns: 1000 },
		);
	});
});
