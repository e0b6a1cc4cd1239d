import { isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory } from "./directory.ts";
import { confidenceText, freshness, lastHeard } from "./freshness.ts";
import type { Confidence, Listing } from "./types.ts";

const SAMPLE = directory().listings[0]!;

function listing(confidence: Confidence, asOf: string, source = ""): Listing {
	return { ...SAMPLE, confidence, asOf, source };
}

function grade(given: Listing, on: string): string {
	return freshness(given, isoDate(on)).grade;
}

describe("freshness (contract of the findings: official 12 and 36 months, secondary 6 and 18, memory always stale)", () => {
	it("is over a limit on the day after it", () => {
		const official = listing("official", "2024-03-10");
		expect(["2025-03-10", "2025-03-11", "2027-03-10", "2027-03-11"].map((on) => grade(official, on))).toEqual([
			"fresh",
			"ageing",
			"ageing",
			"stale",
		]);
		const secondary = listing("secondary", "2025-05-31");
		expect(["2025-11-30", "2025-12-01", "2026-11-30", "2026-12-01"].map((on) => grade(secondary, on))).toEqual([
			"fresh",
			"ageing",
			"ageing",
			"stale",
		]);
		expect(grade(listing("memory", "2026-11-01"), "2026-11-02")).toBe("stale");
	});

	it("counts a year from its first January and a month from its first day", () => {
		expect(freshness(listing("official", "2025"), isoDate("2026-11-24"))).toMatchObject({ months: 22, grade: "ageing" });
		expect(freshness(listing("official", "2025-12"), isoDate("2026-11-24"))).toMatchObject({ months: 11, grade: "fresh" });
		expect(freshness(listing("official", "2028"), isoDate("2026-11-24"))).toMatchObject({ months: 0, grade: "fresh" });
	});

	it("goes by when it was last heard where the list says so, older or newer than the list", () => {
		const unheardFor = listing("secondary", "2025", "list (secondary); last logged 2018-12");
		expect(freshness(unheardFor, isoDate("2025-04-01"))).toMatchObject({ grade: "stale", months: 76 });
		const heardLately = listing("secondary", "2025", "list (secondary); last logged 2025-04");
		expect(freshness(heardLately, isoDate("2025-08-01"))).toMatchObject({ grade: "fresh", months: 4 });
		expect(lastHeard(heardLately)).toBe("2025-04");
	});

	it("is never fresher for a list that gives no log date", () => {
		const neverHeard = listing("secondary", "2025", "list (secondary); no log date given");
		expect(grade(neverHeard, "2025-01-02")).toBe("stale");
		expect(freshness(neverHeard, isoDate("2025-01-02")).why).toContain("no record that anybody heard it");
	});

	it("is stale without a date", () => {
		expect(freshness(listing("secondary", ""), isoDate("2026-11-24"))).toMatchObject({ grade: "stale", months: null });
	});

	it("never turns fresher as days go by", () => {
		const rank = { fresh: 0, ageing: 1, stale: 2 };
		fc.assert(
			fc.property(
				fc.constantFrom<Confidence>("official", "secondary", "memory"),
				fc.constantFrom("2019", "2024-02", "2024-02-29", "2025-12-31"),
				fc.tuple(day(), day()),
				(confidence, asOf, days) => {
					const [early, late] = days.toSorted();
					const given = listing(confidence, asOf);
					expect(rank[freshness(given, isoDate(early!)).grade]).toBeLessThanOrEqual(rank[freshness(given, isoDate(late!)).grade]);
				},
			),
			{ seed: 31 },
		);
	});

	it("finds the 287 shipped listings that were heard and the 100 that nobody is recorded to have heard", () => {
		expect(directory().listings.filter((one) => lastHeard(one) !== null)).toHaveLength(287);
		const neverHeard = directory().listings.filter(({ source }) => source.includes("no log date given"));
		expect(neverHeard).toHaveLength(100);
		for (const one of neverHeard) expect(grade(one, "2025-06-01")).toBe("stale");
	});

	it("is told in short words", () => {
		const on = isoDate("2026-11-24");
		expect(confidenceText(listing("official", "2025"), on)).toBe("official source, as of 2025: ageing");
		expect(confidenceText(listing("secondary", "2025", "list (secondary); last logged 2021-09"), on)).toBe(
			"secondary source, as of 2025, last heard 2021-09: stale",
		);
		expect(confidenceText(listing("secondary", "2025", "list (secondary); no log date given"), on)).toBe(
			"secondary source, as of 2025, not recorded as heard: stale",
		);
		expect(confidenceText(listing("memory", "2018"), on)).toBe("from memory, as of 2018: confirm before use");
	});
});

function day() {
	return fc.integer({ min: 0, max: 5000 }).map((days) => new Date(Date.UTC(2019, 0, 1) + days * 86_400_000).toISOString().slice(0, 10));
}
