import type { Listing, Station } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { destination, NAUTICAL_MILE_KM } from "@skipwright/sphere";
import { hz, isoDate, type Position, position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { handbookHearing } from "./handbookHearing.ts";

const SHIP = position(0, 0);
const hearing = handbookHearing();

function sampleAt(where: Position, date = "2027-03-20"): VoyageSample {
	return { atMs: 0, date: isoDate(date), position: where, stage: "", days: 1 };
}

/** Chance of hearing a station due north, so that noon and midnight are the same at both ends. */
function heardAt(mhz: number, nm: number, minute: number): number | null {
	const where = nm === 0 ? SHIP : destination(SHIP, 0, nm * NAUTICAL_MILE_KM);
	const listing = { hz: hz(mhz * 1_000_000) } as Listing;
	const station = { id: `${nm}`, position: where } as Station;
	return hearing.heard({ listing, station }, sampleAt(SHIP), minute);
}

const NOON = 720;
const MIDNIGHT = 0;
const BANDS = [2, 4, 6, 8, 12, 16, 22];

/** Lowest band that more likely than not is heard. */
function bandFor(nm: number, minute: number): number | null {
	return BANDS.find((mhz) => (heardAt(mhz, nm, minute) ?? 0) >= 0.5) ?? null;
}

describe("the handbook rule: Fisheries observer programme manual of the U.S. oceanic administration, part 2, appendix on radios", () => {
	// distance in miles is roughly 100 x MHz by day and two to three times that by night
	const rule = [
		{ mhz: 2, day: 200, night: [400, 600] },
		{ mhz: 4, day: 400, night: [800, 1_200] },
		{ mhz: 6, day: 600, night: [1_200, 1_800] },
		{ mhz: 8, day: 800, night: [1_600, 2_400] },
		{ mhz: 12, day: 1_200, night: [2_400, 3_600] },
		{ mhz: 16, day: 1_600, night: [3_200, 4_800] },
	] as const;
	it.each(rule)("$mhz MHz: surely to $day miles by day, to $night miles by night", ({ mhz, day, night: [sure, lost] }) => {
		expect(heardAt(mhz, day - 1, NOON)).toBe(1);
		expect(heardAt(mhz, day * 1.5 + 1, NOON)).toBe(0);
		expect(heardAt(mhz, sure - 1, MIDNIGHT)).toBe(1);
		expect(heardAt(mhz, (sure + lost) / 2, MIDNIGHT)).toBeCloseTo(0.5, 2);
		expect(heardAt(mhz, lost + 1, MIDNIGHT)).toBe(0);
	});

	it("counts dawn and dusk, the sun up at one end, as half day and half night", () => {
		// 0600 at 0 E on the equinox: not yet up at 2 W, up at 12 E, 840 miles away
		const east = { listing: { hz: hz(8_000_000) } as Listing, station: { id: "east", position: position(0, 12) } as Station };
		expect(hearing.heard(east, sampleAt(position(0, -2)), 360)).toBeCloseTo(0.5 * (1 - (840.5 / 800 - 1) / 0.5) + 0.5, 2);
	});
});

describe("how users choose a band (tests of the facts, our inference; one band either way)", () => {
	it("does not ask for a lower band as distance grows from 300 to 2000 miles", () => {
		for (const minute of [NOON, MIDNIGHT]) {
			const bands = [300, 500, 800, 1_000, 1_500, 2_000].map((nm) => bandFor(nm, minute) ?? Number.POSITIVE_INFINITY);
			expect(bands).toEqual(bands.toSorted((a, b) => a - b));
		}
	});

	it("asks for a lower band at midnight than at noon on 800 miles", () => {
		expect(bandFor(800, MIDNIGHT)).toBeLessThan(bandFor(800, NOON) ?? 0);
	});

	it.each([
		[150, NOON, 2, 4],
		[400, NOON, 4, 8],
		[800, NOON, 6, 12],
		[2_000, NOON, 12, 16],
		[300, MIDNIGHT, 2, 4],
		[1_000, MIDNIGHT, 4, 6],
		[2_500, MIDNIGHT, 6, 12],
	])("%i miles at minute %i: %i to %i MHz", (nm, minute, low, high) => {
		expect(bandFor(nm, minute)).toBeGreaterThanOrEqual(low);
		expect(bandFor(nm, minute)).toBeLessThanOrEqual(high);
	});

	it("offers no 12 MHz and above for 200 to 400 miles: ground wave over, sky wave not begun", () => {
		for (const mhz of [12, 13, 16, 18, 22]) for (const nm of [200, 300, 399]) expect(heardAt(mhz, nm, NOON)).toBe(0);
		expect(heardAt(12, 410, NOON)).toBe(1);
		expect(heardAt(16, 790, NOON)).toBe(0); // a weather-receiver handbook: nothing nearer than 800
		expect(heardAt(22, 990, NOON)).toBe(0); // and 1000
	});
});

describe("handbookHearing", () => {
	it("hears everything by ground wave alongside, and NAVTEX to 300 miles", () => {
		for (const mhz of [0.518, ...BANDS]) expect(heardAt(mhz, 40, NOON)).toBe(1);
		expect(heardAt(0.518, 299, NOON)).toBe(1);
		expect(heardAt(0.518, 301, MIDNIGHT)).toBe(0);
	});

	it("cannot tell without a position", () => {
		const from = { listing: { hz: hz(8_000_000) } as Listing, station: { id: "x", position: null } as unknown as Station };
		expect(hearing.heard(from, sampleAt(SHIP), NOON)).toBeNull();
	});

	it("says that it is a rule of thumb", () => {
		expect(hearing.basis).toMatch(/rule of thumb.*not a prediction/);
	});
});
