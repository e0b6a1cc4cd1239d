import { addDays, daysBetween, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type DateScale, datesBetween, dateTicks, dateX, daySpans } from "./reachDates.ts";

const day = isoDate;
const scale = (first: string, last: string): DateScale => ({ first: day(first), last: day(last), x: 100, width: 500 });

test("days have equal breadths from the start of the first to the end of the last", () => {
	const ten = scale("2027-02-25", "2027-03-06");
	expect(dateX(day("2027-02-25"), ten)).toBe(100);
	expect(dateX(day("2027-03-01"), ten)).toBe(300);
	expect(dateX(day("2027-03-07"), ten)).toBe(600);
});

describe("what a sample stands for", () => {
	const days = scale("2027-03-01", "2027-03-31");
	test("halfway to its neighbours, and as far outward at the ends", () => {
		expect(daySpans([day("2027-03-03"), day("2027-03-07"), day("2027-03-09")], days, "cells")).toEqual([
			{ fromDay: 0.5, toDay: 4.5 },
			{ fromDay: 4.5, toDay: 7.5 },
			{ fromDay: 7.5, toDay: 9.5 },
		]);
	});

	test("one alone stands for its day, two of one day for half of it each", () => {
		expect(daySpans([day("2027-03-03")], days, "cells")).toEqual([{ fromDay: 2, toDay: 3 }]);
		expect(daySpans([day("2027-03-03"), day("2027-03-03")], days, "cells")).toEqual([
			{ fromDay: 2, toDay: 2.5 },
			{ fromDay: 2.5, toDay: 3 },
		]);
	});

	test("never beyond the picture, never across another", () => {
		fc.assert(
			fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 1, maxLength: 20 }), (at) => {
				const dates = [...at].sort((a, b) => a - b).map((offset) => addDays(day("2027-03-01"), offset));
				const spans = daySpans(dates, days, "cells");
				expect(spans.length).toBe(dates.length);
				for (const [i, { fromDay, toDay }] of spans.entries()) {
					expect(fromDay).toBeGreaterThanOrEqual(spans[i - 1]?.toDay ?? 0);
					expect(toDay).toBeGreaterThan(fromDay);
					expect(toDay).toBeLessThanOrEqual(31);
					const middle = daysBetween(day("2027-03-01"), dates[i]!);
					expect(fromDay).toBeLessThanOrEqual(middle + 1);
					expect(toDay).toBeGreaterThanOrEqual(middle);
				}
			}),
			{ seed: 20_261_124, numRuns: 500 },
		);
	});

	test("days out of order are refused by name", () => {
		expect(() => daySpans([day("2027-03-03"), day("2027-03-02")], days, "rows[1].cells")).toThrow(
			"Cannot draw rows[1].cells[1] of 2027-03-02: expected no day before 2027-03-03",
		);
	});
});

test.each([
	["a few days", "2027-03-01", "2027-03-05", ["1 Mar 2027", "2 Mar", "3 Mar", "4 Mar", "5 Mar"]],
	["a month", "2027-02-20", "2027-03-15", ["21 Feb 2027", "26 Feb", "1 Mar", "6 Mar", "11 Mar"]],
	["a season", "2027-02-20", "2027-06-10", ["1 Mar 2027", "1 Apr", "1 May", "1 Jun"]],
	["two years", "2026-11-15", "2028-11-14", ["1 Jan 2027", "1 Apr", "1 Jul", "1 Oct", "1 Jan 2028", "1 Apr", "1 Jul", "1 Oct"]],
])("dates along %s", (_, first, last, words) => {
	expect(dateTicks(scale(first, last), 50).map((tick) => tick.words)).toEqual(words);
});

test("dates keep apart and lie where their day begins", () => {
	let told = 0;
	fc.assert(
		fc.property(fc.integer({ min: 0, max: 3_600 }), fc.integer({ min: 0, max: 3_650 }), (from, length) => {
			const first = addDays(day("2026-01-01"), from);
			const span: DateScale = { first, last: addDays(first, length), x: 100, width: 500 };
			const ticks = dateTicks(span, 50);
			expect(ticks.length).toBeGreaterThan(0);
			for (const [i, { date, x }] of ticks.entries()) {
				expect(x).toBe(dateX(date, span));
				if (i > 0) expect(x - ticks[i - 1]!.x).toBeGreaterThanOrEqual(50);
				told++;
			}
		}),
		{ seed: 20_261_124, numRuns: 100 },
	);
	expect(told).toBeGreaterThan(200);
});

test("a slip of the century is refused, and so is nothing", () => {
	expect(() => datesBetween([day("2027-02-01"), day("2127-02-01")], "Reach")).toThrow("expected 3660 days at most");
	expect(() => datesBetween([], "Reach")).toThrow('Cannot draw "Reach": expected a dated cell or leg, got none');
});
