import { directory, type Listing, stationOf } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { isoDate } from "@skipwright/units";
import { expect, test } from "vitest";
import { isRelevant } from "./relevance.ts";

const sample = (latDeg: number, lonDeg: number): VoyageSample => ({
	atMs: Date.UTC(2027, 2, 1),
	date: isoDate("2027-03-01"),
	position: { latDeg, lonDeg },
	stage: "at sea",
	days: 1,
});
const ST_HELENA = sample(-15.92, -5.72);
const HORTA = sample(38.5, -28.6);

/** Common practice, no source: who plans a South Atlantic passage has no use for a forecast of Australian waters, however well it is heard. */
test("a forecast counts where it is about the waters around; time, watch and calling count wherever they are heard", () => {
	const { listings } = directory();
	const relevant = (id: string, where: VoyageSample) => {
		const listing = listings.find((one): one is Listing => one.id === id);
		if (listing === undefined) throw new Error(`no listing ${id}`);
		return isRelevant(listing, stationOf(directory(), listing), where);
	};
	expect(relevant("au-wiluna/voice-weather/12362", ST_HELENA)).toBe(false);
	expect(relevant("za-capetown/voice-weather/8740", ST_HELENA)).toBe(true);
	expect(relevant("us-boston/fax/6340.5", HORTA)).toBe(true);
	expect(relevant("kr-hll/fax/9165", sample(78, 15))).toBe(false); // charts of the far side of the pole
	expect(relevant("us-boston/fax/6340.5", ST_HELENA)).toBe(false);
	const BISCAY = sample(45.5, -4.5);
	expect(relevant("fr-corsen/voice-weather/1650", BISCAY)).toBe(true);
	expect(relevant("fr-lagarde/voice-weather/1696", sample(43, 6))).toBe(true);
	expect(relevant("fr-lagarde/voice-weather/1696", BISCAY)).toBe(false); // a Mediterranean coast's own forecast
	expect(relevant("us-wwv/time-signal/10000", ST_HELENA)).toBe(true);
	expect(relevant("us-chesapeake/dsc-watch/8414.5", ST_HELENA)).toBe(true);
});
