import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { geodesics } from "../truth/readTruth.ts";
import { CIRCUMFERENCE_KM } from "./earth.ts";
import { placeAlong, trackBetween, vectorAlong } from "./track.ts";
import { vectorOf } from "./vector.ts";

describe("track", () => {
	it("is as long as geographiclib's geodesic on the sphere, and the long way the rest of the circle", () => {
		const rows = geodesics();
		expect(rows.length).toBeGreaterThan(474);
		for (const { from, to, sphereKm } of rows) {
			expect(trackBetween(from, to).km).toBeCloseTo(sphereKm, 6);
			expect(trackBetween(from, to, "long").km).toBeCloseTo(CIRCUMFERENCE_KM - sphereKm, 6);
		}
	});

	it("gives one direction as place and as vector", () => {
		const track = trackBetween(position(55, -131), position(-33.9, 18.4), "long");
		for (const fraction of [0, 0.1, 0.5, 1]) {
			const { x, y, z } = vectorOf(placeAlong(track, fraction));
			const wanted = vectorAlong(track, fraction);
			expect(Math.abs(x - wanted.x) + Math.abs(y - wanted.y) + Math.abs(z - wanted.z)).toBeLessThan(1e-14);
		}
	});

	it("has places even from a place to itself and from pole to pole", () => {
		const here = position(20, 40);
		expect(placeAlong(trackBetween(here, here), 1)).toEqual(expect.objectContaining({ latDeg: expect.closeTo(20, 12) }));
		const middle = placeAlong(trackBetween(position(90, 0), position(-90, 0)), 0.5);
		expect(middle.latDeg).toBeCloseTo(0, 9);
	});
});
