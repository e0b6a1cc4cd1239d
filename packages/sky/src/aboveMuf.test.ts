import { describe, expect, it } from "vitest";
import { eAboveMufDb, f2AboveMufDb } from "./aboveMuf.ts";

describe("loss above the MUF, from memory", () => {
	it("is none up to the MUF, and begins with a step", () => {
		expect([eAboveMufDb(9, 10), eAboveMufDb(10, 10), f2AboveMufDb(10, 10, 1000), f2AboveMufDb(10, 10, 5000)]).toEqual([0, 0, 0, 0]);
		expect(eAboveMufDb(10 + 1e-9, 10)).toBeCloseTo(5, 2);
		expect(f2AboveMufDb(10 + 1e-9, 10, 3000)).toBeCloseTo(5, 2);
		expect(f2AboveMufDb(10 + 1e-9, 10, 3001)).toBeCloseTo(8, 2);
	});

	it("grows up to 58, 60 and 80 dB", () => {
		expect(eAboveMufDb(12.5, 10)).toBeCloseTo(28, 12);
		expect(f2AboveMufDb(12.5, 10, 3000)).toBeCloseTo(23, 12);
		expect(f2AboveMufDb(12.5, 10, 3001)).toBeCloseTo(25.5, 12);
		expect([eAboveMufDb(90, 10), f2AboveMufDb(90, 10, 100), f2AboveMufDb(90, 10, 6000)]).toEqual([58, 60, 80]);
	});
});
