import { distanceKm } from "@skipwright/sphere";
import { isoDate, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { utcTime } from "./utcTime.ts";
import { stagesOf, type Voyage, type VoyagePoint } from "./voyage.ts";
import { voyageSamples } from "./voyageSamples.ts";

function point(name: string | null, lat: number, lon: number, from: string, to = from): VoyagePoint {
	return { name, position: position(lat, lon), arriveMs: utcTime(from), departMs: utcTime(to) };
}

const VOYAGE: Voyage = {
	points: [
		point("Cape Town", -33.9, 18.43, "2027-02-01", "2027-02-05"),
		point(null, -25, 8, "2027-02-12"),
		point("Jamestown", -15.92, -5.72, "2027-02-19", "2027-02-23"),
		point("Georgetown", -7.92, -14.41, "2027-03-01"),
	],
};

describe("stagesOf", () => {
	it("names stays and legs by the named points; an unnamed turn does not end a leg", () => {
		expect(stagesOf(VOYAGE).map(({ name, points }) => [name, points.length])).toEqual([
			["at Cape Town", 1],
			["Cape Town to Jamestown", 3],
			["at Jamestown", 1],
			["Jamestown to Georgetown", 2],
		]);
	});

	it("names an unnamed end by its position", () => {
		const two = { points: [point(null, 10, -20, "2027-02-01"), point(null, 12, -20, "2027-02-03")] };
		expect(stagesOf(two)[0]?.name).toBe("10°00′N 020°00′W to 12°00′N 020°00′W");
	});
});

describe("voyageSamples", () => {
	it("puts the ship half way at half time, on the great circle", () => {
		// 90 degrees along the equator: the middle is at 45 degrees
		const voyage = { points: [point("A", 0, 0, "2027-02-01T00:00Z"), point("B", 0, 90, "2027-02-03T00:00Z")] };
		const [only] = voyageSamples(voyage, 10);
		expect(only?.position.lonDeg).toBeCloseTo(45, 9);
		expect(only?.position.latDeg).toBeCloseTo(0, 9);
		expect(only).toMatchObject({ date: isoDate("2027-02-02"), days: 2, stage: "A to B" });
	});

	it("goes through the turns of a leg", () => {
		const samples = voyageSamples(VOYAGE, 1).filter(({ stage }) => stage === "Cape Town to Jamestown");
		expect(samples).toHaveLength(14);
		const nearTurn = samples.filter(({ position: at }) => distanceKm(at, position(-25, 8)) < 120);
		expect(nearTurn.map(({ date }) => date)).toEqual(["2027-02-12", "2027-02-12"].slice(0, nearTurn.length));
		expect(nearTurn.length).toBeGreaterThan(0);
	});

	it("gives a voyage of one moment one sample of one day", () => {
		expect(voyageSamples({ points: [point("Horta", 38.53, -28.63, "2027-05-01")] }, 2)).toEqual([
			expect.objectContaining({ days: 1, stage: "at Horta", date: "2027-05-01" }),
		]);
	});

	it("covers the whole time in order, whatever the step, and never leaves the way", () => {
		const turn = fc.record({
			lat: fc.integer({ min: -70, max: 70 }),
			lon: fc.integer({ min: -179, max: 179 }),
			gap: fc.integer({ min: 0, max: 9 }),
			stay: fc.integer({ min: 0, max: 9 }),
		});
		let looked = 0;
		fc.assert(
			fc.property(fc.array(turn, { minLength: 1, maxLength: 6 }), fc.double({ min: 0.2, max: 9, noNaN: true }), (turns, step) => {
				let ms = utcTime("2027-01-01");
				const points = turns.map(({ lat, lon, gap, stay }, i) => {
					const arriveMs = ms + gap * 86_400_000;
					ms = arriveMs + stay * 86_400_000;
					return { name: i % 2 === 0 ? `P${i}` : null, position: position(lat, lon), arriveMs, departMs: ms };
				});
				const samples = voyageSamples({ points }, step);
				const total = (ms - (points[0]?.arriveMs ?? 0)) / 86_400_000;
				expect(samples.reduce((sum, { days }) => sum + days, 0)).toBeCloseTo(total === 0 ? 1 : total, 6);
				for (const [i, sample] of samples.entries()) {
					expect(sample.days).toBeLessThanOrEqual(step + 1e-9 + (total === 0 ? 1 : 0));
					expect(sample.atMs).toBeGreaterThanOrEqual(samples[i - 1]?.atMs ?? Number.NEGATIVE_INFINITY);
					looked++;
				}
			}),
			{ seed: 20261124, numRuns: 300 },
		);
		expect(looked).toBeGreaterThan(1_000);
	});

	it("refuses a step that goes nowhere", () => {
		expect(() => voyageSamples(VOYAGE, 0)).toThrow(RangeError);
	});
});
