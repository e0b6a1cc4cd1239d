import { describe, expect, it } from "vitest";
import { cosElevation, elevationDeg, legLength, secIncidence, sinElevation, slantKm } from "./elevation.ts";
import { hopOf } from "./pathHop.ts";

const R0 = 6371;

describe("a ray's elevation and length", () => {
	it("are those of ITU-R P.533 sections 5.1 and 5.2, in the form printed there", () => {
		let compared = 0;
		for (const pathKm of [30, 200, 800, 1500, 2500, 3900, 8000]) {
			for (const count of [1, 2, 5]) {
				for (const mirrorKm of [90, 110, 250, 400, 800]) {
					const half = pathKm / count / (2 * R0);
					const elevation = Math.atan(1 / Math.tan(half) - R0 / (R0 + mirrorKm) / Math.sin(half));
					const hop = hopOf(pathKm, count);
					const leg = legLength(hop, mirrorKm);
					expect(elevationDeg(hop, mirrorKm)).toBeCloseTo((elevation * 180) / Math.PI, 9);
					expect(sinElevation(hop, mirrorKm, leg)).toBeCloseTo(Math.sin(elevation), 11);
					expect(cosElevation(hop, leg)).toBeCloseTo(Math.cos(elevation), 11);
					expect(slantKm(hop, mirrorKm, leg)).toBeCloseTo((2 * R0 * count * Math.sin(half)) / Math.cos(elevation + half), 7);
					compared++;
				}
			}
		}
		expect(compared).toBe(105);
	});

	it("go straight up and down where sender and receiver are one", () => {
		const hop = hopOf(0, 1);
		const leg = legLength(hop, 300);
		expect(elevationDeg(hop, 300)).toBe(90);
		expect(slantKm(hop, 300, leg)).toBeCloseTo(600, 9);
	});

	it("meet a height at the angle whose sine is R0 cos(elevation) / (R0 + h)", () => {
		expect(secIncidence(0, 110)).toBe(1);
		expect(secIncidence(1, 110)).toBeCloseTo(1 / Math.cos(Math.asin(R0 / (R0 + 110))), 12);
	});
});
