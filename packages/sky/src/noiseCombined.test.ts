import { exp, log } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { combineNoise } from "./noiseCombined.ts";

const steady = (medianDb: number) => ({ medianDb, upperDecileDb: 0, lowerDecileDb: 0 });

describe("combineNoise", () => {
	it("adds three steady sources of 50 dB to 54.8 (power sum)", () => {
		const { medianDb, upperDecileDb, lowerDecileDb } = combineNoise([steady(50), steady(50), steady(50)]);
		expect(medianDb).toBeCloseTo(54.771, 3);
		expect(upperDecileDb).toBe(0);
		expect(lowerDecileDb).toBe(0);
	});

	it("gives one source back as it is", () => {
		const found = combineNoise([{ medianDb: 47.5, upperDecileDb: 10.6, lowerDecileDb: 5.3 }]);
		expect(found.medianDb).toBeCloseTo(47.5, 10);
		expect(found.upperDecileDb).toBeCloseTo(10.6, 10);
		expect(found.lowerDecileDb).toBeCloseTo(5.3, 10);
	});

	// The sum written out a second time, term by term, as the Recommendation is remembered (ITU-R P.372).
	it("is ITU-R P.372's log-normal sum, or the sum of medians where that is less", () => {
		const c = 10 / log(10);
		const source = fc.record({
			medianDb: fc.double({ min: 0, max: 90, noNaN: true }),
			upperDecileDb: fc.double({ min: 0.1, max: 14, noNaN: true }),
			lowerDecileDb: fc.double({ min: 0.1, max: 14, noNaN: true }),
		});
		fc.assert(
			fc.property(fc.array(source, { minLength: 1, maxLength: 4 }), (sources) => {
				const spread = (of: "upperDecileDb" | "lowerDecileDb") => {
					let a = 0;
					let v = 0;
					for (const each of sources) {
						const s = each[of] / 1.282 / c;
						const mean = exp(each.medianDb / c + (s * s) / 2);
						a += mean;
						v += mean * mean * (exp(s * s) - 1);
					}
					const sigma = c * Math.sqrt(log(1 + v / (a * a)));
					return { median: c * (log(a) - (sigma * sigma) / (2 * c * c)), decile: 1.282 * sigma };
				};
				const powerSum = c * log(sources.reduce((sum, { medianDb }) => sum + exp(medianDb / c), 0));
				const found = combineNoise(sources);
				expect(found.medianDb).toBeCloseTo(Math.min(spread("upperDecileDb").median, powerSum), 9);
				expect(found.upperDecileDb).toBeCloseTo(spread("upperDecileDb").decile, 7);
				expect(found.lowerDecileDb).toBeCloseTo(spread("lowerDecileDb").decile, 7);
				expect(found.medianDb).toBeLessThanOrEqual(powerSum + 1e-9);
				expect(found.medianDb).toBeGreaterThan(Math.max(...sources.map(({ medianDb }) => medianDb)) - 10);
			}),
			{ seed: 3 },
		);
	});
});
