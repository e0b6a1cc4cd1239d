import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { geodesics } from "../truth/readTruth.ts";
import { destination } from "./destination.ts";
import { distanceKm } from "./distance.ts";
import { CIRCUMFERENCE_KM } from "./earth.ts";

const PROPERTY = { seed: 1852, numRuns: 2_000 };
const anywhere = fc
	.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
	.map(([lat, lon]) => position(lat, lon));

describe("destination", () => {
	it("reaches the far end of geographiclib's geodesics on the sphere to a millimetre", () => {
		const rows = geodesics();
		expect(rows.length).toBe(491);
		for (const { from, to, sphereKm, sphereBearingDeg } of rows) {
			expect(distanceKm(destination(from, sphereBearingDeg, sphereKm), to)).toBeLessThan(1e-6);
		}
	});

	it("goes as far as told, back again by a negative distance, and home by the whole circle", () => {
		fc.assert(
			fc.property(
				anywhere,
				fc.double({ min: 0, max: 360, noNaN: true }),
				fc.double({ min: 0, max: 20_015, noNaN: true }),
				(from, bearing, km) => {
					const there = destination(from, bearing, km);
					expect(distanceKm(from, there)).toBeCloseTo(km, 8);
					expect(distanceKm(destination(from, bearing + 180, -km), there)).toBeLessThan(1e-8);
					expect(distanceKm(destination(from, bearing, CIRCUMFERENCE_KM), from)).toBeLessThan(1e-8);
				},
			),
			PROPERTY,
		);
	});

	it("passes over a pole and across 180 degrees", () => {
		const quarter = CIRCUMFERENCE_KM / 4;
		const overPole = destination(position(45, 30), 0, quarter);
		expect([overPole.latDeg, overPole.lonDeg]).toEqual([expect.closeTo(45, 9), expect.closeTo(-150, 9)]);
		const across = destination(position(0, 170), 90, (20 / 360) * CIRCUMFERENCE_KM);
		expect([across.latDeg, across.lonDeg]).toEqual([expect.closeTo(0, 9), expect.closeTo(-170, 9)]);
	});
});
