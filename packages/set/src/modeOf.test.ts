import { MODES } from "@skipwright/rules";
import { describe, expect, it } from "vitest";
import { modeOf } from "./modeOf.ts";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";

const [twin] = shippedProfiles() as [Profile];

describe("modeOf", () => {
	it.each(MODES)("%s is itself, with or without a profile, in any case of letters", (mode) => {
		expect(modeOf(null, mode)).toBe(mode);
		expect(modeOf(twin, ` ${mode.toLowerCase()} `)).toBe(mode);
	});

	it("takes the maker's words from the profile", () => {
		expect([modeOf(twin, "H3E"), modeOf(twin, "data"), modeOf(twin, "J3E")]).toEqual(["AM", "FSK", "USB"]);
		expect(() => modeOf(null, "H3E")).toThrow('expected one of USB, LSB, AM, CW, FSK, got "H3E"');
	});

	it("names the five and the maker's words where it knows none", () => {
		expect(() => modeOf(twin, "FM")).toThrow(/one of USB, LSB, AM, CW, FSK, or the maker's J3E, H3E/);
	});
});
