import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundToSteps } from "./roundToSteps.ts";

describe("roundToSteps", () => {
	it.each([
		[8_680_100, 100, 8_680_100, 0],
		[8_112_775, 100, 8_112_800, -25],
		[8_112_749, 100, 8_112_700, 49],
		[8_112_750, 100, 8_112_800, -50],
		[490, 1_000, 0, 490],
	])("takes %i Hz in steps of %i to %i, %i left", (dial, step, tunable, residue) => {
		expect(roundToSteps(hz(dial), hz(step))).toEqual({ tunableHz: tunable, residueHz: residue });
	});

	it("lands on a step, within half of it, and is done after one turn", () => {
		fc.assert(
			fc.property(fc.integer({ min: 0, max: 30_000_000 }), fc.integer({ min: 1, max: 10_000 }), (dial, step) => {
				const { tunableHz, residueHz } = roundToSteps(hz(dial), hz(step));
				expect(tunableHz % step).toBe(0);
				expect(tunableHz + residueHz).toBe(dial);
				expect(Math.abs(residueHz) * 2).toBeLessThanOrEqual(step);
				expect(roundToSteps(tunableHz, hz(step)).residueHz).toBe(0);
			}),
			{ seed: 6 },
		);
	});
});
