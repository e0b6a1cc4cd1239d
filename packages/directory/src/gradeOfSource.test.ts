import { describe, expect, it } from "vitest";
import { gradeOfSource } from "./gradeOfSource.ts";

describe("gradeOfSource: the lowest source behind the frequency counts", () => {
	it.each([
		["South African national ports authority, Cape Town page, undated (official)", "official"],
		["hobby shortwave schedule list, summer 2025 (secondary); last logged 2021-09", "secondary"],
		["from memory of the US Coast Guard HF DSC list", "memory"],
		// the row bears the date of its newest source, so that source's grade goes with it
		["WMO/JCOMM country report, South Africa, 2002 (official); also in a listener post, 2019 (secondary)", "secondary"],
		["hobby shortwave schedule list, summer 2025 (secondary); also in Japanese list, valid to 2017-12-31 (official)", "secondary"],
		["Bureau of Meteorology HF fax page, undated copy on a hobby site (secondary copy of an official text)", "secondary"],
		["research note citing an IHO WWNWS paper that was not opened (memory)", "memory"],
		// times, letters, MMSI and positions from memory do not lower a frequency that was read
		["Canadian Radio Aids to Marine Navigation, Pacific, 2009, part 5 (official); letter and position: from memory", "official"],
		["hobby list (secondary); mode: from memory, the list does not state it", "secondary"],
		["from memory; times: HM Coastguard broadcast leaflet (official)", "memory"],
		["some other page", "memory"],
		["note: nothing about the frequency", "memory"],
		["", "memory"],
	])("%s: %s", (source, grade) => {
		expect(gradeOfSource(source)).toBe(grade);
	});
});
