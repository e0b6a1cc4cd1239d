import { describe, expect, it } from "vitest";
import { monthCoefficients } from "./mapCoefficients.ts";
import { FOF2_SHAPE, M3000_SHAPE } from "./mapFunctions.ts";

describe("monthCoefficients", () => {
	it("holds 2858 numbers a month, none missing", () => {
		let compared = 0;
		for (let month = 1; month <= 12; month++) {
			const { foF2, m3000F2 } = monthCoefficients(month);
			for (const level of [foF2.low, foF2.high, m3000F2.low, m3000F2.high]) {
				compared += level.length;
				expect(level.every(Number.isFinite)).toBe(true);
			}
		}
		expect(compared).toBe(12 * 2858);
	});

	it("has January's numbers where the published order puts them (CCIR, by PyIRI 0.1.6)", () => {
		const { foF2, m3000F2 } = monthCoefficients(1);
		const at = (shape: typeof FOF2_SHAPE, level: Float64Array, j: number, k: number) =>
			level[shape.publishedDiurnal.indexOf(j) * shape.geographic + shape.publishedGeographic.indexOf(k)];
		expect([0, 1, 2].map((j) => at(FOF2_SHAPE, foF2.low, j, 0))).toEqual([5.2396593, -0.056523629, -0.018704617]);
		expect(at(M3000_SHAPE, m3000F2.low, 0, 0)).toBe(3.083159);
		expect(at(M3000_SHAPE, m3000F2.high, 0, 0)).toBe(2.6661365);
		expect(at(M3000_SHAPE, m3000F2.high, 8, 48)).toBe(0.00080582756);
	});

	it("uses every published place once", () => {
		for (const shape of [FOF2_SHAPE, M3000_SHAPE]) {
			const numbersUpTo = (count: number) => Array.from({ length: count }, (_, i) => i);
			expect(shape.publishedGeographic.toSorted((a, b) => a - b)).toEqual(numbersUpTo(shape.geographic));
			expect(shape.publishedDiurnal.toSorted((a, b) => a - b)).toEqual(numbersUpTo(shape.even + shape.odd));
		}
		expect([FOF2_SHAPE.geographic, M3000_SHAPE.geographic]).toEqual([76, 49]);
	});

	it("refuses a month that is none", () => {
		for (const month of [0, 13, 1.5, Number.NaN]) expect(() => monthCoefficients(month)).toThrow(RangeError);
	});
});
