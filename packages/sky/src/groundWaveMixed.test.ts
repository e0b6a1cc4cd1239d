import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { GROUNDS } from "./groundConstants.ts";
import { groundWaveField } from "./groundWaveField.ts";
import { mixedField, mixedGroundWaveField } from "./groundWaveMixed.ts";
import { groundWaveTable } from "./groundWaveTable.ts";

const { sea, land } = GROUNDS;
const F_MHZ = 2.182;
const over = (ground: typeof sea, distanceKm: number): number => groundWaveField({ fMHz: F_MHZ, distanceKm, ground });

describe("mixedGroundWaveField (ITU-R P.368 Annex 2, from memory)", () => {
	it("is the rule itself on two sections", () => {
		const forward = over(land, 30) - over(sea, 30) + over(sea, 130);
		const backward = over(sea, 100) - over(land, 100) + over(land, 130);
		const field = mixedGroundWaveField(
			[
				{ ground: land, lengthKm: 30 },
				{ ground: sea, lengthKm: 100 },
			],
			F_MHZ,
		);
		expect(field).toBeCloseTo((forward + backward) / 2, 10);
	});

	it("is the same both ways, and cuts and sections of no length change nothing", () => {
		fc.assert(
			fc.property(fc.double({ min: 1, max: 400, noNaN: true }), fc.double({ min: 1, max: 400, noNaN: true }), (landKm, seaKm) => {
				const path = [
					{ ground: land, lengthKm: landKm },
					{ ground: sea, lengthKm: seaKm },
				];
				const field = mixedGroundWaveField(path, F_MHZ);
				expect(mixedGroundWaveField(path.toReversed(), F_MHZ)).toBeCloseTo(field, 9);
				const cut = [
					{ ground: land, lengthKm: landKm / 3 },
					{ ground: sea, lengthKm: 0 },
					{ ground: land, lengthKm: (2 * landKm) / 3 },
					{ ground: sea, lengthKm: seaKm },
				];
				expect(mixedGroundWaveField(cut, F_MHZ)).toBeCloseTo(field, 9);
			}),
			{ seed: 3, numRuns: 40 },
		);
	});

	it("of one ground is that ground's field", () => {
		expect(mixedGroundWaveField([{ ground: sea, lengthKm: 250 }], F_MHZ)).toBe(over(sea, 250));
	});

	it("lies between all land and all sea, and recovers past the shore", () => {
		const path = (seaKm: number) => [
			{ ground: land, lengthKm: 50 },
			{ ground: sea, lengthKm: seaKm },
		];
		for (const seaKm of [10, 30, 100, 300]) {
			const field = mixedGroundWaveField(path(seaKm), F_MHZ);
			expect(field).toBeLessThan(over(sea, 50 + seaKm));
			expect(field).toBeGreaterThan(over(land, 50 + seaKm));
		}
		const pastShore = [0.5, 5, 20].map((seaKm) => mixedGroundWaveField(path(seaKm), F_MHZ) - over(land, 50 + seaKm));
		expect(pastShore).toEqual(pastShore.toSorted((a, b) => a - b));
	});

	it("takes tables as well, within their error", () => {
		const sections = [
			{ fieldAt: groundWaveTable(F_MHZ, land).fieldAt, lengthKm: 40 },
			{ fieldAt: groundWaveTable(F_MHZ, sea).fieldAt, lengthKm: 160 },
		];
		const exact = mixedGroundWaveField(
			[
				{ ground: land, lengthKm: 40 },
				{ ground: sea, lengthKm: 160 },
			],
			F_MHZ,
		);
		expect(Math.abs(mixedField(sections) - exact)).toBeLessThan(0.06);
	});

	it("refuses no path and a negative section", () => {
		expect(() => mixedGroundWaveField([], F_MHZ)).toThrow(/expected a section above 0 km/);
		expect(() => mixedGroundWaveField([{ ground: sea, lengthKm: -1 }], F_MHZ)).toThrow(/section of -1 km/);
	});
});
