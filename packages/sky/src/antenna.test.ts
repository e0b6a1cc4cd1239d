import { describe, expect, it } from "vitest";
import { coastAntenna } from "./antennaCoast.ts";
import { shortVerticalDbi } from "./antennaShortVertical.ts";
import { vesselAntenna } from "./antennaVessel.ts";

describe("a short vertical over sea", () => {
	it("has 4.8 dBi towards the horizon, 6 dB less at 60 degrees (textbook: cos squared)", () => {
		expect(shortVerticalDbi(0)).toBeCloseTo(4.77, 2);
		expect(shortVerticalDbi(0) - shortVerticalDbi(60)).toBeCloseTo(6.02, 2);
	});

	it("falls towards the zenith and keeps 12 dB under the horizon's there (own)", () => {
		let before = shortVerticalDbi(0);
		for (let degrees = 1; degrees <= 90; degrees++) {
			expect(shortVerticalDbi(degrees)).toBeLessThanOrEqual(before);
			before = shortVerticalDbi(degrees);
		}
		expect(shortVerticalDbi(90)).toBeCloseTo(shortVerticalDbi(0) - 12, 10);
	});
});

describe("vesselAntenna (own model)", () => {
	it.each([
		["whip", 7],
		["whip", 8],
		["backstay", 9],
		["backstay", 12],
		["backstay", 14],
	] as const)("a %s of %d m has the 10 to 25 %% of handbooks at 2182 kHz (from memory)", (kind, lengthM) => {
		const efficiency = vesselAntenna({ lengthM, kind }).efficiency(2.182);
		expect(efficiency).toBeGreaterThan(0.1);
		expect(efficiency).toBeLessThan(0.25);
	});

	it("7 m at 2.182 MHz stand on 10 ohms in all (worked example of trade practice)", () => {
		const waves = (7 * 2.182) / 299.792458;
		const radiation = 40 * Math.PI * Math.PI * waves * waves;
		expect(radiation / vesselAntenna({ lengthM: 7, kind: "whip" }).efficiency(2.182)).toBeCloseTo(10, 0);
	});

	it("gains with length and frequency, between nothing and all", () => {
		let compared = 0;
		for (let lengthM = 3; lengthM < 30; lengthM++) {
			const antenna = vesselAntenna({ lengthM });
			const longer = vesselAntenna({ lengthM: lengthM + 1 });
			let before = 0;
			for (let fMHz = 0.4; fMHz <= 30; fMHz *= 1.05) {
				const efficiency = antenna.efficiency(fMHz);
				expect(efficiency).toBeGreaterThanOrEqual(before);
				expect(efficiency).toBeLessThan(1);
				expect(longer.efficiency(fMHz)).toBeGreaterThanOrEqual(efficiency);
				expect(antenna.gainDb(fMHz, 10)).toBeCloseTo(antenna.directivityDb(10) + 10 * Math.log10(efficiency), 9);
				before = efficiency;
				compared++;
			}
		}
		expect(compared).toBe(27 * 89);
	});

	it("refuses no length and a mast's", () => {
		expect(() => vesselAntenna({ lengthM: 0 })).toThrow(/aerial of 0 m: expected 1 to 60 m/);
		expect(() => vesselAntenna({ lengthM: 200 })).toThrow(RangeError);
	});
});

it("a coast station's aerial loses more on MF than on HF (own)", () => {
	const antenna = coastAntenna();
	expect(antenna.gainDb(2.182, 0)).toBeCloseTo(4.77 - 1.55, 2);
	expect(antenna.gainDb(8, 0)).toBeCloseTo(4.77 - 0.46, 2);
});
