import { expect, test } from "vitest";
import { envelopeErrorRate, orthogonalErrorRate } from "./errorTheory.ts";

test("The textbook's rate: 10.93 dB for 1 in 1000 (closed form)", () => {
	expect(orthogonalErrorRate(10 * Math.log10(2 * Math.log(500)))).toBeCloseTo(1e-3, 12);
});

test("Tones a whole number of turns apart are orthogonal, equal tones tell nothing", () => {
	for (const db of [2, 6, 10, 12]) {
		expect(envelopeErrorRate(db, 2) / orthogonalErrorRate(db)).toBeCloseTo(1, 5);
		expect(Math.abs(envelopeErrorRate(db, 1e-4) - 0.5)).toBeLessThan(1e-3);
	}
});

test("170 Hz at 100 Bd is about a quarter of a decibel worse than orthogonal at 1 in 1000", () => {
	const rate = envelopeErrorRate(11.19, 1.7);
	expect(rate).toBeGreaterThan(orthogonalErrorRate(11.19 - 0.2));
	expect(rate).toBeLessThan(orthogonalErrorRate(11.19 - 0.3) * 1.1);
	expect(Math.abs(rate - 1e-3)).toBeLessThan(1e-4);
});
