import { dayStartMs, isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { stretchByHours, stretchesBySun } from "./dayAndNight.ts";

const DAY = isoDate("2027-03-10");
const HOURS = { utcOffsetMin: 600, fromMin: 420, toMin: 1080, doubt: "", source: "" };

/** Up from `rise` to `set`, minutes after 0000 UTC, every day of the same length. */
function daily(rise: number, set: number) {
	return (atMs: number) => {
		const minute = (atMs / 60_000) % 1440;
		return rise < set ? minute >= rise && minute < set : minute >= rise || minute < set;
	};
}

/** Up from one moment to another, minutes after 0000 UTC of `DAY`. */
function once(from: number, to: number) {
	return (atMs: number) => {
		const minute = (atMs - dayStartMs(DAY)) / 60_000;
		return minute >= from && minute < to;
	};
}

describe("stretchByHours", () => {
	it("turns local hours into the UTC day on which they start", () => {
		expect(stretchByHours("day", HOURS)).toEqual({ fromMin: 1260, toMin: 1920 });
		expect(stretchByHours("night", HOURS)).toEqual({ fromMin: 480, toMin: 1260 });
		expect(stretchByHours("day", { ...HOURS, utcOffsetMin: -600 })).toEqual({ fromMin: 1020, toMin: 1680 });
	});
});

describe("stretchesBySun", () => {
	it("gives day and night to the minute, each on the day on which it starts", () => {
		expect(stretchesBySun("day", DAY, daily(361, 1083))).toEqual([{ fromMin: 361, toMin: 1083 }]);
		expect(stretchesBySun("night", DAY, daily(361, 1083))).toEqual([{ fromMin: 1083, toMin: 1801 }]);
		expect(stretchesBySun("day", DAY, daily(1003, 217))).toEqual([{ fromMin: 1003, toMin: 1657 }]);
	});

	it("cuts polar day and night at 0000 UTC", () => {
		expect(stretchesBySun("day", DAY, () => true)).toEqual([{ fromMin: 0, toMin: 1440 }]);
		expect(stretchesBySun("night", DAY, () => true)).toEqual([]);
		expect(stretchesBySun("night", DAY, () => false)).toEqual([{ fromMin: 0, toMin: 1440 }]);
	});

	it("gives the first and the last part of a long stretch to their days, once each", () => {
		expect(stretchesBySun("day", DAY, once(700, 5000))).toEqual([{ fromMin: 700, toMin: 1440 }]);
		expect(stretchesBySun("day", DAY, once(-3000, 700))).toEqual([{ fromMin: 0, toMin: 700 }]);
		expect(stretchesBySun("day", DAY, once(-700, 700))).toEqual([]);
		expect(stretchesBySun("day", DAY, once(1440, 1500))).toEqual([]);
		expect(stretchesBySun("day", DAY, once(-1500, 0))).toEqual([]);
	});
});
