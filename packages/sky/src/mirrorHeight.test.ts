import { describe, expect, it } from "vitest";
import { f2Mirror, mirrorKm, simpleMirrorKm } from "./mirrorHeight.ts";

const apart = f2Mirror({ foF2MHz: 8, m3000: 3, foEMHz: 1, sunspots: 50 });
const close = f2Mirror({ foF2MHz: 8, m3000: 3, foEMHz: 3, sunspots: 50 });
/** km across a join. */
const step = (mirror: typeof apart, hopKm: number, fMHz: number) =>
	Math.abs(mirrorKm(mirror, hopKm, fMHz * (1 + 1e-9)) - mirrorKm(mirror, hopKm, fMHz * (1 - 1e-9)));

describe("the F2 layer's mirror, ITU-R P.533 section 5.1", () => {
	it("joins its polynomials at f/foF2 = 1.71 within 1.5 km, and at 3.7 within 5 km", () => {
		const worst = { at171: 0, at370: 0 };
		for (const m3000 of [2.4, 3, 3.6]) {
			for (const hopKm of [200, 1000, 2000, 3000, 4000]) {
				const mirror = f2Mirror({ foF2MHz: 8, m3000, foEMHz: 1, sunspots: 50 });
				worst.at171 = Math.max(worst.at171, step(mirror, hopKm, 8 * 1.71));
				worst.at370 = Math.max(worst.at370, step(mirror, hopKm, 8 * 3.7));
			}
		}
		console.log("km of step in the mirror at f/foF2 = 1.71 and 3.7:", worst);
		expect(worst.at171).toBeGreaterThan(0);
		expect(worst.at171).toBeLessThan(1.5);
		expect(worst.at370).toBeLessThan(5);
	});

	it("under foF2 comes down to its lower level with the length of the hop, and stays there without a step", () => {
		const level = mirrorKm(apart, 4000, 5);
		const cornerKm = (0.65 * (5 / 8) * (apart.h + 140)) / 0.115;
		expect(Math.abs(mirrorKm(apart, cornerKm - 0.01, 5) - level)).toBeLessThan(0.5);
		expect(mirrorKm(apart, cornerKm + 0.01, 5)).toBe(level);
		expect(mirrorKm(apart, 100, 5)).toBeGreaterThan(level + 20);
	});

	it("does not change with frequency where the layers stand close, and is straight over the hop", () => {
		const heights = [2, 8, 20].map((fMHz) => mirrorKm(close, 1500, fMHz));
		expect(new Set(heights).size).toBe(1);
		expect(mirrorKm(close, 2000, 8) - mirrorKm(close, 1500, 8)).toBeCloseTo(mirrorKm(close, 1500, 8) - mirrorKm(close, 1000, 8), 9);
	});

	it("is never over 800 km, nor the simple one over 500", () => {
		expect(simpleMirrorKm(1.8)).toBe(500);
		expect(simpleMirrorKm(3.2)).toBeCloseTo(289.625, 9);
		let highest = 0;
		for (const fMHz of [1, 4, 8, 16, 30]) {
			const mirror = f2Mirror({ foF2MHz: 8, m3000: 1.8, foEMHz: 0.3, sunspots: 0 });
			for (const hopKm of [1, 500, 2000, 4000]) highest = Math.max(highest, mirrorKm(mirror, hopKm, fMHz));
		}
		expect(highest).toBe(800);
	});
});
