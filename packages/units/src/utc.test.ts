import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	addDays,
	dateOfMs,
	dayStartMs,
	daysBetween,
	formatHhmm,
	type IsoDate,
	isoDate,
	MINUTES_PER_DAY,
	parseHhmm,
	weekday,
} from "./utc.ts";

const PROPERTY = { seed: 2027_02_01, numRuns: 2_000 };
const anyDay = fc.integer({ min: -25_567, max: 47_481 }).map((day) => dateOfMs(day * 86_400_000)); // 1900 to 2099

describe("isoDate", () => {
	it("takes real days only", () => {
		for (const day of ["2027-02-28", "2028-02-29", "2000-02-29", "0101-01-01", "9999-12-31"]) expect(isoDate(day)).toBe(day);
		const bad = [
			"2027-02-29",
			"1900-02-29",
			"2027-13-01",
			"2027-00-10",
			"2027-1-1",
			"27-01-01",
			"2027-04-31",
			"2027-02-01T00:00Z",
			" 2027-02-01",
			"",
		];
		for (const text of bad) expect(() => isoDate(text), text).toThrow(SyntaxError);
		expect(() => isoDate("1 Feb")).toThrow('YYYY-MM-DD, got "1 Feb"');
	});

	it("gives a day or a SyntaxError for any text", () => {
		fc.assert(
			fc.property(fc.oneof(fc.string(), fc.stringMatching(/^\d{4}-\d\d-\d\d$/)), (text) => {
				try {
					expect(dateOfMs(dayStartMs(isoDate(text)))).toBe(text);
				} catch (error) {
					expect(error).toBeInstanceOf(SyntaxError);
				}
			}),
			PROPERTY,
		);
	});
});

describe("days", () => {
	const day = (text: string): IsoDate => isoDate(text);

	it("add, subtract and name their weekday", () => {
		expect([addDays(day("2027-02-28"), 1), addDays(day("2028-02-28"), 1), addDays(day("2027-01-01"), -1)]).toEqual([
			"2027-03-01",
			"2028-02-29",
			"2026-12-31",
		]);
		expect(daysBetween(day("2027-02-01"), day("2027-05-31"))).toBe(119);
		// ISO 8601 (from memory): 1 January 2000 is a Saturday
		expect([weekday(day("2000-01-01")), weekday(day("1970-01-01")), weekday(day("2026-11-24"))]).toEqual([6, 4, 2]);
	});

	it("count the same there and back", () => {
		fc.assert(
			fc.property(anyDay, fc.integer({ min: -20_000, max: 20_000 }), (from, days) => {
				const to = addDays(from, days);
				expect(daysBetween(from, to)).toBe(days);
				expect(addDays(to, -days)).toBe(from);
				expect((((weekday(to) - weekday(from) - days) % 7) + 7) % 7).toBe(0);
				expect(from < to).toBe(days > 0);
			}),
			PROPERTY,
		);
	});

	it("hold every millisecond of themselves", () => {
		const start = dayStartMs(day("2027-02-01"));
		expect([dateOfMs(start - 1), dateOfMs(start), dateOfMs(start + 86_399_999)]).toEqual(["2027-01-31", "2027-02-01", "2027-02-01"]);
	});
});

describe("hhmm", () => {
	it("reads back every minute that it writes", () => {
		for (let minute = 0; minute <= MINUTES_PER_DAY; minute++) expect(parseHhmm(formatHhmm(minute))).toBe(minute);
		expect([formatHhmm(95), formatHhmm(95.9), formatHhmm(1440), parseHhmm("2359")]).toEqual(["0135", "0135", "2400", 1439]);
	});

	it("refuses what no clock shows", () => {
		for (const text of ["", "2401", "1260", "930", "09:30", "0930Z", " 0930", "-930", "99999"]) {
			expect(() => parseHhmm(text), text).toThrow(SyntaxError);
		}
		for (const minute of [-1, 1440.5, 1500, Number.NaN]) expect(() => formatHhmm(minute)).toThrow(RangeError);
	});
});
