import { describe, expect, it } from "vitest";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import { tagFits, tagProblem } from "./tagFits.ts";

const [twin, single] = shippedProfiles() as [Profile, Profile];

describe("tagFits", () => {
	it.each(["", "CAPE TOWN", "ABCDEFGHIJ", "4-1 8.2+/"])("twin-180 shows %j", (tag) => {
		expect(tagFits(twin, tag)).toBe(true);
	});

	it("says why a tag does not fit", () => {
		expect(tagProblem(twin, "CAPE TOWN RADIO")).toBe("15 characters, the set shows 10");
		expect(tagProblem(single, "CAPE TOWN")).toBe("9 characters, the set shows 6");
		expect(tagProblem(twin, "Açores")).toBe('the set has no "ç", "o", "r", "e", "s"');
		expect(tagFits(twin, "=1+1")).toBe(false);
	});

	it("counts characters, not code units", () => {
		expect(tagFits({ ...twin, tag: { length: 2, characters: "⚓🌊" } }, "🌊⚓")).toBe(true);
	});
});
