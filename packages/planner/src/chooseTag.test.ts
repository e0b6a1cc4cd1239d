import { guards, isGuardTag } from "@skipwright/rules";
import { type Profile, profileNamed, shippedProfiles, tagFits } from "@skipwright/set";
import { hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { chooseTag } from "./chooseTag.ts";
import { guardTexts } from "./tagTexts.ts";

const TWIN = profileNamed("twin-180")!;
const SINGLE = profileNamed("single-200")!;

describe("chooseTag", () => {
	it("takes the first text that fits the set and is free", () => {
		expect(chooseTag(TWIN, ["CAPE TOWN 8719", "ZSC 8719"], new Set())).toBe("ZSC 8719");
		expect(chooseTag(TWIN, ["ZSC 8719", "8719"], new Set(["ZSC 8719"]))).toBe("8719");
		expect(chooseTag(SINGLE, ["ZSC 8719", "ZSC8719", "ZS8719"], new Set())).toBe("ZS8719");
	});

	it("drops what the set cannot show, but never a figure's point", () => {
		expect(chooseTag(TWIN, ["Gianni's"], new Set())).toBe("GIANNIS");
		expect(chooseTag(TWIN, ["São Café"], new Set())).toBe("SAO CAFE");
		expect(chooseTag(SINGLE, ["4209.5", "4209"], new Set())).toBe("4209");
	});

	it("cuts and numbers where nothing fits whole", () => {
		expect(chooseTag(SINGLE, ["MONTEVIDEO"], new Set())).toBe("MONTEV");
		expect(chooseTag(SINGLE, ["MONTEVIDEO"], new Set(["MONTEV", "MONTEA"]))).toBe("MONTEB");
	});

	it("gives tags that the set shows and no two alike, whatever the texts", () => {
		let made = 0;
		fc.assert(
			fc.property(
				fc.constantFrom(...shippedProfiles()),
				fc.array(fc.array(fc.string({ maxLength: 14 }), { maxLength: 4 }), { maxLength: 12 }),
				(profile: Profile, all) => {
					const taken = new Set<string>();
					for (const texts of all) {
						const tag = chooseTag(profile, texts, taken);
						if (tag === "") continue; // nothing in the texts can be shown
						expect(tagFits(profile, tag)).toBe(true);
						expect(taken.has(tag)).toBe(false);
						taken.add(tag);
						made++;
					}
				},
			),
			{ seed: 20261124, numRuns: 400 },
		);
		expect(made).toBeGreaterThan(800);
	});
});

describe("guardTexts", () => {
	it("gives every shipped set a tag that marks a guard place, for every required guard", () => {
		let looked = 0;
		for (const profile of shippedProfiles()) {
			for (const guard of guards().filter(({ required }) => required)) {
				expect(isGuardTag(chooseTag(profile, guardTexts(guard.hz), new Set()), guard)).toBe(true);
				looked++;
			}
		}
		expect(looked).toBe(18); // six carriers of RR Appendix 15, three sets
	});

	it("names the carrier in full where there is room", () => {
		expect(chooseTag(TWIN, guardTexts(hz(8_291_000)), new Set())).toBe("DIST 8291");
	});
});
