import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { distanceKm } from "./distance.ts";
import { CIRCUMFERENCE_KM } from "./earth.ts";
import { intermediate } from "./intermediate.ts";
import { pathDistanceKm } from "./pathDistance.ts";

describe("pathDistanceKm", () => {
	it("adds leg after leg", () => {
		const [a, b, c] = [position(-33.9, 18.4), position(-15.9, -5.7), position(-7.9, -14.4)] as const;
		expect(pathDistanceKm([a, b, c])).toBe(distanceKm(a, b) + distanceKm(b, c));
		expect(pathDistanceKm([a, b, a])).toBe(2 * distanceKm(a, b));
	});

	it("is nothing for a vessel that has not moved", () => {
		expect([pathDistanceKm([]), pathDistanceKm([position(1, 2)]), pathDistanceKm([position(1, 2), position(1, 2)])]).toEqual([0, 0, 0]);
	});

	it("is the length of the great circle however finely it is sampled, and the whole equator once round", () => {
		const [from, to] = [position(50, -5), position(-34, 151)];
		const fine = Array.from({ length: 1001 }, (_, i) => intermediate(from, to, i / 1000));
		expect(pathDistanceKm(fine)).toBeCloseTo(distanceKm(from, to), 7);
		expect(pathDistanceKm(Array.from({ length: 25 }, (_, i) => position(0, 15 * i - 180)))).toBeCloseTo(CIRCUMFERENCE_KM, 7);
	});
});
