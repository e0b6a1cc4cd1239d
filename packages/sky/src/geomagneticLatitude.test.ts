import { destination, intermediate, trackBetween, vectorOf } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { geomagneticLatDeg, highestGeomagneticLatDeg } from "./geomagneticLatitude.ts";

const at = (latDeg: number, lonDeg: number) => geomagneticLatDeg(vectorOf(position(latDeg, lonDeg)));
const anywhere = fc
	.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
	.map(([lat, lon]) => position(lat, lon));

describe("geomagnetic latitude", () => {
	it("is 90 at 78.5 north 68.2 west and at its antipode, 0 a quarter of the circle from there", () => {
		expect(at(78.5, -68.2)).toBeCloseTo(90, 5);
		expect(at(-78.5, 111.8)).toBeCloseTo(90, 5);
		expect(geomagneticLatDeg(vectorOf(destination(position(78.5, -68.2), 40, (6371 * Math.PI) / 2)))).toBeCloseTo(0, 9);
	});

	it("is within a degree of 47 CFR 73.190's, whose pole lies at 69 west", () => {
		const cfr = (latDeg: number, lonDeg: number) => {
			const [lat, pole, east] = [latDeg, 78.5, lonDeg + 69].map((degrees) => (degrees * Math.PI) / 180) as [number, number, number];
			return (Math.asin(Math.sin(lat) * Math.sin(pole) + Math.cos(lat) * Math.cos(pole) * Math.cos(east)) * 180) / Math.PI;
		};
		for (const [lat, lon] of [
			[40, -75],
			[60, 10],
			[20, -157],
			[65, -147],
		] as const)
			expect(Math.abs(at(lat, lon) - cfr(lat, lon))).toBeLessThan(1);
	});

	it("is at its highest on a track where walking along it finds it", () => {
		fc.assert(
			fc.property(anywhere, anywhere, fc.constantFrom("short" as const, "long" as const), (from, to, way) => {
				const found = highestGeomagneticLatDeg(trackBetween(from, to, way), 0.1, 0.9);
				let walked = 0;
				for (let step = 0; step <= 400; step++) {
					walked = Math.max(walked, geomagneticLatDeg(vectorOf(intermediate(from, to, 0.1 + (0.8 * step) / 400, way))));
				}
				return found >= walked - 1e-6 && found - walked < 0.5;
			}),
			{ seed: 73, numRuns: 200 },
		);
	});
});
