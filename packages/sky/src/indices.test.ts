import { expect, it } from "vitest";
import { eRows } from "../truth/readMaps.ts";
import { phi12 } from "./indices.ts";

it("phi12 is the smoothed flux of the check rows (ITU-R P.371, as PyIRI 0.1.6 has it)", () => {
	const rows = eRows();
	expect(rows.length).toBe(96);
	for (const { r12, flux } of rows) expect(Math.abs(phi12(r12) - flux)).toBeLessThanOrEqual(0.0051); // two decimals
	expect(phi12(0)).toBe(63.7);
	expect(phi12(100)).toBeCloseTo(145.4, 9);
});
