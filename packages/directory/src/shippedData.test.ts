import { SERVICE_WORDS, type ServiceId } from "@skipwright/rules";
import { formatHhmm, formatKhz, isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { assumedLengthMin } from "./assumedLength.ts";
import { chartTimetable, readTimetable } from "./charts.ts";
import { FAX_TIMETABLE_CSV, LISTINGS_CSV, STATIONS_CSV } from "./data.gen.ts";
import { directory, listingById, stationById, stationOf } from "./directory.ts";
import { gradeOfSource } from "./gradeOfSource.ts";
import { scheduleOf } from "./listingSchedule.ts";
import { readListingsCsv, writeListingsCsv } from "./listingsCsv.ts";
import { occurrences, scheduleKnown } from "./occurrences.ts";
import { formatSchedule, parseSchedule } from "./parseSchedule.ts";
import { readStationsCsv, writeStationsCsv } from "./stationsCsv.ts";
import { CONFIDENCES, type Confidence } from "./types.ts";

const { listings, stations, edition } = directory();

function tally<T extends string>(values: readonly T[]): Partial<Record<T, number>> {
	const groups = [...Map.groupBy(values, (value) => value)];
	return Object.fromEntries(groups.map(([value, group]) => [value, group.length])) as Partial<Record<T, number>>;
}

describe("the shipped directory", () => {
	it("holds every row that was gathered: 366 stations, 856 listings, 308 timetable rows", () => {
		expect(stations).toHaveLength(366);
		expect(listings).toHaveLength(856);
		expect(readTimetable("fax-timetable.csv", FAX_TIMETABLE_CSV)).toHaveLength(308);
		expect(tally(listings.map(({ service }) => service))).toEqual({
			fax: 111,
			"voice-weather": 172,
			"voice-working": 26,
			"dsc-watch": 213,
			navtex: 166,
			"nbdp-msi": 28,
			"rtty-weather": 8,
			"news-broadcast": 8,
			"time-signal": 29,
			volmet: 95,
		});
		expect(edition).toBe("2026-11-24");
	});

	it("has as many listings read and from memory, by service, as the gathering counted", () => {
		const counted: Record<ServiceId, readonly [read: number, memory: number]> = {
			fax: [91, 20],
			"voice-weather": [172, 0],
			"voice-working": [26, 0],
			"dsc-watch": [11, 202],
			navtex: [56, 110],
			"nbdp-msi": [23, 5],
			"rtty-weather": [8, 0],
			"news-broadcast": [3, 5],
			"time-signal": [26, 3],
			volmet: [95, 0],
		};
		for (const service of Object.keys(SERVICE_WORDS) as ServiceId[]) {
			const memory = listings.filter((listing) => listing.service === service && listing.confidence === "memory").length;
			const read = listings.filter((listing) => listing.service === service && listing.confidence !== "memory").length;
			expect([service, read, memory]).toEqual([service, ...counted[service]]);
		}
	});

	it("counts its grades and statuses", () => {
		const grades = (rows: readonly { readonly confidence: Confidence }[]) => tally(rows.map(({ confidence }) => confidence));
		console.info("grades", { listings: grades(listings), stations: grades(stations), timetable: grades(timetable()) });
		expect(grades(listings)).toEqual({ official: 26, secondary: 485, memory: 345 });
		expect(grades(timetable())).toEqual({ official: 77, secondary: 231 });
		expect(tally(listings.map(({ status }) => status))).toEqual({ active: 705, unknown: 116, seasonal: 25, closed: 10 });
		expect(tally(stations.map(({ status }) => status))).toEqual({ active: 327, unknown: 31, closed: 8 });
	});

	it("gives every row the grade that the rule takes from its source cell", () => {
		const rows = [...listings, ...stations, ...timetable()];
		expect(rows).toHaveLength(1530);
		for (const { source, confidence } of rows) expect([source, gradeOfSource(source)]).toEqual([source, confidence]);
		for (const grade of CONFIDENCES) expect(rows.some(({ confidence }) => confidence === grade)).toBe(true);
	});

	it("names a source and a date in every row", () => {
		for (const { source, asOf } of [...listings, ...stations, ...timetable()]) {
			expect(source).not.toBe("");
			expect(asOf).toMatch(/^(19|20)\d{2}(-\d{2}){0,2}$/);
		}
	});

	it("finds a station for every listing and every timetable row", () => {
		for (const listing of listings) expect(stationOf(directory(), listing).id).toBe(listing.stationId);
		for (const { stationId } of timetable()) expect(stationById(directory(), stationId)).not.toBeNull();
		const without = stations.filter(({ id }) => !listings.some(({ stationId }) => stationId === id)).map(({ id }) => id);
		expect(without).toEqual(["au-oldcoast"]);
	});

	it("has ids made of station, service and kHz, once each", () => {
		const ids = new Set(listings.map(({ id }) => id));
		expect(ids.size).toBe(856);
		for (const { id, stationId, service, hz } of listings)
			expect(id.replace(/\/[23]$/, "")).toBe(`${stationId}/${service}/${formatKhz(hz)}`);
		expect([...ids].filter((id) => /\/[23]$/.test(id))).toEqual([
			"navtex-niton/navtex/518/2",
			"navtex-oostende/navtex/518/2",
			"navtex-oostende/navtex/518/3",
			"navtex-us-kodiak/navtex/518/2",
		]);
	});

	it("derives the status of a listing from its schedule, its station and its remarks", () => {
		for (const listing of listings) {
			const station = stationOf(directory(), listing);
			const { word } = parseSchedule(listing.schedule);
			const isMfOfLyngby = listing.stationId === "dk-lyngby";
			if (word === "closed" || (station.status === "closed" && !isMfOfLyngby)) expect(listing.status).toBe("closed");
			else if (word === "unknown" || station.status === "unknown") expect(listing.status).toBe("unknown");
			else if (word === "seasonal" && !listing.notes.includes("absent from the 2025 list")) expect(listing.status).toBe("seasonal");
		}
	});

	it("is written as it is read, byte for byte", () => {
		expect(writeListingsCsv(readListingsCsv("listings.csv", LISTINGS_CSV))).toBe(LISTINGS_CSV);
		expect(writeStationsCsv(readStationsCsv("stations.csv", STATIONS_CSV))).toBe(STATIONS_CSV);
	});

	it("has window rows in the timetables that agree with the schedules of the listings they name", () => {
		let compared = 0;
		for (const { stationId, kind, startMin, endMin, hz } of timetable()) {
			if (kind !== "window") continue;
			const named = listings.filter(
				(listing) => listing.stationId === stationId && listing.service === "fax" && (hz.length === 0 || hz.includes(listing.hz)),
			);
			expect(named.length).toBeGreaterThan(0);
			for (const listing of named.filter((one) => scheduleKnown(scheduleOf(one)) === "timed")) {
				const { items } = scheduleOf(listing);
				const window = `${formatHhmm(startMin)}-${formatHhmm(endMin ?? -1)}`;
				// a row may be part of a longer span of the listing
				const covered = items.some(
					(item) =>
						item.kind === "span" &&
						inside(startMin, item.fromMin, item.toMin, false) &&
						inside(endMin ?? -1, item.fromMin, item.toMin, true),
				);
				expect([listing.id, formatSchedule(scheduleOf(listing)), window, covered]).toEqual([
					listing.id,
					formatSchedule(scheduleOf(listing)),
					window,
					true,
				]);
				compared++;
			}
		}
		expect(compared).toBe(280);
	});

	it("has a length for every service, and the table's grounds hold", () => {
		for (const service of Object.keys(SERVICE_WORDS) as ServiceId[]) expect(assumedLengthMin(service)).toBeGreaterThan(0);
		const windows = listings
			.filter(({ service }) => service === "voice-weather")
			.flatMap((listing) => scheduleOf(listing).fine.windows)
			.map(({ fromMin, toMin }) => (toMin - fromMin + 1440) % 1440)
			.sort((a, b) => a - b);
		expect(windows).toHaveLength(814);
		expect(windows[407]).toBe(assumedLengthMin("voice-weather"));
		const voice = listings.filter(({ stationId }) => /^(in-.*|sg-|th-bangkok)volmet$/.test(stationId));
		const limited = voice.filter((listing) => scheduleOf(listing).fine.onAir !== null);
		expect(limited).toHaveLength(9);
		for (const listing of limited) {
			const { fine } = scheduleOf(listing);
			const ends = occurrences(scheduleOf(listing), isoDate("2027-03-10"), null).map(({ toMin }) => toMin % 1440);
			expect(ends).toContain(fine.onAir?.toMin);
		}
	});

	it("finds by id", () => {
		expect(listingById(directory(), "us-pointreyes/fax/8682")?.hz).toBe(8_682_000);
		expect(listingById(directory(), "nowhere")).toBeNull();
		expect(directory()).toBe(directory());
	});
});

function timetable() {
	return [...new Set(readTimetable("fax-timetable.csv", FAX_TIMETABLE_CSV).map(({ stationId }) => stationId))].flatMap(chartTimetable);
}

function inside(minute: number, fromMin: number, toMin: number, isEnd: boolean): boolean {
	const length = (toMin - fromMin + 1440) % 1440;
	const past = (minute - fromMin + 1440) % 1440;
	return isEnd ? past > 0 && past <= length : past < length;
}
