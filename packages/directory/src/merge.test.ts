import { BadInputError, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory, listingById, listingsNear, stationById } from "./directory.ts";
import { readEditsCsv, writeEditsCsv } from "./editsCsv.ts";
import { occurrencesOf } from "./listingSchedule.ts";
import { EDIT_ACTIONS, editsFor, type ListingEdit, mergeDirectory } from "./merge.ts";
import type { Directory, Listing } from "./types.ts";

const SHIPPED = directory();
const STAMP = { by: "bench", on: isoDate("2026-11-24"), reason: "heard on the bench" };
const BOSTON = listingById(SHIPPED, "us-boston/fax/9110")!;
const KODIAK = listingById(SHIPPED, "us-kodiak/fax/2054")!;
const ADDED: Listing = { ...BOSTON, id: "us-boston/fax/9111", hz: 9_111_000 as Listing["hz"], origin: "shop" };

function change(was: Listing, fields: Partial<Listing>): ListingEdit {
	return { action: "change", listing: { ...was, ...fields, origin: "shop" }, was, ...STAMP };
}

function merge(listings: readonly ListingEdit[], shipped: Directory = SHIPPED) {
	return mergeDirectory(shipped, { listings, stations: [] });
}

/** A new edition of the shipped data. */
function edition(edit: (listing: Listing) => Listing | null): Directory {
	return { ...SHIPPED, edition: "2027-02-01", listings: SHIPPED.listings.map(edit).filter((listing) => listing !== null) };
}

describe("mergeDirectory", () => {
	it("lets the shop's row win and keeps the shipped one beneath", () => {
		const merged = merge([change(BOSTON, { schedule: "0230-0510" })]);
		expect(listingById(merged, BOSTON.id)).toMatchObject({ schedule: "0230-0510", origin: "shop" });
		expect(merged.overridden).toEqual([BOSTON]);
		expect(merged.listings).toHaveLength(856);
		expect(merged.conflicts).toEqual([]);
		expect(SHIPPED.listings).toContain(BOSTON);
	});

	it("adds, closes and removes, and says what lies beneath", () => {
		const merged = merge([
			{ action: "add", listing: ADDED, was: null, ...STAMP },
			{ action: "close", listing: KODIAK, was: KODIAK, ...STAMP },
			{ action: "remove", listing: BOSTON, was: BOSTON, ...STAMP },
		]);
		expect(merged.listings).toHaveLength(856);
		expect(listingsNear(merged, ADDED.hz, 0)).toEqual([ADDED]);
		const closed = listingById(merged, KODIAK.id)!;
		expect(closed).toMatchObject({ status: "closed", schedule: KODIAK.schedule, origin: "shop" });
		expect(occurrencesOf(merged, closed, STAMP.on)).toEqual([]);
		expect(listingById(merged, BOSTON.id)).toBeNull();
		expect(merged.overridden).toEqual([KODIAK, BOSTON]);
	});

	it("keeps the edits over a new edition that touches none of them", () => {
		const edits = [change(BOSTON, { schedule: "0230-0510" })];
		const next = edition((listing) => (listing === KODIAK ? { ...listing, schedule: "unknown" } : listing));
		const merged = merge(edits, next);
		expect(merged.conflicts).toEqual([]);
		expect(listingById(merged, BOSTON.id)?.schedule).toBe("0230-0510");
		expect(listingById(merged, KODIAK.id)?.schedule).toBe("unknown");
		expect(merged.edits.listings).toEqual(edits);
	});

	it("reports a shipped row that changed beneath an edit, field by field, and lets the edit hold", () => {
		const next = edition((listing) => (listing.id === BOSTON.id ? { ...listing, schedule: "0230-0440", asOf: "2027" } : listing));
		const { conflicts, ...merged } = merge([change(BOSTON, { schedule: "0230-0510" })], next);
		expect(conflicts).toMatchObject([
			{
				listingId: BOSTON.id,
				kind: "shipped-changed",
				fields: [
					{ name: "schedule", was: BOSTON.schedule, now: "0230-0440", edited: "0230-0510" },
					{ name: "as_of", was: "2025", now: "2027", edited: "2025" },
				],
			},
		]);
		expect(listingById(merged, BOSTON.id)?.schedule).toBe("0230-0510");
		expect(merged.overridden[0]?.schedule).toBe("0230-0440");
	});

	it("reports a shipped row that vanished, and one that is shipped now", () => {
		const gone = edition((listing) => (listing.id === BOSTON.id ? null : listing));
		const vanished = merge([change(BOSTON, { schedule: "0230-0510" })], gone);
		expect(vanished.conflicts).toMatchObject([{ listingId: BOSTON.id, kind: "shipped-vanished" }]);
		expect(listingById(vanished, BOSTON.id)?.schedule).toBe("0230-0510");
		const shippedNow = { ...SHIPPED, listings: [...SHIPPED.listings, { ...ADDED, schedule: "unknown", origin: "shipped" as const }] };
		const merged = merge([{ action: "add", listing: ADDED, was: null, ...STAMP }], shippedNow);
		expect(merged.conflicts).toMatchObject([{ kind: "now-shipped", fields: [{ name: "schedule", now: "unknown" }] }]);
		expect(listingById(merged, ADDED.id)?.schedule).toBe(ADDED.schedule);
		expect(merged.listings).toHaveLength(857);
	});

	it("closes the shipped row of today, not that of the day of the edit", () => {
		const next = edition((listing) => (listing.id === BOSTON.id ? { ...listing, schedule: "0230-0440" } : listing));
		const merged = merge([{ action: "close", listing: BOSTON, was: BOSTON, ...STAMP }], next);
		expect(listingById(merged, BOSTON.id)).toMatchObject({ status: "closed", schedule: "0230-0440" });
		expect(merged.conflicts).toMatchObject([{ kind: "shipped-changed", fields: [{ name: "schedule" }] }]);
	});

	it("lets the later of two edits hold and says so", () => {
		const merged = merge([change(BOSTON, { schedule: "0100" }), change(BOSTON, { schedule: "0200" })]);
		expect(listingById(merged, BOSTON.id)?.schedule).toBe("0200");
		expect(merged.conflicts).toMatchObject([{ kind: "edited-twice" }]);
	});

	it("lays the shop's stations over the shipped ones", () => {
		const boston = stationById(SHIPPED, "us-boston")!;
		const moved = { ...boston, notes: "moved" };
		const own = { ...boston, id: "shop-test" };
		const merged = mergeDirectory(SHIPPED, { listings: [], stations: [moved, own] });
		expect(merged.stations).toHaveLength(367);
		expect(stationById(merged, "us-boston")?.notes).toBe("moved");
		expect(merged.overriddenStations).toEqual([boston]);
	});

	it("loses nothing, whatever the edits: every shipped row is in force or beneath", () => {
		const edit = fc.record({
			action: fc.constantFrom(...EDIT_ACTIONS),
			index: fc.nat(855),
			schedule: fc.constantFrom("0100", "closed", "H+10"),
		});
		fc.assert(
			fc.property(fc.uniqueArray(edit, { maxLength: 12, selector: ({ index }) => index }), (edits) => {
				const merged = merge(
					edits.map(({ action, index, schedule }): ListingEdit => {
						const was = SHIPPED.listings[index]!;
						return { action, listing: { ...was, schedule, origin: "shop" }, was, ...STAMP };
					}),
				);
				const ids = new Set([...merged.listings, ...merged.overridden].map(({ id }) => id));
				expect(ids.size).toBe(856);
				expect(merged.overridden).toHaveLength(edits.length);
				expect(merged.listings).toHaveLength(856 - edits.filter(({ action }) => action === "remove").length);
				for (const row of merged.overridden) expect(SHIPPED.listings).toContain(row);
			}),
			{ seed: 51, numRuns: 100 },
		);
	});
});

describe("editsFor", () => {
	it("finds nothing to do in an export of the directory", () => {
		expect(editsFor(SHIPPED, SHIPPED.listings, STAMP)).toEqual([]);
	});

	it("turns new rows into additions and other ones into changes", () => {
		const edits = editsFor(SHIPPED, [{ ...KODIAK, coverage: "Bering Sea" }, BOSTON, ADDED], STAMP);
		expect(edits.map(({ action, listing, was }) => [action, listing.id, was?.id])).toEqual([
			["change", KODIAK.id, KODIAK.id],
			["add", ADDED.id, undefined],
		]);
		expect(listingById(merge(edits), KODIAK.id)?.coverage).toBe("Bering Sea");
	});
});

describe("edits as CSV", () => {
	const edits: readonly ListingEdit[] = [
		change(BOSTON, { notes: '=heard, "loud"', schedule: "0230-0510" }),
		{ action: "close", listing: KODIAK, was: null, ...STAMP },
		{ action: "add", listing: ADDED, was: null, ...STAMP },
		change(BOSTON, { schedule: "0200" }),
	];

	it("reads back what it wrote, the shipped rows beneath included", () => {
		expect(readEditsCsv("edits.csv", writeEditsCsv(edits))).toEqual(edits);
		expect(merge(readEditsCsv("edits.csv", writeEditsCsv(edits)))).toEqual(merge(edits));
	});

	it("refuses an unknown action, a bad day and a row `was` without its edit", () => {
		const lines = writeEditsCsv(edits).split("\n");
		expect(() => readEditsCsv("e.csv", lines.join("\n").replace("close,", "shut,"))).toThrow(
			"line 4, column action: expected one of add, change, close, remove, was",
		);
		expect(() => readEditsCsv("e.csv", lines.join("\n").replace("2026-11-24", "24 Nov"))).toThrow(
			"line 3, column on: expected a day as YYYY-MM-DD",
		);
		expect(() => readEditsCsv("e.csv", [lines[0], lines[1], lines[3]].join("\n"))).toThrow("an edit of the same id in the next line");
		expect(() => readEditsCsv("e.csv", [lines[0], lines[1]].join("\n"))).toThrow("line 2, column action");
	});

	it("reads any text whole or not at all", () => {
		const csv = writeEditsCsv(edits);
		let refused = 0;
		fc.assert(
			fc.property(
				fc
					.tuple(fc.nat(csv.length), fc.nat(6), fc.string({ maxLength: 4 }))
					.map(([at, skip, put]) => csv.slice(0, at) + put + csv.slice(at + skip)),
				(text) => {
					try {
						readEditsCsv("e.csv", text);
					} catch (error) {
						expect(error).toBeInstanceOf(BadInputError);
						refused++;
					}
				},
			),
			{ seed: 52, numRuns: 500 },
		);
		expect(refused).toBeGreaterThan(100);
	});
});
