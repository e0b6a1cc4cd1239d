import fc from "fast-check";
import { afterAll, expect, it } from "vitest";
import { GROUNDS } from "./groundConstants.ts";
import { groundWaveAt } from "./groundWaveField.ts";
import { groundWaveTable } from "./groundWaveTable.ts";

const lines: string[] = [];
afterAll(() => console.log(lines.join("\n")));

const FREQUENCIES = [0.13, 0.1388, 0.4, 0.49, 0.518, 1, 1.6, 2.182, 3, 4.125, 5, 6.2, 8.3, 10, 12.3, 16.5, 22, 25.5, 30];

it("lies within 0.02 dB of the field and falls all the way to less than -60 dB(uV/m), every ground", () => {
	let worst = 0;
	let compared = 0;
	for (const ground of Object.values(GROUNDS)) {
		for (const fMHz of FREQUENCIES) {
			const table = groundWaveTable(fMHz, ground);
			const field = groundWaveAt(fMHz, ground);
			let before = Number.POSITIVE_INFINITY;
			for (let distanceKm = 1; distanceKm < table.endKm; distanceKm *= 1.011) {
				const value = table.fieldAt(distanceKm);
				worst = Math.max(worst, Math.abs(value - field(distanceKm)));
				if (!(value < before)) throw new Error(`${fMHz} MHz, ${distanceKm} km: ${value} dB after ${before} dB`);
				before = value;
				compared++;
			}
			expect(table.fieldAt(table.endKm)).toBeLessThan(-60);
		}
	}
	lines.push(`table against field: worst ${worst.toFixed(4)} dB of ${compared}`);
	expect(compared).toBeGreaterThan(80_000);
	expect(worst).toBeLessThan(0.02);
});

it("keeps its ends outside them", () => {
	const { fieldAt, endKm } = groundWaveTable(2, GROUNDS.sea);
	expect(fieldAt(0)).toBe(fieldAt(1));
	expect(fieldAt(0.4)).toBe(fieldAt(1));
	expect(fieldAt(endKm + 1)).toBe(fieldAt(endKm));
	expect(fieldAt(20_000)).toBe(fieldAt(endKm));
});

it("finds the distance of a field: there and back, within 2 m of distance", () => {
	const table = groundWaveTable(2.182, GROUNDS.sea);
	fc.assert(
		fc.property(fc.double({ min: 1, max: 2000, noNaN: true }), (distanceKm) => {
			expect(Math.abs(table.rangeKm(table.fieldAt(distanceKm)) - distanceKm)).toBeLessThan(0.002);
		}),
		{ seed: 3 },
	);
	expect(table.rangeKm(200)).toBe(1);
	expect(table.rangeKm(-200)).toBe(table.endKm);
});
