import type { PlannedPlace } from "@skipwright/planner";
import { hz } from "@skipwright/units";
import { describe, expect, test } from "vitest";
import { hoursLong } from "./hoursLong.ts";
import { placeReason } from "./placeReason.ts";

const PLACE: PlannedPlace = {
	bank: "data",
	place: 53,
	tag: "XYZ 12789",
	receiveHz: hz(12_788_000),
	transmitHz: null,
	mode: "USB",
	listing: "xx-nowhere/fax/12789.9",
	pinned: false,
	changed: true,
	what: "Nowhere (XYZ), weather charts",
	want: "weather-charts",
	notes: [],
	hears: [],
	serves: [{ want: "weather-charts", hoursPerDay: 1.7, lostPerDay: 0.08, rank: 22, of: 35, bestLeg: "Here to There" }],
	day: { leg: "at Horta", chances: Array.from({ length: 24 }, () => 0.5), broadcasts: [{ fromMin: 1_410, toMin: 1_470 }] },
};
const reasonOf = (part: Partial<PlannedPlace>) => placeReason({ ...PLACE, ...part }, (chances) => `fair, ${chances.length} hours`);

describe("why a place is held", () => {
	test("what it gives, how it ranks, where most, what would be lost, when it is heard and sent", () => {
		expect(reasonOf({})).toBe(
			"Weather charts: 1.7 hours a day, 22nd best of 35 places, most from Here to There; 5 minutes a day would be lost without it. " +
				"Chance by the hour at Horta, UTC: fair, 24 hours. Sent 2330-0030 UTC.",
		);
	});

	test("every want that it serves has a sentence", () => {
		const [charts] = PLACE.serves;
		if (charts === undefined) expect.fail("no service");
		const text = reasonOf({
			serves: [
				{ ...charts, rank: 1, of: 1, bestLeg: "at Here" },
				{ ...charts, want: "weather-voice", hoursPerDay: 0 },
				{ ...charts, want: "news", lostPerDay: 0, rank: 1 },
			],
		});
		expect(text).toContain("Weather charts: 1.7 hours a day, the only place for it, most at Here; all of it would be lost without it.");
		expect(text).toContain("Weather by voice: hardly anything on this voyage.");
		expect(text).toContain("News: 1.7 hours a day, best of 35 places, most from Here to There; other places would make up for it.");
	});

	test("what must be held, is pinned, or is in no list says so", () => {
		const bare = { serves: [], day: { leg: null, chances: null, broadcasts: null } } as const;
		expect(reasonOf({ ...bare, want: "guard", pinned: true })).toBe(
			"Pinned by the job. Always held: a carrier for distress, safety and calling.",
		);
		expect(reasonOf({ ...bare, want: "safety-text" })).toBe("Always held: safety text is never traded for other wants.");
		expect(reasonOf({ ...bare, want: "ship-calling", notes: ["receive only: no licence"] })).toBe(
			"For calling other vessels. Receive only: no licence.",
		);
		expect(reasonOf({ ...bare, want: null, changed: false })).toMatch(/^Kept as found: /);
	});

	test("many broadcasts are counted", () => {
		const broadcasts = Array.from({ length: 48 }, (_, i) => ({ fromMin: i * 30, toMin: i * 30 + 5 }));
		expect(reasonOf({ day: { leg: null, chances: null, broadcasts } })).toMatch(/Sent 48 times a day, first at 0000-0005 UTC\.$/);
	});
});

test.each([
	[0, "no time"],
	[0.005, "under a minute"],
	[0.02, "1 minute"],
	[0.08, "5 minutes"],
	[0.996, "1 hour"],
	[1.72, "1.7 hours"],
	[24, "24 hours"],
])("%d hours are %s", (hours, words) => {
	expect(hoursLong(hours)).toBe(words);
});
