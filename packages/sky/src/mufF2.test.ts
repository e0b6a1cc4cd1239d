import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { distanceShare, f2Layer, f2Muf3000MHz, f2MufMHz, f2MufOfLongestHopMHz, LONGEST_F2_HOP_KM, longestHopKm } from "./mufF2.ts";

const layerOf = (m3000: number, foEMHz = 2, gyroMHz = 0) => f2Layer({ foF2MHz: 8, m3000, foEMHz, gyroMHz });

describe("the F2 layer's basic MUF", () => {
	it("has C = 0 at no distance and 1 at the longest hop, ITU-R P.533 equation (4), to a ten-thousandth", () => {
		for (const longest of [3300, 4000, 6000]) {
			expect(distanceShare(0, longest)).toBeCloseTo(0, 4);
			expect(distanceShare(longest, longest)).toBeCloseTo(1, 4);
		}
	});

	it("is 2.999 times foF2 at 3000 km for M(3000)F2 = 3 at foF2/foE = 3, the digest's figure, and near M(3000)F2 elsewhere", () => {
		expect(f2Muf3000MHz(f2Layer({ foF2MHz: 1, m3000: 3, foEMHz: 1 / 3, gyroMHz: 0 }))).toBeCloseTo(2.999, 3);
		let compared = 0;
		for (const m3000 of [2.4, 2.6, 2.8, 3, 3.2, 3.4, 3.6]) {
			for (const foEMHz of [0.5, 1, 2, 4]) {
				expect(Math.abs(f2Muf3000MHz(layerOf(m3000, foEMHz)) / 8 / m3000 - 1)).toBeLessThan(0.05);
				compared++;
			}
		}
		expect(compared).toBe(28);
	});

	it("is foF2 and half the gyrofrequency straight up: the extraordinary wave", () => {
		for (const gyroMHz of [0, 0.8, 1.6]) expect(f2MufMHz(layerOf(3, 2, gyroMHz), 0, 4000)).toBeCloseTo(8 + gyroMHz / 2, 3);
	});

	it("rises with distance up to the longest hop, but for a hundredth at either end of the polynomial", () => {
		fc.assert(
			fc.property(fc.double({ min: 2, max: 4, noNaN: true }), fc.double({ min: 0.5, max: 6, noNaN: true }), (m3000, foEMHz) => {
				const layer = layerOf(m3000, foEMHz);
				const longest = longestHopKm(layer);
				let highest = 0;
				for (let share = 0; share <= 1; share += 0.02) {
					const muf = f2MufMHz(layer, share * longest, longest);
					if (muf < 0.99 * highest) return false;
					highest = Math.max(highest, muf);
				}
				return f2MufOfLongestHopMHz(layer) > 0.99 * highest;
			}),
			{ seed: 533, numRuns: 300 },
		);
	});

	it("takes no hop over 4000 km, and foF2/foE for 2 where it is less", () => {
		for (const m3000 of [1.8, 2.4, 3, 3.6, 4.2]) {
			for (const foEMHz of [0, 0.5, 2, 4, 12]) expect(longestHopKm(layerOf(m3000, foEMHz))).toBeLessThanOrEqual(LONGEST_F2_HOP_KM);
		}
		expect(layerOf(3, 4)).toEqual(layerOf(3, 7));
	});
});
