import { log10 } from "@skipwright/units";
import { expect, it } from "vitest";
import { absolute, add, polar, scaled } from "./complex.ts";
import { GROUNDS } from "./groundConstants.ts";
import { farAttenuationDb, rootsNeeded } from "./groundWaveFar.ts";
import { nearAttenuation } from "./groundWaveNear.ts";
import { residueRoots } from "./groundWaveRoots.ts";
import { diffractionSphere } from "./groundWaveSphere.ts";

/** The worst difference in dB between the two forms at a scaled distance, over every ground from 0.13 to 30 MHz. */
function worstAt(x: number): { readonly worst: number; readonly compared: number } {
	let worst = 0;
	let compared = 0;
	for (const ground of Object.values(GROUNDS)) {
		for (let fMHz = 0.13; fMHz <= 30; fMHz *= 1.3) {
			const { q } = diffractionSphere(fMHz, ground);
			const near = 20 * log10(absolute(nearAttenuation(x, q)));
			worst = Math.max(worst, Math.abs(near - farAttenuationDb(x, q, residueRoots(q, rootsNeeded(x)))));
			compared++;
		}
	}
	return { worst, compared };
}

it.each([
	[0.05, 0.003], // thousands of roots would be needed for less
	[0.12, 0.001],
	[0.25, 0.003], // where the field goes from one to the other
])("meets the residue series at x = %d within %d dB: two expansions of one integral", (x, ceiling) => {
	const { worst, compared } = worstAt(x);
	expect(compared).toBe(168);
	expect(worst).toBeLessThan(ceiling);
});

it("changes from powers of p to powers of 1/p at |p| = 16 without a jump, in size and phase", () => {
	const x = 0.25;
	let compared = 0;
	for (let degrees = -90; degrees <= -45; degrees += 3) {
		const [below, above] = [1 - 1e-9, 1 + 1e-9].map((k) => nearAttenuation(x, polar(Math.sqrt(16 / x) * k, (degrees * Math.PI) / 180)));
		expect(absolute(add(above!, scaled(below!, -1))) / absolute(below!)).toBeLessThan(1e-4);
		compared++;
	}
	expect(compared).toBe(16);
});
