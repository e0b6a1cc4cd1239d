import { expect, it } from "vitest";
import { polar } from "./complex.ts";
import { residueRoots } from "./groundWaveRoots.ts";

const COUNT = 40;

it("starts from the zeros of Ai' and Ai (Abramowitz and Stegun, table 10.13: the tenth)", () => {
	const conductor = residueRoots({ re: 0, im: 0 }, 10);
	const insulator = residueRoots({ re: 1e9, im: -1e9 }, 10);
	expect(Math.sqrt(conductor.re[9]! * conductor.re[9]! + conductor.im[9]! * conductor.im[9]!)).toBeCloseTo(12.3847883718, 7);
	expect(Math.sqrt(insulator.re[9]! * insulator.re[9]! + insulator.im[9]! * insulator.im[9]!)).toBeCloseTo(12.8287767529, 7);
});

it("gives the same roots from either side where the two ways of carrying them meet", () => {
	let compared = 0;
	for (let degrees = -90; degrees <= -45; degrees += 5) {
		const within = residueRoots(polar(1 - 1e-9, (degrees * Math.PI) / 180), COUNT);
		const beyond = residueRoots(polar(1 + 1e-9, (degrees * Math.PI) / 180), COUNT);
		for (let s = 0; s < COUNT; s++) {
			expect(Math.abs(within.re[s]! - beyond.re[s]!)).toBeLessThan(2e-5);
			expect(Math.abs(within.im[s]! - beyond.im[s]!)).toBeLessThan(2e-5);
			compared++;
		}
	}
	expect(compared).toBe(400);
});
