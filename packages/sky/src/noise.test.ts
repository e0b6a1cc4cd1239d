import fc from "fast-check";
import { afterAll, describe, expect, it } from "vitest";
import { MEMORY } from "./fromMemory.ts";
import { noiseAt } from "./noise.ts";
import { atmosphericDay, atmosphericHour, noiseAtFrequency } from "./noiseAtFrequency.ts";
import { atmosphericAt1MHz } from "./noiseAtmospheric.ts";
import { combineNoise } from "./noiseCombined.ts";
import { noiseFieldDb } from "./noiseField.ts";
import { galacticNoise } from "./noiseGalactic.ts";
import { type ManMadeClass, manMadeNoise } from "./noiseManMade.ts";
import { receiverNoiseDb } from "./noiseReceiver.ts";
import { skyRatioUpperDb, WIDEST_UPPER_DB } from "./reliabilitySpread.ts";

const CLASSES = Object.keys(MEMORY.manMadeNoise.value) as ManMadeClass[];

const lines: string[] = [];
afterAll(() => console.log(lines.join("\n")));

const question = fc.record({
	month: fc.integer({ min: 1, max: 12 }),
	utcHour: fc.double({ min: 0, max: 24, noNaN: true }),
	position: fc.record({
		latDeg: fc.double({ min: -90, max: 90, noNaN: true }),
		lonDeg: fc.double({ min: -180, max: 179.999, noNaN: true }),
	}),
	fMHz: fc.double({ min: 0.4, max: 30, noNaN: true }),
	manMade: fc.constantFrom(...CLASSES),
	foF2MHz: fc.double({ min: 1, max: 18, noNaN: true }),
});

describe("sources of noise (ITU-R P.372, from memory)", () => {
	it("man-made at a residential place: 64 dB at 2 MHz, 47 dB at 8 MHz; quieter by class", () => {
		expect(manMadeNoise("residential", 2).medianDb).toBeCloseTo(64.2, 1);
		expect(manMadeNoise("residential", 8).medianDb).toBeCloseTo(47.5, 1);
		const medians = CLASSES.map((manMade) => manMadeNoise(manMade, 3).medianDb);
		expect(medians).toHaveLength(4);
		expect(medians).toEqual(medians.toSorted((a, b) => b - a));
	});

	it("galactic: 52 dB at 1 MHz, 29 at 10 MHz", () => {
		expect(galacticNoise(1).medianDb).toBe(52);
		expect(galacticNoise(10).medianDb).toBeCloseTo(29, 10);
	});

	it("noise field of kT0b at 1 MHz in 1 Hz is -95.5 dB(uV/m): the aperture of a short monopole over a perfect plane gives the same", () => {
		const kT0 = 290 * 1.380649e-23;
		const wavelengthM = 299.792458;
		const fieldVPerM = Math.sqrt((640 * Math.PI * Math.PI * kT0) / (wavelengthM * wavelengthM)); // E^2 lambda^2 / (640 pi^2) = kT0
		const derivedDb = 20 * Math.log10(fieldVPerM * 1e6);
		expect(Math.abs(noiseFieldDb({ faDb: 0, fMHz: 1, bandwidthHz: 1 }) - derivedDb)).toBeLessThan(0.02);
	});

	it("the receiver: 15 dB of its own before a perfect aerial, and the aerial's loss on top", () => {
		expect(receiverNoiseDb(1)).toBeCloseTo(14.86, 2);
		expect(receiverNoiseDb(0.1)).toBeCloseTo(24.99, 2);
	});
});

describe("noiseAt", () => {
	it("lets the ship's own noise govern at 8 MHz but on tropical nights, and storms at 2 MHz on tropical and summer nights (own model)", () => {
		const governs = (month: number, latDeg: number, utcHour: number, fMHz: number) => {
			const { parts } = noiseAt({ month, utcHour, position: { latDeg, lonDeg: 0 }, fMHz, manMade: "residential", foF2MHz: 20 });
			return parts.atmosphericDb > parts.manMadeDb ? "storms" : "ship";
		};
		expect(governs(1, 50, 0, 8)).toBe("ship");
		expect(governs(7, 50, 0, 8)).toBe("ship");
		expect(governs(4, 0, 12, 8)).toBe("ship");
		expect(governs(4, 0, 0, 8)).toBe("storms");
		expect(governs(4, 0, 0, 2)).toBe("storms");
		expect(governs(7, 40, 0, 2)).toBe("storms");
		expect(governs(1, 50, 12, 2)).toBe("ship");
	});

	it("hears the galaxy above the critical frequency only", () => {
		const base = { month: 1, utcHour: 12, position: { latDeg: 50, lonDeg: 0 }, fMHz: 12, manMade: "quietRural" } as const;
		const open = noiseAt({ ...base, foF2MHz: 8 });
		const shut = noiseAt({ ...base, foF2MHz: 13 });
		expect(open.parts.galacticDb).toBeCloseTo(27.2, 1);
		expect(open.basis).toContain("galacticNoise");
		expect(shut.parts.galacticDb).toBeNull();
		expect(shut.basis).not.toContain("galacticNoise");
		expect(open.medianDb).toBeGreaterThan(shut.medianDb + 1);
	});

	it("names what moved it", () => {
		const day = noiseAt({ month: 1, utcHour: 12, position: { latDeg: 50, lonDeg: 0 }, fMHz: 8, manMade: "city", foF2MHz: 20 });
		expect(day.basis).toEqual(["manMadeNoise", "noiseCombination"]);
		const night = noiseAt({ month: 4, utcHour: 0, position: { latDeg: 0, lonDeg: 0 }, fMHz: 2, manMade: "quietRural", foF2MHz: 20 });
		expect(night.basis).toEqual(["atmosphericLevels", "atmosphericByFrequency", "noiseCombination"]);
	});

	it("gives finite medians and positive deciles anywhere, any time: the sum of its sources", () => {
		let compared = 0;
		fc.assert(
			fc.property(question, fc.option(fc.double({ min: 0.01, max: 1, noNaN: true })), (asked, efficiency) => {
				const receiver = efficiency === null ? null : { medianDb: receiverNoiseDb(efficiency), upperDecileDb: 0, lowerDecileDb: 0 };
				const found = noiseAt({ ...asked, receiverDb: receiver?.medianDb ?? null });
				const { upperDecileDb, lowerDecileDb } = atmosphericHour(asked);
				const sources = [
					manMadeNoise(asked.manMade, asked.fMHz),
					{ medianDb: found.parts.atmosphericDb, upperDecileDb, lowerDecileDb },
					...(asked.fMHz > asked.foF2MHz ? [galacticNoise(asked.fMHz)] : []),
					...(receiver === null ? [] : [receiver]),
				];
				const sum = combineNoise(sources);
				expect(found.medianDb).toBeCloseTo(sum.medianDb, 9);
				expect(found.upperDecileDb).toBeCloseTo(sum.upperDecileDb, 9);
				expect(found.lowerDecileDb).toBeCloseTo(sum.lowerDecileDb, 9);
				expect(found.upperDecileDb).toBeGreaterThan(0);
				expect(found.lowerDecileDb).toBeGreaterThan(0);
				expect(found.medianDb).toBeGreaterThanOrEqual(noiseAtFrequency(asked).leastDb(atmosphericHour(asked)) - 1e-9);
				expect(skyRatioUpperDb(1.4, "below60", found.lowerDecileDb)).toBeLessThanOrEqual(WIDEST_UPPER_DB + 1e-9); // the widest column
				compared++;
			}),
			{ seed: 3, numRuns: 500 },
		);
		expect(compared).toBe(500);
	});

	it("gives the same hour by hour and a day at once", () => {
		const where = { month: 7, position: { latDeg: -62, lonDeg: 171 } };
		const day = atmosphericDay(where);
		expect(day).toHaveLength(24);
		for (const [utcHour, hour] of day.entries()) expect(hour).toEqual(atmosphericHour({ ...where, utcHour }));
	});

	it("takes the law of night by night, of day by day", () => {
		const position = { latDeg: 20, lonDeg: 0 };
		const at = (utcHour: number): number =>
			noiseAtFrequency({ fMHz: 10, manMade: "rural" }).atmosphericDb(atmosphericHour({ month: 4, utcHour, position }));
		expect(at(2)).toBeCloseTo(34 + 0.33 * (atmosphericAt1MHz({ month: 4, utcHour: 2, position }) - 60), 9);
		expect(at(12)).toBeCloseTo(30 + 0.2 * (atmosphericAt1MHz({ month: 4, utcHour: 12, position }) - 40), 9);
	});

	it("doesn't jump in local time at any frequency", () => {
		let largest = 0;
		let compared = 0;
		for (const fMHz of [0.518, 2, 8, 16]) {
			for (let minute = 0; minute < 1440; minute++) {
				const at = (utcHour: number) =>
					noiseAt({ month: 7, utcHour, position: { latDeg: 30, lonDeg: 20 }, fMHz, manMade: "quietRural", foF2MHz: 9 });
				largest = Math.max(largest, Math.abs(at((minute + 1) / 60).medianDb - at(minute / 60).medianDb));
				compared++;
			}
		}
		lines.push(`noise from minute to minute: at most ${largest.toFixed(3)} dB of ${compared}`);
		expect(compared).toBe(4 * 1440);
		expect(largest).toBeLessThan(0.2);
	});

	it("refuses month 13 and hour 25", () => {
		const base = { month: 1, utcHour: 0, position: { latDeg: 0, lonDeg: 0 }, fMHz: 2, manMade: "rural", foF2MHz: 5 } as const;
		expect(() => noiseAt({ ...base, month: 13 })).toThrow(/month 13: expected 1 to 12/);
		expect(() => noiseAt({ ...base, utcHour: 25 })).toThrow(/hour 25: expected 0 to 24/);
	});
});
