import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { geodesics } from "../truth/readTruth.ts";
import { distanceKm } from "./distance.ts";
import { CIRCUMFERENCE_KM, EARTH_RADIUS_KM, NAUTICAL_MILE_KM } from "./earth.ts";

const PROPERTY = { seed: 6371, numRuns: 2_000 };
const degrees = (limit: number) => fc.double({ min: -limit, max: limit, noNaN: true });
const anywhere = fc.tuple(degrees(90), degrees(180)).map(([lat, lon]) => position(lat, lon));

/** Ceilings. On the sphere rounding alone is left; one degree of meridian at the equator, 1 - (1 - e^2) a / R0, gives the other. */
const SPHERE_KM = 1e-10;
const FLATTENING = 0.005614;

describe("distanceKm", () => {
	it("agrees with geographiclib on the sphere to a ten-thousandth of a millimetre, metres apart and at the antipodes", () => {
		const rows = geodesics();
		expect(rows.length).toBe(491);
		const worst = Math.max(...rows.map(({ from, to, sphereKm }) => Math.abs(distanceKm(from, to) - sphereKm)));
		expect(worst).toBeLessThan(SPHERE_KM);
	});

	it("stays within 0.56 % of geographiclib on WGS 84", () => {
		const rows = geodesics().filter(({ wgs84Km }) => wgs84Km > 0);
		expect(rows.length).toBe(490);
		const errors = rows.map(({ from, to, wgs84Km }) => Math.abs(distanceKm(from, to) / wgs84Km - 1));
		expect(Math.max(...errors)).toBeLessThan(FLATTENING);
		expect(errors.reduce((sum, error) => sum + error, 0) / errors.length).toBeLessThan(0.0025);
	});

	it("is a quarter of the circumference from the pole to the equator and a half between the poles", () => {
		const quarter = (Math.PI / 2) * EARTH_RADIUS_KM;
		expect(CIRCUMFERENCE_KM).toBe(4 * quarter);
		expect(distanceKm(position(90, 0), position(0, 77))).toBe(quarter);
		expect(distanceKm(position(0, -100), position(0, -10))).toBeCloseTo(quarter, 10);
		expect(distanceKm(position(90, 13), position(-90, 120))).toBe(2 * quarter);
		expect(distanceKm(position(0, 0), position(0, 180))).toBe(2 * quarter);
	});

	it("is sixty nautical miles a degree, or nearly: the mile is of another sphere", () => {
		const miles = distanceKm(position(10, 20), position(11, 20)) / NAUTICAL_MILE_KM;
		expect(miles).toBeCloseTo(60.04, 2);
	});

	it("is the same both ways, and the two ways round make one circle", () => {
		fc.assert(
			fc.property(anywhere, anywhere, (a, b) => {
				expect(distanceKm(a, b)).toBe(distanceKm(b, a));
				expect(distanceKm(a, b, "long")).toBe(distanceKm(b, a, "long"));
				expect(distanceKm(a, b) + distanceKm(a, b, "long")).toBeCloseTo(CIRCUMFERENCE_KM, 9);
				expect(distanceKm(a, b)).toBeLessThanOrEqual(CIRCUMFERENCE_KM / 2);
			}),
			PROPERTY,
		);
	});

	it("is zero from a place to itself, under whatever longitude it goes", () => {
		fc.assert(
			fc.property(anywhere, ({ latDeg, lonDeg }) => {
				expect(distanceKm({ latDeg, lonDeg }, { latDeg, lonDeg })).toBe(0);
				expect(distanceKm({ latDeg, lonDeg }, { latDeg, lonDeg: lonDeg + 360 })).toBeLessThan(1e-9);
				expect(distanceKm({ latDeg: 90, lonDeg }, { latDeg: 90, lonDeg: -lonDeg })).toBeLessThan(1e-9);
			}),
			PROPERTY,
		);
	});

	it("is never longer than by way of a third place", () => {
		fc.assert(
			fc.property(anywhere, anywhere, anywhere, (a, b, c) => {
				expect(distanceKm(a, c)).toBeLessThanOrEqual(distanceKm(a, b) + distanceKm(b, c) + 1e-9);
			}),
			PROPERTY,
		);
	});
});
