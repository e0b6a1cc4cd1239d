import { directory } from "@skipwright/directory";
import { checkList, profileNamed, type Row, readList } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { reviewAsFound } from "./reviewAsFound.ts";

const TWIN = profileNamed("twin-180")!;
const check = (rows: readonly Row[]) =>
	checkList(rows, { profile: TWIN, directory: directory(), on: isoDate("2026-11-24"), region: 1, amateurLicence: false });

function review(lines: readonly string[]) {
	return reviewAsFound(readList("x", `bank,place,tag,receive_khz,transmit_khz,mode\n${lines.join("\n")}\n`, TWIN), check);
}

describe("reviewAsFound", () => {
	it("leaves right rows as they are", () => {
		const { standing, wrong } = review(["voice,1,DIST 8291,8291,8291,USB", "voice,21,CH 401,4357,4065,USB"]);
		expect(wrong).toEqual([]);
		expect(standing.map(({ mended, tag, poor }) => [mended, tag, poor])).toEqual([
			["", "keep", false],
			["", "keep", false],
		]);
	});

	// Appendix 17: 405 is coast 4369, ship 4077; 412 coast 4390, ship 4098; 603 coast 6507, ship 6206
	it.each([
		["sides exchanged", "voice,21,CH 405,4077,4369,USB", 4_369, 4_077, "USB"],
		["the wrong sideband", "voice,21,CH 412,4390,4098,LSB", 4_390, 4_098, "USB"],
		["assigned figures", "voice,21,CH 603,6508.4,6207.4,USB", 6_507, 6_206, "USB"],
		["a broken pair", "voice,21,CH 1205,13089,12245,USB", 13_089, null, "USB"],
		["an amateur net without licence", "voice,21,HAM 20,14300,14300,USB", 14_300, null, "USB"],
		["a broadcast both ways", "voice,21,NMG WX 12,12788,12788,USB", 12_788, null, "USB"],
		["DSC distress in a place that sends", "data,14,DSC 8414.5,8414.5,8414.5,FSK", 8_414.5, null, "FSK"],
	])("mends %s", (_what, line, receive, transmit, mode) => {
		const { standing, wrong } = review([line]);
		expect(wrong).toEqual([]);
		expect(standing[0]?.row).toMatchObject({ receive: receive * 1_000, transmit: transmit === null ? null : transmit * 1_000, mode });
		expect(standing[0]?.mended).not.toBe("");
	});

	it.each([
		["a chart keyed at its centre", "data,1,NMF 9110,9110,,USB", true],
		["a distress carrier as a chat channel: the guard has a place of its own", "voice,5,CHAT,8291,8291,USB", true],
		["a closed listing", "data,1,ZKLF 9459,9457.1,,USB", true],
		["a place that the set has not", "voice,181,CH 401,4357,4065,USB", false],
		["an unknown bank", "fax,1,NMF 9110,9108.1,,USB", false],
	])("gives up %s", (_what, line, freesPlace) => {
		const { standing, wrong } = review([line]);
		expect(standing).toEqual([]);
		expect(wrong).toEqual([expect.objectContaining({ freesPlace })]);
	});

	it("keeps the first of two rows at one place, and the place", () => {
		const { standing, wrong } = review(["voice,21,CH 401,4357,4065,USB", "voice,21,CH 402,4360,4068,USB"]);
		expect([standing.map(({ row }) => row.tag), wrong.map(({ row, freesPlace }) => [row.tag, freesPlace])]).toEqual([
			["CH 401"],
			[["CH 402", false]],
		]);
	});

	it("does not mend a row into what another place holds", () => {
		const { standing, wrong } = review(["voice,150,NMN 13089,13089,,USB", "voice,21,CH 1205,13089,12245,USB"]);
		expect(standing.map(({ row }) => row.place)).toEqual([150]);
		expect(wrong[0]?.why).toMatch(/repeat another place/);
	});

	it("says what becomes of tags", () => {
		const { standing } = review([
			"voice,101,A TAG TOO LONG,8294,8294,USB",
			"voice,102,SHIP,8297,8297,USB",
			"voice,103,SHIP,12353,12353,USB",
		]);
		expect(standing.map(({ tag }) => tag)).toEqual(["cut", "keep", "new"]);
	});
});
