import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatKhz, formatKhzFixed, hz, parseKhz } from "./hz.ts";

const PROPERTY = { seed: 2187_500, numRuns: 2_000 };
const anyHz = fc.integer({ min: 0, max: 999_999_999 }).map(hz);

describe("hz", () => {
	it("takes whole hertz from 0 to 1 GHz and nothing else", () => {
		expect([hz(0), hz(2_187_500), hz(1_000_000_000)]).toEqual([0, 2_187_500, 1_000_000_000]);
		for (const bad of [-1, 0.5, 1_000_000_001, Number.NaN, Infinity]) expect(() => hz(bad)).toThrow(RangeError);
		expect(() => hz(2_187.5)).toThrow("2187.5");
	});
});

describe("parseKhz", () => {
	it("is exact to the hertz", () => {
		const read = ["2182", "2187.5", "8414.5", "4209.5", "0.001", "999999.999", " 518 ", "12579.0", "004125"].map(parseKhz);
		expect(read).toEqual([2_182_000, 2_187_500, 8_414_500, 4_209_500, 1, 999_999_999, 518_000, 12_579_000, 4_125_000]);
	});

	it("guesses at nothing", () => {
		const bad = [
			"",
			" ",
			"2187,5",
			"2 187.5",
			"2187.5000",
			"2.1875e3",
			"-2182",
			"+2182",
			".5",
			"2182.",
			"2182 kHz",
			"0x10",
			"1234567",
			"٢",
		];
		for (const text of bad) expect(() => parseKhz(text), text).toThrow(SyntaxError);
		expect(() => parseKhz("2187,5")).toThrow('got "2187,5"');
	});

	it("reads back every frequency that formatKhz writes", () => {
		fc.assert(
			fc.property(anyHz, (value) => {
				expect(parseKhz(formatKhz(value))).toBe(value);
				expect(parseKhz(formatKhzFixed(value, 3))).toBe(value);
			}),
			PROPERTY,
		);
	});

	it("gives a frequency or a SyntaxError for any text", () => {
		const texts = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."0123456789.,-+e k") }));
		fc.assert(
			fc.property(texts, (text) => {
				try {
					expect(Number.isInteger(parseKhz(text))).toBe(true);
				} catch (error) {
					expect(error).toBeInstanceOf(SyntaxError);
				}
			}),
			PROPERTY,
		);
	});
});

describe("formatKhz", () => {
	it("is the shortest exact text", () => {
		const written = [0, 1, 100, 518_000, 2_187_500, 8_680_000, 8_000_010].map((value) => formatKhz(hz(value)));
		expect(written).toEqual(["0", "0.001", "0.1", "518", "2187.5", "8680", "8000.01"]);
	});
});

describe("formatKhzFixed", () => {
	it("rounds half up as a display does", () => {
		const value = hz(8_780_150);
		expect([0, 1, 2, 3].map((decimals) => formatKhzFixed(value, decimals))).toEqual(["8780", "8780.2", "8780.15", "8780.150"]);
		expect([formatKhzFixed(hz(2_999_950), 1), formatKhzFixed(hz(499), 0), formatKhzFixed(hz(500), 0)]).toEqual(["3000.0", "0", "1"]);
	});

	it("stays within half its last digit", () => {
		fc.assert(
			fc.property(anyHz, fc.integer({ min: 0, max: 3 }), (value, decimals) => {
				const shown = Math.round(Number(formatKhzFixed(value, decimals)) * 1000);
				expect(Math.abs(shown - value)).toBeLessThanOrEqual(10 ** (3 - decimals) / 2);
			}),
			PROPERTY,
		);
	});
});
