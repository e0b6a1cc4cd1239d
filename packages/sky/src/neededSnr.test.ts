import { describe, expect, it } from "vitest";
import { GRADES, type Grade, neededSnr } from "./neededSnr.ts";

// What a marine set sends and receives: 47 CFR 80.205's classes.
const KNOWN = ["J3E", "H3E", "R3E", "A3E", "A1A", "J2A", "F1B", "J2B", "F3C", "J3C", "F1C", "J2C"];

describe("neededSnr", () => {
	// ITU-R F.339 from memory, each within 2 dB.
	it.each<[string, Grade, 50 | 100, number, number, number]>([
		["J3E", "just-usable", 100, 3000, 48, 13],
		["J3E", "marginal", 100, 3000, 64, 29],
		["J3E", "good", 100, 3000, 72, 37],
		["A1A", "just-usable", 100, 500, 38, 11],
		["F1B", "marginal", 100, 300, 52, 27],
		["F1B", "just-usable", 50, 250, 53, 29],
		["F1B", "marginal", 50, 250, 63, 39],
		["F1B", "good", 50, 250, 74, 50],
		["F3C", "just-usable", 100, 1100, 58, 28],
		["F3C", "marginal", 100, 1100, 65, 35],
	])("%s, %s, %d Bd: ITU-R F.339's row by sky wave", (emission, grade, baud, bandwidthHz, snr0DbHz, inBandDb) => {
		const need = neededSnr(emission, grade, { baud });
		expect(need).toMatchObject({ bandwidthHz, snr0DbHz, belowRatedDb: 0, basis: ["requiredSnr"] });
		expect(Math.abs((need?.snrDb ?? Number.NaN) - inBandDb)).toBeLessThan(0.7);
	});

	it("asks 9 dB in 3 kHz of the mean power of speech for safety (IMO A.801(19), from memory)", () => {
		const need = neededSnr("J3E", "safety");
		expect(need).toMatchObject({ bandwidthHz: 3000, power: "mean", belowRatedDb: 8, basis: ["safetySpeech"] });
		expect(need?.snrDb).toBeCloseTo(9, 10);
	});

	it("asks 15 dB in 6 kHz of two sidebands (engineering handbook)", () => {
		const need = neededSnr("A3E", "just-usable");
		expect(need).toMatchObject({ bandwidthHz: 6000, power: "carrier", belowRatedDb: 0, basis: [] });
		expect(need?.snrDb).toBeCloseTo(15, 10);
		expect(neededSnr("A3E", "marginal")?.basis).toEqual(["requiredSnr"]);
	});

	it("asks 8 dB in 500 Hz of NAVTEX by ground wave (ITU-R M.1467-1)", () => {
		const need = neededSnr("F1B", "safety", { fading: false });
		expect(need?.snr0DbHz).toBeCloseTo(8 + 26.99, 2);
		expect(need?.basis).toEqual([]);
	});

	it("asks no more of a steady signal than of a fading one, and more from grade to grade", () => {
		let compared = 0;
		for (const emission of KNOWN) {
			for (const baud of [50, 100] as const) {
				for (const fading of [true, false]) {
					const of = (grade: Grade): number => neededSnr(emission, grade, { fading, baud })!.snr0DbHz;
					expect(of("marginal")).toBeGreaterThanOrEqual(of("just-usable"));
					expect(of("good")).toBeGreaterThanOrEqual(of("marginal"));
					for (const grade of GRADES) {
						const steady = neededSnr(emission, grade, { fading: false, baud })!;
						expect(steady.snr0DbHz).toBeLessThanOrEqual(neededSnr(emission, grade, { baud })!.snr0DbHz);
						expect(steady.snrDb).toBeCloseTo(steady.snr0DbHz - 10 * Math.log10(steady.bandwidthHz), 10);
						compared++;
					}
				}
			}
		}
		expect(compared).toBe(KNOWN.length * 2 * 2 * GRADES.length);
	});

	it("asks more peak power with a carrier than without", () => {
		for (const grade of GRADES) {
			const peak = (emission: string): number => {
				const { snr0DbHz, belowRatedDb } = neededSnr(emission, grade)!;
				return snr0DbHz + belowRatedDb;
			};
			expect(peak("H3E") - peak("J3E")).toBeCloseTo(6, 10);
			expect(peak("R3E") - peak("J3E")).toBeCloseTo(1, 10);
		}
	});

	it("says it doesn't know an emission", () => {
		expect(neededSnr("J2D", "good")).toBeNull();
		expect(neededSnr("", "good")).toBeNull();
	});
});
