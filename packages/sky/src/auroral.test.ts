import { describe, expect, it } from "vitest";
import { auroralLossDb } from "./auroral.ts";
import { MEMORY } from "./fromMemory.ts";

const at = (pathKm: number, geomagneticLatDeg: number, season: "winter" | "equinox" | "summer", localHour: number) =>
	auroralLossDb({ pathKm, geomagneticLatDeg, season, localHour });

describe("auroral loss, from memory", () => {
	it("reads the table's corners and edges", () => {
		expect(at(2500, 77.5, "winter", 1)).toBe(2);
		expect(at(2500, 90, "winter", 0.99)).toBe(1); // 22-01
		expect(at(2500, 77.4, "winter", 4)).toBe(8.3);
		expect(at(2500, 68, "equinox", 8)).toBe(21.4);
		expect(at(2501, 42.5, "summer", 21.9)).toBe(1.4);
		expect(at(2501, 72.5, "equinox", 23)).toBe(3.6);
		expect(at(1000, 62.5, "winter", 6.9)).toBe(16);
		expect(at(1000, 62.4, "winter", 7)).toBe(6.6);
	});

	it("is none below 42.5", () => {
		for (let hour = 0; hour < 24; hour++) expect(at(1000, 42.49, "equinox", hour) + at(5000, 0, "winter", hour)).toBe(0);
	});

	it("holds 384 figures, whose rows rise to one belt of latitude and fall from it", () => {
		const { near, far } = MEMORY.auroralLoss.value;
		const seasons = [near, far].flatMap((table): readonly (readonly (readonly number[])[])[] => Object.values(table));
		expect(seasons.flat(2).length).toBe(384);
		for (const rows of seasons) {
			const sums = rows.map((row) => row.reduce((sum, decibels) => sum + decibels, 0));
			const peak = sums.indexOf(Math.max(...sums));
			expect(sums.slice(0, peak + 1)).toEqual([...sums.slice(0, peak + 1)].sort((a, b) => a - b));
			expect(sums.slice(peak)).toEqual([...sums.slice(peak)].sort((a, b) => b - a));
		}
	});
});
