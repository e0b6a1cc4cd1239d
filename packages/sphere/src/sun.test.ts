import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { sunFixes } from "../truth/readTruth.ts";
import { wrap180 } from "./angle.ts";
import { subsolarPoint } from "./subsolarPoint.ts";
import { hourAngleDeg, solarZenithDeg } from "./sun.ts";

/** Degrees. Ceilings of the closed form against PyEphem 4.2.1 (VSOP87), 1990 to 2050; the formula promises 0.01. */
const CEILINGS = { declination: { max: 0.006, mean: 0.002 }, longitude: { max: 0.01, mean: 0.003 }, zenith: { max: 0.01, mean: 0.003 } };

describe("the sun against PyEphem 4.2.1 (truth/sun.csv)", () => {
	const rows = sunFixes();
	const errorsOf = {
		declination: rows.map((row) => Math.abs(subsolarPoint(row.utcMs).latDeg - row.declinationDeg)),
		longitude: rows.map((row) => Math.abs(wrap180(subsolarPoint(row.utcMs).lonDeg - row.subsolarLonDeg))),
		zenith: rows.map((row) => Math.abs(solarZenithDeg(row.where, subsolarPoint(row.utcMs)) - row.zenithDeg)),
	};

	for (const [name, { max, mean }] of Object.entries(CEILINGS)) {
		it(`keeps its ${name} within ${max} degree, ${mean} on average`, () => {
			const errors = errorsOf[name as keyof typeof errorsOf];
			expect(errors.length).toBe(400);
			expect(Math.max(...errors)).toBeLessThan(max);
			expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(mean);
		});
	}
});

describe("solarZenithDeg", () => {
	it("is the almanac's cos chi = sin lat sin dec + cos lat cos dec cos(hour angle)", () => {
		const radians = (degrees: number) => (degrees * Math.PI) / 180;
		let compared = 0;
		for (let lat = -90; lat <= 90; lat += 10) {
			for (let lon = -180; lon < 180; lon += 10) {
				const where = position(lat, lon);
				const sun = subsolarPoint(Date.UTC(2027, 3, 9, 7, 35));
				const [a, d, h] = [radians(lat), radians(sun.latDeg), radians(hourAngleDeg(where, sun))] as const;
				const cosChi = Math.sin(a) * Math.sin(d) + Math.cos(a) * Math.cos(d) * Math.cos(h);
				expect(Math.cos(radians(solarZenithDeg(where, sun)))).toBeCloseTo(cosChi, 12);
				compared++;
			}
		}
		expect(compared).toBe(19 * 36);
	});

	it("is 0 under the sun, 180 at the antipode and 90 a quarter turn away", () => {
		const sun = subsolarPoint(Date.UTC(2027, 0, 1, 9));
		expect(solarZenithDeg(sun, sun)).toBe(0);
		expect(solarZenithDeg(position(-sun.latDeg, sun.lonDeg + 180), sun)).toBeCloseTo(180, 9);
		expect(solarZenithDeg(position(0, sun.lonDeg + 90), sun)).toBeCloseTo(90, 9);
	});
});

describe("hourAngleDeg", () => {
	it("is negative before local noon and positive after it, across 180 degrees too", () => {
		const sun = { latDeg: 0, lonDeg: 170 };
		expect([100, 170, -170, -10].map((lon) => hourAngleDeg(position(0, lon), sun))).toEqual([-70, 0, 20, -180]);
	});
});
