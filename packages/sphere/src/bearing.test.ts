import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { geodesics } from "../truth/readTruth.ts";
import { wrap180 } from "./angle.ts";
import { initialBearingDeg } from "./bearing.ts";

describe("initialBearingDeg", () => {
	it("agrees with geographiclib on the sphere, as closely as a metre of baseline allows", () => {
		const rows = geodesics().filter(({ from, to, sphereKm }) => sphereKm > 0 && !isAntipode(from, to));
		expect(rows.length).toBe(488);
		for (const { from, to, sphereKm, sphereBearingDeg } of rows) {
			const acrossKm = Math.abs(wrap180(initialBearingDeg(from, to) - sphereBearingDeg)) * Math.sin(sphereKm / 6371) * 111;
			expect(acrossKm).toBeLessThan(1e-7);
		}
	});

	it("reads the compass", () => {
		const from = position(10, 179.5);
		const to = (lat: number, lon: number) => initialBearingDeg(from, position(lat, lon));
		expect([to(20, 179.5), to(-20, 179.5), to(90, 0), to(-90, 0)]).toEqual([0, 180, 0, 180]);
		expect(to(10, -179.5)).toBeCloseTo(89.9, 1);
		expect(to(10, 178.5)).toBeCloseTo(270.1, 1);
		expect(initialBearingDeg(position(0, 0), position(0, 90))).toBe(90);
		expect(initialBearingDeg(position(0, 0), position(0, -90))).toBe(270);
	});

	it("is turned about for the long way", () => {
		expect(initialBearingDeg(position(0, 0), position(0, 90), "long")).toBe(270);
		expect(initialBearingDeg(position(0, 0), position(0, -90), "long")).toBe(90);
	});

	it("is a number in [0, 360) from everywhere to everywhere", () => {
		let compared = 0;
		for (let lat1 = -90; lat1 <= 90; lat1 += 15) {
			for (let lat2 = -90; lat2 <= 90; lat2 += 15) {
				for (let lon = -180; lon < 180; lon += 7.5) {
					const bearing = initialBearingDeg(position(lat1, 20), position(lat2, lon));
					expect(bearing >= 0 && bearing < 360).toBe(true);
					compared++;
				}
			}
		}
		expect(compared).toBe(13 * 13 * 48);
	});
});

function isAntipode(a: { latDeg: number; lonDeg: number }, b: { latDeg: number; lonDeg: number }): boolean {
	const polar = Math.abs(a.latDeg) === 90;
	return a.latDeg === -b.latDeg && (polar || Math.abs(Math.abs(a.lonDeg - b.lonDeg) - 180) < 1e-9);
}
