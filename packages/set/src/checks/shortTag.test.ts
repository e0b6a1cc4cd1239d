import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Profile } from "../profile.ts";
import { shippedProfiles } from "../shippedProfiles.ts";
import { tagFits } from "../tagFits.ts";
import { shortTag } from "./shortTag.ts";

const twin = shippedProfiles()[0] as Profile;
const showing = (length: number): Profile => ({ ...twin, tag: { ...twin.tag, length } });

describe("shortTag (common practice, no source)", () => {
	it.each([
		[6, "DIST 12290", "D12290"],
		[6, "DIST 16420", "D16420"],
		[8, "DIST 12290", "DST12290"],
		[9, "DIST 12290", "DIST12290"],
		[6, "SHIP 8A", "SHIP8A"],
		[6, "SHIP 8A NIGHT", "SHIP8A"],
		[10, "CAPE TOWN RADIO", "CAPETOWNRD"],
		[6, "Açores", "ACORES"],
		[6, "MSI 16806.5", "M16806"],
		[6, "=1+1", "1+1"],
		[6, "\u2693", ""],
	])("on a set that shows %i: %j gives %j", (length, tag, short) => {
		expect(shortTag(showing(length), tag)).toBe(short);
	});

	it("always fits, and is empty only where the set shows none of it", () => {
		let seen = 0;
		fc.assert(
			fc.property(
				fc.string({ unit: "binary", maxLength: 20 }),
				fc.stringMatching(/^[A-Z0-9 .]{0,20}$/),
				fc.integer({ min: 1, max: 12 }),
				(odd, usual, length) => {
					for (const tag of [odd, usual]) {
						const short = shortTag(showing(length), tag);
						expect(tagFits(showing(length), short)).toBe(true);
						if (/[A-Z0-9]/.test(tag)) expect(short).not.toBe("");
						seen++;
					}
				},
			),
			{ seed: 20261124, numRuns: 500 },
		);
		expect(seen).toBe(1_000);
	});
});
