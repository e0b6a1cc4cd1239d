import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { hz, isoDate, position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { SCAN_KINDS } from "./bankRoom.ts";
import type { Candidate, Want } from "./candidate.ts";
import { type Choice, type ChoiceInput, choose } from "./choose.ts";
import { HOURS_PER_DAY } from "./coverage.ts";

const NOTHING_TAKEN = { movable: { speech: 0, other: 0 }, pins: { speech: [], other: [] }, reserve: 0, homeless: [] };
const DAY: VoyageSample = { atMs: 0, date: isoDate("2027-02-01"), position: position(0, 0), stage: "at sea", days: 1 };

/** A chart station's frequency that is heard for sure in the hours given. */
function chart(station: string, khz: number, hours: readonly number[]): readonly [Candidate, Float64Array] {
	const id = `${station}/fax/${khz}`;
	const listing = { id, stationId: station, service: "fax", origin: "shipped" } as Listing;
	const cells = new Float64Array(HOURS_PER_DAY);
	for (const hour of hours) cells[hour] = 1;
	return [candidate(id, "weather-charts", khz, listing), cells];
}

function candidate(id: string, want: Want, khz: number, listing: Listing | null = null): Candidate {
	const content = { receive: hz(khz * 1_000), transmit: null, mode: "USB" } as const;
	const sources = listing === null ? [] : [{ listing, what: id, tags: [id] }];
	const scan = want === "weather-charts" ? "data" : "speech";
	return { id, aliases: [], want, scan, bandMhz: 8, content, alternatives: [], sources, rank: 1, naming: null, notes: [] };
}

function chosen(made: readonly (readonly [Candidate, Float64Array])[], free: number, change: Partial<ChoiceInput> = {}) {
	const cells = new Map(made.flatMap(([one, heard]) => one.sources.map(({ listing }) => [listing, heard] as const)));
	const coverage = (listing: Listing) => cells.get(listing) ?? null;
	return choose({
		candidates: made.map(([one]) => one).toSorted((a, b) => (a.id < b.id ? -1 : 1)),
		samples: [DAY],
		coverage,
		graded: coverage,
		low: null,
		weights: { "weather-charts": 1 },
		present: new Set(),
		standing: new Set(),
		preferred: new Set(),
		together: [],
		leastGainPercent: 0.5,
		hears: ({ sources }) => sources.map(({ listing }) => listing),
		bandUse: () => 1,
		room: [{ bank: "memory", kinds: SCAN_KINDS, free, inSpeechBlocks: free, inOtherBlocks: free, emptyBlocks: [], taken: NOTHING_TAKEN }],
		...change,
	});
}

const ids = (choice: Choice) => choice.chosen.map(({ id }) => id);

describe("choose", () => {
	const wide = chart("a", 8_000, [0, 1, 2, 3, 4, 5, 6, 7]);
	const inside = chart("a", 4_000, [0, 1, 2]);
	const other = chart("b", 6_000, [0, 1, 2, 3]);
	const apart = chart("c", 12_000, [20, 21, 22]);

	it("takes what adds something, and counts one station's frequencies once an hour", async () => {
		expect(ids(await chosen([wide, inside, other, apart], 10))).toEqual(["a/fax/8000", "b/fax/6000", "c/fax/12000"]);
		expect((await chosen([wide, inside, other, apart], 10)).leftOut).toEqual([
			{ listing: "a/fax/4000", why: "adds little: a/fax/8000 is heard in 100 % of its hours; would bring nothing" },
		]);
	});

	it("has everything worth having when nothing is left out of reach", async () => {
		expect((await chosen([wide, inside, other, apart], 10)).worth).toBeCloseTo(1, 5);
		expect((await chosen([wide, other], 1)).worth).toBeCloseTo(8 / (8 + 4 * 0.5), 5); // the second station in an hour counts half
	});

	it("asks of a place what the job asks, and says what it would bring", async () => {
		const all = [wide, other, apart];
		expect(ids(await chosen(all, 10, { leastGainPercent: 30 }))).toEqual(["a/fax/8000"]);
		const { leftOut } = await chosen(all, 10, { leastGainPercent: 30 });
		// of 8 hours of a, half of 4 of b, 3 of c: 13 in all
		expect(leftOut).toEqual([
			{
				listing: "b/fax/6000",
				why: "adds little: a/fax/8000 is heard in 100 % of its hours; would bring 15.38 % of what its want could have (30 % is asked: leastGainPercent)",
			},
			{ listing: "c/fax/12000", why: "adds little: would bring 23.08 % of what its want could have (30 % is asked: leastGainPercent)" },
		]);
	});

	it("takes all of what goes together, or none of it, and all where one is held", async () => {
		const all = [wide, other, apart];
		const together = [["b/fax/6000", "c/fax/12000"]];
		expect(ids(await chosen(all, 2, { together }))).toEqual(["a/fax/8000"]);
		expect(ids(await chosen(all, 3, { together }))).toEqual(["a/fax/8000", "b/fax/6000", "c/fax/12000"]);
		expect(ids(await chosen(all, 1, { together, present: new Set(["b/fax/6000"]) }))).toEqual(["b/fax/6000", "c/fax/12000"]);
	});

	it("stops at the free places, but takes what stands there anyway", async () => {
		expect(ids(await chosen([wide, other, apart], 1))).toEqual(["a/fax/8000"]);
		expect((await chosen([wide, other, apart], 1)).leftOut).toContainEqual({
			listing: "c/fax/12000",
			why: expect.stringMatching(/^no free place that it may be scanned at/),
		});
		expect(ids(await chosen([wide, other, apart], 0, { standing: new Set(["b/fax/6000"]) }))).toEqual(["b/fax/6000"]);
	});

	it("counts what is present before it chooses", async () => {
		// with 8000 there, 4000 of the same station has nothing to add
		expect(ids(await chosen([wide, inside], 5, { present: new Set(["a/fax/8000"]) }))).toEqual(["a/fax/8000"]);
	});

	it("breaks ties by id", async () => {
		const twins = [chart("z", 9_000, [1]), chart("y", 9_100, [2])];
		expect(ids(await chosen(twins, 1))).toEqual(["y/fax/9100"]);
		expect(ids(await chosen(twins.toReversed(), 1))).toEqual(["y/fax/9100"]);
	});

	it("never trades guards, whatever is free and wanted", async () => {
		const guard = [candidate("guard/2182", "guard", 2_182), new Float64Array(HOURS_PER_DAY)] as const;
		expect(ids(await chosen([wide, guard], 0, { weights: {} }))).toEqual(["guard/2182"]);
	});

	it("says what it cannot tell", async () => {
		const [unknown] = chart("n", 5_000, [1]);
		const choice = await chosen([[unknown, new Float64Array(HOURS_PER_DAY)]], 5, { coverage: () => null });
		expect(choice.leftOut).toEqual([{ listing: "n/fax/5000", why: expect.stringMatching(/cannot tell/) }]);
	});
});
