import { CIRCUMFERENCE_KM, destination, distanceKm } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { skyPath } from "./path.ts";

const cork = position(51.8, -8.3);
const along = (km: number, bearingDeg = 250) => skyPath(cork, destination(cork, bearingDeg, km));

describe("a sky wave's path", () => {
	it("has a middle, and hops up to twelve, where the form for shorter paths holds", () => {
		const path = along(3000);
		expect(path.km).toBeCloseTo(3000, 6);
		expect(distanceKm(path.middle, destination(cork, 250, 1500))).toBeLessThan(1e-6);
		expect(path.hops.map(({ count }) => count)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
		expect(path.hops[2]!.km).toBeCloseTo(1000, 6);
		expect(path.long).toBeNull();
	});

	it("has three rays by the E layer up to 4000 km, from the least number of hops under 2000 km; those under 3 degrees do not count", () => {
		const rays = (km: number) => along(km).eRays.map(({ hop, counts }) => `${hop.count}${counts ? "" : " too low"}`);
		expect(rays(500)).toEqual(["1", "2", "3"]);
		expect(rays(1999)).toEqual(["1 too low", "2", "3"]);
		expect(rays(2100)).toEqual(["2", "3", "4"]);
		expect(rays(3999)).toEqual(["2 too low", "3", "4"]);
		expect(rays(4001)).toEqual([]);
	});

	it("has the form for long paths over 7000 km, with equal hops up to 4000 km and two crossings a hop", () => {
		expect(along(7000).long).toBeNull();
		for (const [km, hops] of [
			[7001, 2],
			[8001, 3],
			[12001, 4],
			[19999, 5],
		] as const) {
			const long = along(km).long!;
			expect(long.hop.count).toBe(hops);
			expect(long.crossings.length).toBe(2 * hops);
		}
		expect(along(9000).hops).toEqual([]);
		expect(along(8999).hops.length).toBe(12);
	});

	it("goes the long way round when asked", () => {
		const to = destination(cork, 250, 5000);
		const path = skyPath(cork, to, "long");
		expect(path.km).toBeCloseTo(CIRCUMFERENCE_KM - 5000, 6);
		expect(distanceKm(path.middle, destination(cork, 70, path.km / 2))).toBeLessThan(1e-6);
		expect(path.long!.hop.count).toBe(9);
	});

	it("knows whether it comes to geomagnetic latitude 60 more than 1000 km from its ends", () => {
		const [reykjavik, iqaluit, lisbon, bermuda] = [
			position(64.1, -21.9),
			position(63.7, -68.5),
			position(38.7, -9.1),
			position(32.3, -64.8),
		];
		expect(skyPath(reykjavik, iqaluit).reachesAurora).toBe(true);
		expect(skyPath(lisbon, bermuda).reachesAurora).toBe(false);
		const floro = position(61.6, 5);
		expect(skyPath(floro, destination(floro, 180, 10)).reachesAurora).toBe(true);
		expect(skyPath(floro, destination(floro, 180, 2500)).reachesAurora).toBe(false); // only its first 1000 km lie so high
	});

	it("is sound from a place to itself, to its antipode, over a pole and over longitude 180", () => {
		const pairs = [
			[cork, cork],
			[cork, position(-51.8, 171.7)],
			[position(80, 0), position(80, 180)],
			[position(20, 179), position(20, -179)],
			[position(90, 0), position(-90, 0)],
		] as const;
		for (const [from, to] of pairs) {
			const path = skyPath(from, to);
			const numbers = [
				path.km,
				path.middle.latDeg,
				path.middle.lonDeg,
				path.geomagneticLatDeg,
				path.long?.bearingDeg ?? 0,
				path.long?.fixedDb ?? 0,
			];
			expect(numbers.every(Number.isFinite)).toBe(true);
		}
		expect(skyPath(...pairs[1]).long!.fixedDb).toBeCloseTo(15 - 30 + 0.14, 12); // focusing at most 15 dB
	});
});
