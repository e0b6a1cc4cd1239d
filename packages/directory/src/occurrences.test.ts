import { addDays, formatHhmm, type IsoDate, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readFinePrint } from "./finePrint.ts";
import { airtime, occurrences, scheduleKnown } from "./occurrences.ts";
import { parseSchedule } from "./parseSchedule.ts";
import { SCHEDULE_WORDS, type Schedule } from "./schedule.ts";

const DAY = isoDate("2027-03-10");

function schedule(text: string, notes = "", assumedLengthMin: number | null = null): Schedule {
	return { ...parseSchedule(text), fine: readFinePrint(notes), assumedLengthMin };
}

function starts(given: Schedule, date: IsoDate): string {
	return occurrences(given, date, null)
		.map(({ fromMin }) => formatHhmm(fromMin))
		.join(" ");
}

describe("occurrences on hand-worked days", () => {
	it("gives what crosses midnight to the day on which it starts; airtime has both halves", () => {
		const kodiak = schedule("0340-0610;0950-1210;1540-1820;2150-0030");
		expect(occurrences(kodiak, DAY, null).at(-1)).toEqual({ fromMin: 1310, toMin: 1470, length: "published", doubt: "" });
		expect(airtime(kodiak, DAY, null)).toEqual([
			{ fromMin: 0, toMin: 30 },
			{ fromMin: 220, toMin: 370 },
			{ fromMin: 590, toMin: 730 },
			{ fromMin: 940, toMin: 1100 },
			{ fromMin: 1310, toMin: 1440 },
		]);
	});

	it("ends at midnight, not the day after, when the end is 0000 or 2400", () => {
		for (const text of ["2320-0000", "2320-2400"]) {
			expect(occurrences(schedule(text), DAY, null)).toEqual([{ fromMin: 1400, toMin: 1440, length: "published", doubt: "" }]);
			expect(airtime(schedule(text), addDays(DAY, 1), null)).toEqual([{ fromMin: 1400, toMin: 1440 }]);
		}
	});

	it("knows the leap day: what starts on 28 February 2028 runs into the 29th, and the 29th into March", () => {
		const night = schedule("2200-0100");
		for (const day of ["2028-02-29", "2028-03-01"]) {
			expect(airtime(night, isoDate(day), null)).toEqual([
				{ fromMin: 0, toMin: 60 },
				{ fromMin: 1320, toMin: 1440 },
			]);
		}
		const season = schedule("continuous", "season from 29 February to 29 February");
		expect(occurrences(season, isoDate("2028-02-29"), null)).toHaveLength(1);
		expect(occurrences(season, isoDate("2027-03-01"), null)).toHaveLength(0);
	});

	it("gives hourly items 24 times, or only within the hours on the air, midnight crossed or not", () => {
		expect(occurrences(schedule("H+25;H+55"), DAY, null)).toHaveLength(48);
		const byDay = starts(schedule("H+07;H+37", "on the air 1100-1300"), DAY);
		expect(byDay).toBe("1107 1137 1207 1237");
		const byNight = starts(schedule("H+07;H+37", "on the air 2300-0100"), DAY);
		expect(byNight).toBe("0007 0037 2307 2337");
		expect(starts(schedule("H+00;H+30", "on the air 0000-0100"), DAY)).toBe("0000 0030");
	});

	it("gives hourly spans their length, over the hour too", () => {
		expect(occurrences(schedule("H+50-H+60"), DAY, null).at(-1)).toMatchObject({ fromMin: 1430, toMin: 1440, length: "published" });
		expect(occurrences(schedule("H+55-H+05"), DAY, null).at(-1)).toMatchObject({ fromMin: 1435, toMin: 1445 });
		expect(airtime(schedule("H+00-H+60"), DAY, null)).toEqual([{ fromMin: 0, toMin: 1440 }]);
	});

	it("takes lengths from noted windows, else from the service, and says which", () => {
		const given = schedule("0203;1645;1800", "windows 0203-0300, 1645-1745", 15);
		expect(occurrences(given, DAY, null)).toEqual([
			{ fromMin: 123, toMin: 180, length: "noted", doubt: "" },
			{ fromMin: 1005, toMin: 1065, length: "noted", doubt: "" },
			{ fromMin: 1080, toMin: 1095, length: "assumed", doubt: "" },
		]);
		expect(occurrences(schedule("2350", "windows 2350-0005"), DAY, null)[0]).toMatchObject({ toMin: 1445, length: "noted" });
	});

	it("takes a window of many hours for no length of a broadcast (Tallinn 0640-2240, Hopen 1103-2310)", () => {
		const tallinn = occurrences(schedule("0640;2240", "windows 0640-2240, 2240-0640", 15), DAY, null);
		expect(tallinn.map(({ fromMin, toMin, length }) => [toMin - fromMin, length])).toEqual([
			[15, "assumed"],
			[15, "assumed"],
		]);
	});

	it("keeps weekdays by UTC: Monday to Friday, and extra spans on their own days", () => {
		const weekdays = schedule("1400-1500", "Monday to Friday");
		const week = Array.from({ length: 7 }, (_, day) => occurrences(weekdays, addDays(isoDate("2027-03-08"), day), null).length);
		expect(week).toEqual([1, 1, 1, 1, 1, 0, 0]); // 2027-03-08 is a Monday
		const extra = schedule("see list", "also 0700-0715 (Mo,We)");
		const days = Array.from({ length: 7 }, (_, day) => starts(extra, addDays(isoDate("2027-03-08"), day)));
		expect(days).toEqual(["0700", "", "0700", "", "", "", ""]);
	});

	it("keeps a season, says when its dates are rough, and wraps the new year", () => {
		const arctic = schedule("1410", "season from about 15 June to 20 December");
		expect(["06-14", "06-15", "12-20", "12-21"].map((day) => starts(arctic, isoDate(`2027-${day}`)))).toEqual(["", "1410", "1410", ""]);
		expect(occurrences(arctic, isoDate("2027-08-01"), null)[0]?.doubt).toBe("season from about 15 June to 20 December");
		expect(occurrences(schedule("1410", "season from 1 May to 2 May"), isoDate("2027-05-01"), null)[0]?.doubt).toBe("");
		expect(occurrences(schedule("1410", "season to 2 May"), isoDate("2027-01-01"), null)[0]?.doubt).toBe("season to 2 May");
		const austral = schedule("1410", "season from 1 October to 31 March");
		expect(["09-30", "10-01", "12-31", "01-01", "03-31", "04-01"].map((day) => starts(austral, isoDate(`2027-${day}`)))).toEqual([
			"",
			"1410",
			"1410",
			"1410",
			"1410",
			"",
		]);
		expect(occurrences(schedule("1630;1218", "ice 1218 in season"), DAY, null).map(({ doubt }) => doubt === "")).toEqual([false, true]);
	});

	it("moves what follows European local time an hour earlier in summer (changes of 2027: 28 March and 31 October, 0100 UTC)", () => {
		const rhodes = schedule(
			"0433;0703;0903;0933;1533;2133",
			"navigational warnings 0433, 0933, 1533, 2133 UTC in winter (from local time); weather 0703 0903 1533 2133",
		);
		const winter = "0433 0703 0903 0933 1533 2133";
		const summer = "0333 0703 0833 0903 1433 1533 2033 2133";
		expect(starts(rhodes, isoDate("2027-03-27"))).toBe(winter);
		expect(starts(rhodes, isoDate("2027-03-28"))).toBe(summer);
		expect(starts(rhodes, isoDate("2027-10-30"))).toBe(summer);
		expect(starts(rhodes, isoDate("2027-10-31"))).toBe(winter);
		const all = schedule("0030;0433", "all times UTC in winter (from local time), an hour earlier in summer");
		expect(starts(all, isoDate("2027-03-28"))).toBe("0030 0333"); // 0030 comes before the change
		expect(starts(all, isoDate("2027-07-01"))).toBe("0333 2330");
	});

	it("takes day and night by the sun where no hours are given (sunrise and sunset of almanacs, to a few minutes)", () => {
		// Greenwich at the equinox of 2027: the sun rises near 0601 and sets near 1813 UTC (almanac figures, from memory)
		const greenwich = { latDeg: 51.48, lonDeg: 0 };
		const [day] = occurrences(schedule("day"), isoDate("2027-03-21"), greenwich);
		expect(Math.abs((day?.fromMin ?? 0) - (6 * 60 + 1))).toBeLessThan(4);
		expect(Math.abs((day?.toMin ?? 0) - (18 * 60 + 14))).toBeLessThan(4);
		expect(day).toMatchObject({ length: "assumed", doubt: "taken as day by the sun at the station" });
		const [night] = occurrences(schedule("night"), isoDate("2027-03-21"), greenwich);
		expect(night?.fromMin).toBe(day?.toMin);
		// at Honolulu the day crosses 0000 UTC: it belongs to the day on which the sun rises there
		const honolulu = { latDeg: 21.4, lonDeg: -158.1 };
		const days = occurrences(schedule("day"), isoDate("2027-03-21"), honolulu);
		expect(days).toHaveLength(1);
		expect(days[0]?.toMin).toBeGreaterThan(1440);
	});

	it("has night all day where the sun does not rise, and day all day where it does not set (Svalbard)", () => {
		const svalbard = { latDeg: 78.07, lonDeg: 13.62 };
		const parts = (word: string, date: string) => airtime(schedule(word), isoDate(date), svalbard);
		const whole = [{ fromMin: 0, toMin: 1440 }];
		expect([parts("night", "2026-12-21"), parts("day", "2026-12-21")]).toEqual([whole, []]);
		expect([parts("night", "2027-06-21"), parts("day", "2027-06-21")]).toEqual([[], whole]);
	});

	it("has day or night in every minute of a year, at every latitude, and never both", () => {
		let compared = 0;
		for (const latDeg of [-78, -66, 0, 58, 67, 71, 78]) {
			for (let days = 0; days < 365; days += 13) {
				const on = addDays(isoDate("2027-01-01"), days);
				const minutes = ["day", "night"].flatMap((word) =>
					airtime(schedule(word), on, { latDeg, lonDeg: 100 }).map(({ fromMin, toMin }) => toMin - fromMin),
				);
				expect([latDeg, on, minutes.reduce((sum, length) => sum + length, 0)]).toEqual([latDeg, on, 1440]);
				compared++;
			}
		}
		expect(compared).toBe(7 * 29);
	});

	it("gives NAVTEX slots", () => {
		expect(starts(schedule("slot N", "", 10), DAY)).toBe("0210 0610 1010 1410 1810 2210");
	});

	it("tells not knowing from being off", () => {
		const known = Object.fromEntries(SCHEDULE_WORDS.map((word) => [word, scheduleKnown(parseSchedule(word))]));
		expect(known).toEqual({
			continuous: "continuous",
			closed: "off",
			seasonal: "cannot-tell",
			day: "timed",
			night: "timed",
			experimental: "cannot-tell",
			unknown: "cannot-tell",
			"see list": "cannot-tell",
			"after DSC alert": "cannot-tell",
		});
		for (const word of ["closed", "unknown", "see list"]) expect(occurrences(parseSchedule(word), DAY, null)).toEqual([]);
		expect(occurrences(parseSchedule("day"), DAY, null)).toEqual([]);
		expect(scheduleKnown(schedule("see list", "also 0700-0715 (Mo,We)"))).toBe("timed");
	});
});

describe("occurrences, whatever the schedule", () => {
	const time = fc.integer({ min: 0, max: 1439 });
	const item = fc.oneof(
		time.map((minute) => ({ kind: "at" as const, minute })),
		fc
			.tuple(time, fc.integer({ min: 1, max: 1439 }))
			.map(([fromMin, length]) => ({ kind: "span" as const, fromMin, toMin: (fromMin + length) % 1440 })),
		fc.integer({ min: 0, max: 59 }).map((minute) => ({ kind: "hourly" as const, minute })),
		fc
			.tuple(fc.integer({ min: 0, max: 59 }), fc.integer({ min: 1, max: 59 }))
			.map(([fromMin, length]) => ({ kind: "hourly-span" as const, fromMin, toMin: (fromMin + length) % 60 })),
		fc.constantFrom(..."ANX").map((letter) => ({ kind: "slot" as const, letter })),
	);
	const date = fc.integer({ min: 0, max: 4000 }).map((days) => addDays(isoDate("2024-01-01"), days));

	it("starts on the day, lasts more than nothing and at most a day, in order", () => {
		fc.assert(
			fc.property(fc.array(item), date, (items, on) => {
				const found = occurrences({ ...parseSchedule("closed"), word: null, items }, on, null);
				for (const [index, { fromMin, toMin }] of found.entries()) {
					expect(fromMin).toBeGreaterThanOrEqual(found[index - 1]?.fromMin ?? 0);
					expect(fromMin).toBeLessThan(1440);
					expect(toMin - fromMin).toBeGreaterThan(0);
					expect(toMin - fromMin).toBeLessThanOrEqual(1440);
				}
			}),
			{ seed: 21 },
		);
	});

	it("is on the air in a minute exactly when some occurrence of that day or the day before covers it", () => {
		fc.assert(
			fc.property(fc.array(item, { maxLength: 4 }), date, time, (items, on, minute) => {
				const given = { ...parseSchedule("closed"), word: null, items };
				const covers = (day: IsoDate, at: number) =>
					occurrences(given, day, null).some(({ fromMin, toMin }) => at >= fromMin && at < toMin);
				const parts = airtime(given, on, null);
				expect(parts.some(({ fromMin, toMin }) => minute >= fromMin && minute < toMin)).toBe(
					covers(on, minute) || covers(addDays(on, -1), minute + 1440),
				);
				for (const [index, { fromMin, toMin }] of parts.entries()) {
					expect(fromMin).toBeGreaterThan(parts[index - 1]?.toMin ?? -1);
					expect(toMin).toBeLessThanOrEqual(1440);
				}
			}),
			{ seed: 22, numRuns: 300 },
		);
	});
});
