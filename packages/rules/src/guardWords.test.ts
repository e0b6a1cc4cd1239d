import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { guards } from "./guards.ts";
import { GUARD_WORDS, isGuardTag } from "./guardWords.ts";

const guard2182 = guards()[0]!;
const dsc2187 = guards().find(({ hz }) => hz === 2_187_500)!;

describe("isGuardTag (common practice, no source)", () => {
	it.each([
		"DISTRESS",
		"Dist 2",
		"DIST16",
		"DISTRE",
		"2MDIST",
		"SAFETY 4",
		"SAFE-CALL",
		"DISTCALL",
		"CALL 421",
		"MAYDAY",
		"SAR AIR",
		"GMDSS 8",
		"EMERG",
		"EMER",
		"DSCDISTRES",
		"INT2182",
		"2182",
		"2182.0",
	])("takes %s", (tag) => {
		expect(isGuardTag(tag, guard2182)).toBe(true);
	});

	it.each(["", "CHAT", "NET 1", "CALLAO", "SARDINIA", "DISTANT", "SAFARI", "LOCAL", "4125", "21820", "82", "DIS"])("refuses %j", (tag) => {
		expect(isGuardTag(tag, guard2182)).toBe(false);
	});

	it("takes the figure of a half kilohertz with or without its point", () => {
		expect([isGuardTag("2187.5", dsc2187), isGuardTag("DSC21875", dsc2187), isGuardTag("2187", dsc2187)]).toEqual([true, true, false]);
	});

	it("takes every guard word in any case, with anything that is no letter around it", () => {
		fc.assert(
			fc.property(fc.constantFrom(...GUARD_WORDS), fc.boolean(), fc.stringMatching(/^[0-9 .-]{0,4}$/), (word, lower, edge) => {
				expect(isGuardTag(edge + (lower ? word.toLowerCase() : word) + edge, guard2182)).toBe(true);
			}),
			{ seed: 17 },
		);
	});
});
