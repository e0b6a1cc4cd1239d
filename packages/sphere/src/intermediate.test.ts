import { type Position, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { geodesics } from "../truth/readTruth.ts";
import { initialBearingDeg } from "./bearing.ts";
import { destination } from "./destination.ts";
import { distanceKm } from "./distance.ts";
import { CIRCUMFERENCE_KM } from "./earth.ts";
import { intermediate } from "./intermediate.ts";

const PROPERTY = { seed: 180, numRuns: 2_000 };
const anywhere = fc
	.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
	.map(([lat, lon]) => position(lat, lon));
const way = fc.constantFrom("short" as const, "long" as const);
const fraction = fc.double({ min: 0, max: 1, noNaN: true });
/** km. Rounding alone. */
const SAME = 1e-8;

describe("intermediate", () => {
	it("lies on geographiclib's geodesics on the sphere to a millimetre, near antipodes to a centimetre", () => {
		const rows = geodesics().filter(({ kind }) => kind !== "meridian" && kind !== "equator");
		expect(rows.length).toBe(474);
		for (const { kind, from, to, sphereKm, sphereBearingDeg } of rows) {
			for (const part of [0.1, 0.5, 0.75]) {
				const wanted = destination(from, sphereBearingDeg, part * sphereKm);
				expect(distanceKm(intermediate(from, to, part), wanted)).toBeLessThan(kind === "antipodal" ? 1e-5 : 1e-6);
			}
		}
	});

	it("starts at one end and ends at the other, either way round", () => {
		fc.assert(
			fc.property(anywhere, anywhere, way, (from, to, round) => {
				expect(distanceKm(intermediate(from, to, 0, round), from)).toBeLessThan(SAME);
				expect(distanceKm(intermediate(from, to, 1, round), to)).toBeLessThan(SAME);
			}),
			PROPERTY,
		);
	});

	it("divides the distance, and is the same place from the other end", () => {
		fc.assert(
			fc.property(anywhere, anywhere, way, fraction, (from, to, round, part) => {
				const whole = distanceKm(from, to, round);
				fc.pre(Math.min(whole, CIRCUMFERENCE_KM - whole) > 1 && Math.abs(whole - CIRCUMFERENCE_KM / 2) > 1);
				const there = intermediate(from, to, part, round);
				const km = part * whole;
				expect(distanceKm(from, there)).toBeCloseTo(Math.min(km, CIRCUMFERENCE_KM - km), 7);
				expect(distanceKm(intermediate(to, from, 1 - part, round), there)).toBeLessThan(1e-5);
			}),
			PROPERTY,
		);
	});

	it("follows the bearing of either way", () => {
		const from = position(-33.9, 18.4);
		const to = position(38.5, -28.6);
		for (const round of ["short", "long"] as const) {
			const km = distanceKm(from, to, round);
			const wanted = destination(from, initialBearingDeg(from, to, round), km / 3);
			expect(distanceKm(intermediate(from, to, 1 / 3, round), wanted)).toBeLessThan(SAME);
		}
	});

	it("crosses 180 degrees and the pole", () => {
		const dateline = intermediate(position(0, 170), position(0, -170), 0.5);
		expect([dateline.latDeg, Math.abs(dateline.lonDeg)]).toEqual([expect.closeTo(0, 9), expect.closeTo(180, 9)]);
		expect(intermediate(position(80, 0), position(80, 180), 0.5).latDeg).toBeCloseTo(90, 9);
	});

	it("gives no NaN from anywhere to anywhere", () => {
		const grid: Position[] = [];
		for (let lat = -90; lat <= 90; lat += 22.5) for (let lon = -180; lon < 180; lon += 22.5) grid.push(position(lat, lon));
		let compared = 0;
		for (const from of grid) {
			for (const to of grid) {
				const { latDeg, lonDeg } = intermediate(from, to, 0.3);
				expect(Math.abs(latDeg) <= 90 && lonDeg >= -180 && lonDeg < 180).toBe(true);
				compared++;
			}
		}
		expect(compared).toBe((9 * 16) ** 2);
	});
});
