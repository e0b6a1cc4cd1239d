import { destination, distanceKm } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { constantIonosphere } from "../truth/madeUpIonosphere.ts";
import { absorptionPlaces, eMufPlaces, f2MufPlaces, mirrorPlaces, pointsOf, screeningPlaces } from "./controlPoints.ts";
import { skyPath } from "./path.ts";

describe("control points", () => {
	it("stand where ITU-R P.533 table 1 puts them, as remembered", () => {
		expect([eMufPlaces(2000), eMufPlaces(3600)]).toEqual([[1000], [1000, 2600]]);
		expect([screeningPlaces(2000), screeningPlaces(8000)]).toEqual([[1000], [1000, 7000]]);
		expect([f2MufPlaces(3900, null), f2MufPlaces(6000, 2000)]).toEqual([[1950], [1000, 5000]]);
		expect([mirrorPlaces(3900, null), mirrorPlaces(6000, 3000)]).toEqual([[1950], [1500, 3000, 4500]]);
		expect([absorptionPlaces(2000, null), absorptionPlaces(3900, null)]).toEqual([[1000], [1000, 1950, 2900]]);
		expect(absorptionPlaces(6000, 3000)).toEqual([1000, 3000, 5000, 1500, 4500]);
	});

	it("are asked for once each, where they lie", () => {
		const from = position(40, 170);
		const path = skyPath(from, destination(from, 80, 4800));
		let asked = 0;
		const flat = constantIonosphere();
		const pointAt = pointsOf(path, (where) => {
			asked++;
			return flat(where);
		});
		for (const km of [1000, 2400, 1000, 3800, 2400]) {
			expect(distanceKm(pointAt(km).where, destination(from, 80, km))).toBeLessThan(1e-6);
		}
		expect(asked).toBe(3);
	});
});
