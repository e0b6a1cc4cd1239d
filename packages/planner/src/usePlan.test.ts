import type { Directory, Listing, Station } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { hz, isoDate, position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { HOURS_PER_DAY } from "./coverage.ts";
import { placeDay, placeServices } from "./explain.ts";
import { legsOf } from "./heardPlaces.ts";
import { shipCells } from "./shipCells.ts";
import { usePlan } from "./usePlan.ts";
import { watchOff } from "./watchOff.ts";

const sample = (stage: string, days: number, i: number): VoyageSample => ({
	atMs: i,
	date: isoDate("2027-02-01"),
	position: position(0, 0),
	stage,
	days,
});
const SAMPLES = [sample("at sea", 1, 0), sample("at sea", 3, 1), sample("in port", 2, 2)];
const LEGS = legsOf(SAMPLES);

const station = (id: string): Station => ({ id, name: id, position: position(1, 1) }) as Station;
const listing = (stationId: string, khz: number, schedule: string): Listing =>
	({
		id: `${stationId}/fax/${khz}`,
		stationId,
		service: "fax",
		origin: "shipped",
		hz: hz(khz * 1_000),
		schedule,
		notes: "",
		status: "active",
	}) as Listing;
const low = listing("a", 4_000, "continuous");
const high = listing("a", 8_000, "0900-0930");
const far = listing("b", 12_000, "unknown");
const DIRECTORY: Directory = { stations: [station("a"), station("b")], listings: [low, high, far], edition: "" };

/** The same chance in the hours given, at every sample unless `only` says where. */
function cells(hours: readonly number[], chance: number, only: readonly number[] = [0, 1, 2]): Float64Array {
	const all = new Float64Array(SAMPLES.length * HOURS_PER_DAY);
	for (const at of only) for (const hour of hours) all[at * HOURS_PER_DAY + hour] = chance;
	return all;
}
const NIGHT = [0, 1, 2, 3];
const known = new Map([
	[low, cells(NIGHT, 0.8)],
	[high, cells([9], 0.6, [0, 1])],
	[far, cells([...NIGHT, 9], 0.5)],
]);
const coverage = (one: Listing) => known.get(one) ?? null;
const PLACES = [
	{ bank: "data", place: 1, listings: [low] },
	{ bank: "data", place: 2, listings: [high] },
	{ bank: "data", place: 3, listings: [far] },
	{ bank: "data", place: 4, listings: [far] },
];

describe("placeServices", () => {
	const [first, second, third, fourth] = placeServices({ samples: SAMPLES, legs: LEGS, places: PLACES, coverage });

	it("tells hours a day over the voyage, rank, and what only this place gives", () => {
		// with b at 0.5 in the same hours: 1 - 0.2 * 0.5 = 0.9 a night hour, without a 0.5
		expect(first).toEqual([{ want: "weather-charts", hoursPerDay: 3.2, lostPerDay: 1.6, rank: 1, of: 4, bestLeg: "at sea" }]);
		// 4 of 6 days: 0.4 h of its own; beside b 1 - 0.4 * 0.5 = 0.8 against 0.5
		expect(second).toEqual([{ want: "weather-charts", hoursPerDay: 0.4, lostPerDay: 0.2, rank: 4, of: 4, bestLeg: "at sea" }]);
	});

	it("says that nothing is lost where another place hears the same", () => {
		expect(third).toEqual([{ want: "weather-charts", hoursPerDay: 2.5, lostPerDay: 0, rank: 2, of: 4, bestLeg: "at sea" }]);
		expect(fourth).toEqual(third);
	});
});

describe("placeDay", () => {
	const hearing = { basis: "", heard: () => null, heardShip: (band: number) => (band === 8 ? 0.25 : null) };
	const ships = (band: number) => shipCells(band, "near", SAMPLES, hearing);
	const day = (listings: readonly Listing[], band: number | null) =>
		placeDay({ directory: DIRECTORY, samples: SAMPLES, legs: LEGS, reach: coverage, ships }, listings, band);

	it("is the mean day on the leg where it is heard best, with its broadcasts; of ships by the band; else it cannot tell", () => {
		const best = day([low, high], null);
		expect([best.chances?.[0], best.chances?.[9], best.broadcasts]).toEqual([0.8, 0.6, null]);
		expect(best.leg).toBe("at sea");
		expect(day([high], null).broadcasts).toEqual([{ fromMin: 540, toMin: 570 }]);
		expect(day([high], null).chances?.[9]).toBe(0.6); // not thinned by the days in port
		expect(day([low, far], null).broadcasts).toBeNull(); // two stations
		expect(day([], 8).chances).toEqual(Array(24).fill(0.25));
		expect(day([], 4)).toEqual({ leg: null, chances: null, broadcasts: null });
	});
});

describe("usePlan", () => {
	const places = PLACES.map((one) => ({ ...one, ships: null }));
	const input = { samples: SAMPLES, legs: LEGS, places, wants: ["weather-charts"] as const, broadcasts: coverage, reach: coverage };
	const runs = usePlan(input);

	it("names the best place and the next by leg and hours, and nothing where nothing is heard", () => {
		expect(runs).toEqual([
			{
				want: "weather-charts",
				leg: "at sea",
				fromHour: 0,
				toHour: 4,
				first: { bank: "data", place: 1, chance: 0.8 },
				second: { bank: "data", place: 3, chance: 0.5 },
			},
			{
				want: "weather-charts",
				leg: "at sea",
				fromHour: 9,
				toHour: 10,
				first: { bank: "data", place: 2, chance: 0.6 },
				second: { bank: "data", place: 3, chance: 0.5 },
			},
			{
				want: "weather-charts",
				leg: "in port",
				fromHour: 0,
				toHour: 4,
				first: { bank: "data", place: 1, chance: 0.8 },
				second: { bank: "data", place: 3, chance: 0.5 },
			},
			{
				want: "weather-charts",
				leg: "in port",
				fromHour: 9,
				toHour: 10,
				first: { bank: "data", place: 3, chance: 0.5 },
				second: { bank: "data", place: 4, chance: 0.5 },
			},
		]);
	});

	it("keeps to a first choice until another is clearly better", () => {
		const first = (chanceAtOne: number) => {
			const rising = cells([0], 0.7);
			for (const at of [0, 1, 2]) rising[at * HOURS_PER_DAY + 1] = chanceAtOne;
			const by = new Map([
				[low, cells([0, 1], 0.8)],
				[far, rising],
			]);
			const heard = (one: Listing) => by.get(one) ?? null;
			return usePlan({ ...input, broadcasts: heard, reach: heard })
				.filter(({ leg }) => leg === "in port")
				.map(({ fromHour, first: { place } }) => [fromHour, place]);
		};
		expect(first(0.84)).toEqual([[0, 1]]);
		expect(first(0.86)).toEqual([
			[0, 1],
			[1, 3],
		]);
	});

	it("tells when a set with one receiver keeps no watch: while it takes what is named first", () => {
		const off = watchOff({ directory: DIRECTORY, samples: SAMPLES, legs: LEGS, places: PLACES, use: runs });
		expect(off).toEqual([
			{ leg: "at sea", minutes: 30, times: [{ fromMin: 540, toMin: 570, want: "weather-charts", bank: "data", place: 2 }] },
			{ leg: "in port", minutes: 0, times: [] },
		]);
	});
});
