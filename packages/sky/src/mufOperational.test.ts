import { describe, expect, it } from "vitest";
import { operationalRatio } from "./mufOperational.ts";
import { seasonAt } from "./season.ts";

describe("operational over basic MUF, from memory", () => {
	it("is most on winter nights with much power, least on summer days with little", () => {
		expect(operationalRatio("winter", false, 31)).toBe(1.35);
		expect(operationalRatio("winter", false, 30)).toBe(1.3);
		expect(operationalRatio("equinox", true, 0)).toBe(1.15);
		expect(operationalRatio("summer", true, 20)).toBe(1.1);
	});
});

describe("season", () => {
	it("is winter from November to February in the north, and in the south from May to August", () => {
		const words = (latDeg: number) => Array.from({ length: 12 }, (_, index) => seasonAt(index + 1, latDeg)[0]).join("");
		expect(words(50)).toBe("wweesssseeww");
		expect(words(-1)).toBe("sseewwwweess");
		expect(words(0)).toBe(words(50));
	});

	it("refuses what is no month", () => {
		expect(() => seasonAt(13, 0)).toThrow(RangeError);
	});
});
