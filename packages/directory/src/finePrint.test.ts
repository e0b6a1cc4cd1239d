import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory } from "./directory.ts";
import { readFinePrint } from "./finePrint.ts";
import { NO_FINE_PRINT } from "./schedule.ts";

describe("readFinePrint", () => {
	it("reads each form that the shipped remarks use", () => {
		expect(readFinePrint("windows 0037-0047, 2350-0005; English")).toEqual({
			...NO_FINE_PRINT,
			windows: [
				{ fromMin: 37, toMin: 47 },
				{ fromMin: 1430, toMin: 5 },
			],
			words: "English",
		});
		expect(readFinePrint("windows in the list: 0203-0300, 1645-1745").windows).toHaveLength(2);
		expect(readFinePrint("on the air 2300-1100").onAir).toEqual({ fromMin: 1380, toMin: 660 });
		expect(readFinePrint("Monday to Friday").weekdays).toEqual([1, 2, 3, 4, 5]);
		expect(readFinePrint("Saturday to Sunday").weekdays).toEqual([6, 0]);
		expect(readFinePrint("also 0110-0125 (Mo), 0440-0455 (irr), 0700-0715 (Tu,Fr)")).toEqual({
			...NO_FINE_PRINT,
			extra: [
				{ span: { fromMin: 70, toMin: 85 }, weekdays: [1] },
				{ span: { fromMin: 420, toMin: 435 }, weekdays: [2, 5] },
			],
			words: "also 0440-0455 (irr)",
		});
		expect(readFinePrint("season from about 15 June to 20 December").season).toEqual({
			from: { month: 6, day: 15 },
			to: { month: 12, day: 20 },
			words: "season from about 15 June to 20 December",
		});
		expect(readFinePrint("season to 31 October").season).toMatchObject({ from: null, to: { month: 10, day: 31 } });
		expect(readFinePrint("ice charts, seasonal").season).toEqual({ from: null, to: null, words: "ice charts, seasonal" });
		expect(readFinePrint("ice 1218 in season").seasonTimes).toEqual([738]);
		expect(
			readFinePrint("navigational warnings 0433, 0933, 1533, 2133 UTC in winter (from local time); weather 0703 0903 1533 2133"),
		).toMatchObject({ localTimes: [273, 573, 933, 1293], fixedTimes: [423, 543, 933, 1293], words: "" });
		expect(readFinePrint("all times UTC in winter (from local time), an hour earlier in summer").localTimes).toBe("all");
	});

	it("leaves words as words", () => {
		for (const words of [
			"government text gives 0140-1608 for this frequency",
			"further slots 0815-0840, 2015-2040 are irregular",
			"windows 0700-0700",
			"on the air 2500-0100",
			"weather 0550;0950;1750;2150",
			"",
		]) {
			expect(readFinePrint(words)).toEqual({ ...NO_FINE_PRINT, words });
		}
	});

	it("reads the forms as often as they occur in the shipped remarks", () => {
		const prints = directory().listings.map(({ notes }) => readFinePrint(notes));
		const count = (has: (print: (typeof prints)[number]) => boolean) => prints.filter(has).length;
		expect({
			windows: count(({ windows }) => windows.length > 0),
			onAir: count(({ onAir }) => onAir !== null),
			weekdays: count(({ weekdays }) => weekdays !== null),
			extra: count(({ extra }) => extra.length > 0),
			season: count(({ season }) => season !== null),
			seasonTimes: count(({ seasonTimes }) => seasonTimes.length > 0),
			localTimes: count(({ localTimes }) => localTimes !== null),
		}).toEqual({ windows: 136, onAir: 25, weekdays: 1, extra: 5, season: 23, seasonTimes: 2, localTimes: 5 });
	});

	it("never throws and never loses a remark that it cannot read", () => {
		fc.assert(
			fc.property(fc.array(fc.string().filter((text) => !text.includes(";"))), (remarks) => {
				const notes = remarks.join("; ");
				expect(readFinePrint(notes).words).toBe(notes);
			}),
			{ seed: 13 },
		);
	});
});
