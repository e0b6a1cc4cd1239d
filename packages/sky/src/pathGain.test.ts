import { describe, expect, it } from "vitest";
import { ISOTROPIC, pathGain } from "./pathGain.ts";

describe("both aerials' gain", () => {
	it("is read from the table within 0.02 dB of a short vertical's and a horizontal's pattern", () => {
		const patterns = [
			(elevationDeg: number) => 4.77 + 20 * Math.log10(Math.max(0.25, Math.cos((elevationDeg * Math.PI) / 180))),
			(elevationDeg: number) => 8 - elevationDeg / 20,
		];
		let worst = 0;
		let compared = 0;
		for (const pattern of patterns) {
			const gain = pathGain(pattern);
			for (let elevationDeg = 0; elevationDeg <= 90; elevationDeg += 0.5) {
				const found = 10 * Math.log10(gain.at(Math.sin((elevationDeg * Math.PI) / 180)));
				if (elevationDeg < 70) worst = Math.max(worst, Math.abs(found - pattern(elevationDeg)));
				compared++;
			}
		}
		expect(compared).toBe(362);
		expect(worst).toBeLessThan(0.02);
	});

	it("takes the best of 0 to 8 degrees for long paths", () => {
		expect(10 * Math.log10(pathGain((elevationDeg) => elevationDeg).low)).toBeCloseTo(8, 12);
		expect(10 * Math.log10(pathGain((elevationDeg) => -elevationDeg).low)).toBeCloseTo(0, 12);
	});

	it("is 1 for isotropic aerials, and at the horizon for rays under it", () => {
		expect([ISOTROPIC.at(0.3), ISOTROPIC.low]).toEqual([1, 1]);
		const gain = pathGain((elevationDeg) => elevationDeg / 10);
		expect(gain.at(-0.1)).toBe(gain.at(0));
		expect(gain.at(1)).toBeCloseTo(10 ** 0.9, 6);
	});
});
