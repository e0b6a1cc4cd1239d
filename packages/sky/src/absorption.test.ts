import { describe, expect, it } from "vitest";
import { absorptionIndex, absorptionPerSecantDb, winterAnomaly } from "./absorption.ts";

describe("absorption, from memory", () => {
	it("is 18.8 dB for the digest's example: 10 MHz, secant 3.6, gyrofrequency 1.2, no spots, sun overhead", () => {
		expect(3.6 * absorptionPerSecantDb(absorptionIndex(0, 0), 1.2, 10)).toBeCloseTo(18.8, 1);
	});

	it("falls with the sun to a tenth of an overhead one's, which stands for the night", () => {
		const falling = [0, 20, 40, 60, 80, 90, 100].map((zenith) => absorptionIndex(zenith, 0));
		expect(falling).toEqual([...falling].sort((a, b) => b - a));
		expect(falling[0]).toBe(1);
		for (const zenith of [100, 102, 103, 140, 180]) expect(absorptionIndex(zenith, 150)).toBe(0.1);
	});

	it("grows by 0.37 % a sunspot", () => {
		expect(absorptionIndex(30, 100) / absorptionIndex(30, 0)).toBeCloseTo(1.37, 12);
	});

	it("falls with frequency", () => {
		expect(absorptionPerSecantDb(1, 1.2, 4)).toBeGreaterThan(3 * absorptionPerSecantDb(1, 1.2, 10));
	});

	it("is greater in winter at 60 degrees: 1.30 in January, 1.15 in February, six months on in the south", () => {
		expect([1, 2, 3, 4, 10, 11, 12].map((month) => winterAnomaly(month, 60))).toEqual([1.3, 1.15, 1.03, 1, 1.03, 1.15, 1.3]);
		expect([7, 8, 9, 1].map((month) => winterAnomaly(month, -60))).toEqual([1.3, 1.15, 1.03, 1]);
		expect(winterAnomaly(1, 45)).toBeCloseTo(1.15, 12);
		expect(winterAnomaly(1, 75)).toBeCloseTo(1.15, 12);
		for (const lat of [0, 30, -30, 90]) expect(winterAnomaly(1, lat)).toBe(1);
	});
});
