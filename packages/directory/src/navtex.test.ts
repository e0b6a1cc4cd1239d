import { describe, expect, it } from "vitest";
import { navtexSlots } from "./navtex.ts";

describe("navtexSlots", () => {
	it("starts letter n ten minutes after letter n-1, six times a day (NAVTEX Manual, from memory)", () => {
		expect(navtexSlots("A")).toEqual([0, 240, 480, 720, 960, 1200]);
		expect(navtexSlots("N")).toEqual([130, 370, 610, 850, 1090, 1330]);
		const all = [..."ABCDEFGHIJKLMNOPQRSTUVWX"].flatMap(navtexSlots);
		expect(all.toSorted((a, b) => a - b)).toEqual(Array.from({ length: 144 }, (_, slot) => slot * 10));
	});

	it("refuses what is no letter A to X", () => {
		for (const letter of ["", "Y", "Z", "a", "AB", "1"]) expect(() => navtexSlots(letter)).toThrow(RangeError);
	});
});
