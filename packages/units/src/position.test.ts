import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatPosition, parsePosition, position } from "./position.ts";

const PROPERTY = { seed: 33_54, numRuns: 2_000 };
const HALF_A_MINUTE_DEG = 0.5 / 60;
const anyPosition = fc
	.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -360, max: 360, noNaN: true }))
	.map(([lat, lon]) => position(lat, lon));

describe("position", () => {
	it("brings longitude into [-180, 180)", () => {
		const lons = [180, -180, 181, -181, 359, 360, -360, 0].map((lon) => position(0, lon).lonDeg);
		expect(lons).toEqual([-180, -180, -179, 179, -1, 0, 0, 0]);
		fc.assert(
			fc.property(anyPosition, ({ lonDeg }) => {
				expect(lonDeg).toBeGreaterThanOrEqual(-180);
				expect(lonDeg).toBeLessThan(180);
			}),
			PROPERTY,
		);
	});

	it("refuses what is no place on Earth", () => {
		for (const [lat, lon] of [
			[90.001, 0],
			[-91, 0],
			[0, 361],
			[Number.NaN, 0],
			[0, Number.NaN],
			[0, Infinity],
		] as const) {
			expect(() => position(lat, lon)).toThrow(RangeError);
		}
		expect(() => position(95, 0)).toThrow("95");
	});
});

describe("parsePosition", () => {
	it("reads decimal degrees and degrees with minutes", () => {
		const capeTown = { latDeg: -33.905, lonDeg: 18.43 };
		for (const text of [
			"-33.905,18.43",
			"-33.905 18.43",
			" -33.905 , +18.43 ",
			"33 54.3S 018 25.8E",
			"33°54.3′S 018°25.8′E",
			"33-54.3 S, 18-25.8 E",
			"33° 54.3' s 18° 25.8' e",
		]) {
			const read = parsePosition(text);
			expect(read.latDeg, text).toBeCloseTo(capeTown.latDeg, 12);
			expect(read.lonDeg, text).toBeCloseTo(capeTown.lonDeg, 12);
		}
		expect(parsePosition("38 32N 028 37W")).toEqual({ latDeg: 38 + 32 / 60, lonDeg: -(28 + 37 / 60) });
	});

	it("names both forms when it can't read one", () => {
		for (const text of ["", "33", "33 60S 018 25E", "33 54 018 25", "33,9S", "north", "33 54.3S", "1,2,3", "NaN,0"]) {
			expect(() => parsePosition(text), text).toThrow(SyntaxError);
		}
		expect(() => parsePosition("x")).toThrow('33 54.3S 018 25.8E, got "x"');
		expect(() => parsePosition("91,0")).toThrow(RangeError);
		expect(() => parsePosition("90 30N 000 00E")).toThrow(RangeError);
	});

	it("gives a position or a SyntaxError or RangeError for any text", () => {
		const texts = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."0123456789.,-+ °′'NSEW") }));
		fc.assert(
			fc.property(texts, (text) => {
				try {
					expect(Math.abs(parsePosition(text).latDeg)).toBeLessThanOrEqual(90);
				} catch (error) {
					expect(error instanceof SyntaxError || error instanceof RangeError).toBe(true);
				}
			}),
			PROPERTY,
		);
	});
});

describe("formatPosition", () => {
	it("writes degrees and whole minutes", () => {
		const written = [
			[-33.905, 18.43],
			[0, 0],
			[38.533, -28.62],
			[89.9999, 179.9999],
			[-0.001, -0.001],
			[-90, -180],
		].map(([lat, lon]) => formatPosition(position(lat!, lon!)));
		expect(written).toEqual([
			"33°54′S 018°26′E",
			"00°00′N 000°00′E",
			"38°32′N 028°37′W",
			"90°00′N 180°00′E",
			"00°00′N 000°00′E",
			"90°00′S 180°00′W",
		]);
	});

	it("reads back to within half a minute", () => {
		fc.assert(
			fc.property(anyPosition, (here) => {
				const back = parsePosition(formatPosition(here));
				expect(Math.abs(back.latDeg - here.latDeg)).toBeLessThanOrEqual(HALF_A_MINUTE_DEG + 1e-9);
				expect(Math.abs(position(0, back.lonDeg - here.lonDeg).lonDeg)).toBeLessThanOrEqual(HALF_A_MINUTE_DEG + 1e-9);
			}),
			PROPERTY,
		);
	});
});
