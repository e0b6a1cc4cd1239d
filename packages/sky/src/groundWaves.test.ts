import { expect, it } from "vitest";
import { GROUNDS } from "./groundConstants.ts";
import { GroundWaves } from "./groundWaves.ts";
import { groundWaveTable } from "./groundWaveTable.ts";

it("answers as each frequency's own table, up to its end and no further", () => {
	const waves = new GroundWaves(GROUNDS.sea);
	let reached = 0;
	let compared = 0;
	let endBefore = Number.POSITIVE_INFINITY;
	for (let fMHz = 0.4; fMHz <= 30; fMHz *= 1.03) {
		const { endKm, fieldAt } = groundWaveTable(fMHz, GROUNDS.sea);
		expect(endKm).toBeLessThanOrEqual(endBefore); // what lets an octave's end stand for all above it
		endBefore = endKm;
		for (const km of [0, 3, 400, endKm - 1, endKm, endKm + 1, 4000, 12_000]) {
			const found = waves.within(fMHz, km);
			expect(found === null).toBe(km >= endKm);
			if (found !== null) {
				expect(found.fieldAt(km)).toBe(fieldAt(km));
				reached++;
			}
			compared++;
		}
	}
	expect(compared).toBe(147 * 8);
	expect(reached).toBeGreaterThan(147 * 4 - 1);
});
