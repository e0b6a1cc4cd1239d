import { hz, position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory, listingsNear } from "./directory.ts";
import { findListings, findStations } from "./find.ts";

const CAPE_TOWN = position(-33.9, 18.43);
const D = directory();

function ids(found: ReturnType<typeof findListings>): readonly string[] {
	return found.map(({ listing }) => listing.id);
}

describe("listingsNear", () => {
	it("gives what a walk over all listings gives, nearest first", () => {
		fc.assert(
			fc.property(fc.nat(855), fc.integer({ min: -3000, max: 3000 }), fc.nat(5000), (index, offset, tolerance) => {
				const at = hz(D.listings[index]!.hz + offset);
				const walked = D.listings
					.filter((listing) => Math.abs(listing.hz - at) <= tolerance)
					.toSorted((a, b) => Math.abs(a.hz - at) - Math.abs(b.hz - at) || (a.id < b.id ? -1 : 1));
				expect(listingsNear(D, at, tolerance)).toEqual(walked);
			}),
			{ seed: 61, numRuns: 300 },
		);
	});
});

describe("findListings", () => {
	it("finds by a figure, nearest first, and by the dial a fitter may have typed", () => {
		const found = findListings(D, { hz: hz(12_784_100) });
		expect(ids(found)).toContain("us-pointreyes/fax/12786");
		expect(ids(findListings(D, { hz: hz(8_682_000), toleranceHz: 0 }))).toEqual(["us-pointreyes/fax/8682"]);
	});

	it("finds by call sign before names and parts of names, accents and case aside", () => {
		const found = findListings(D, { station: "nmc" });
		expect(new Set(found.map(({ station }) => station.id))).toEqual(new Set(["us-pointreyes"]));
		const boston = findListings(D, { station: "Bóston" }).map(({ station }) => station.id);
		expect(new Set(boston)).toEqual(new Set(["navtex-us-boston", "us-boston"]));
		expect(findListings(D, { station: "VIC" })[0]?.station.id).toBe("au-amsa");
		expect(findListings(D, { station: "006010001" })[0]?.station.id).toBe("za-capetown");
		expect(findListings(D, { station: "no such place" })).toEqual([]);
	});

	it("finds by service, country and status together", () => {
		const found = findListings(D, { services: ["fax"], administrations: ["JP", "KR"], statuses: ["active"] });
		expect(found).toHaveLength(8);
		for (const { listing, station } of found) {
			expect([listing.service, listing.status]).toEqual(["fax", "active"]);
			expect(["JP", "KR"]).toContain(station.administration);
		}
	});

	it("finds within a distance of a position, nearest first, leaving out stations without a position", () => {
		const found = findListings(D, { near: CAPE_TOWN, withinKm: 1300, services: ["navtex"] });
		expect(ids(found)).toEqual([
			"navtex-capetown/navtex/518",
			"navtex-portelizabeth/navtex/518",
			"navtex-walvisbay/navtex/518",
			"navtex-durban/navtex/518",
		]);
		// Cape Town to Durban, both as in the list: about 1270 km by any textbook sphere
		expect(found[3]?.distanceKm).toBeGreaterThan(1250);
		expect(found[3]?.distanceKm).toBeLessThan(1290);
		const everywhere = findListings(D, { near: CAPE_TOWN });
		expect(everywhere).toHaveLength(856);
		expect(everywhere.at(-1)?.distanceKm).toBeNull();
	});

	it("finds by words anywhere in station or listing", () => {
		expect(ids(findListings(D, { text: "tropical atlantic charts" }))).toEqual([
			"us-neworleans/fax/12789.9",
			"us-neworleans/fax/17146.4",
			"us-neworleans/fax/4317.9",
			"us-neworleans/fax/8503.9",
		]);
		expect(findListings(D, { text: "iqaluit", limit: 3 })).toHaveLength(3);
	});

	it("meets every condition that it is given, and drops nothing that does", () => {
		const query = fc.record(
			{
				services: fc.subarray(["fax", "navtex", "volmet"] as const, { minLength: 1 }),
				administrations: fc.subarray(["US", "JP", "ZA", "NO"], { minLength: 1 }),
				statuses: fc.subarray(["active", "unknown"] as const, { minLength: 1 }),
				withinKm: fc.integer({ min: 0, max: 20_100 }),
			},
			{ requiredKeys: [] },
		);
		fc.assert(
			fc.property(query, (conditions) => {
				const found = findListings(D, { ...conditions, near: CAPE_TOWN });
				const { services, administrations, statuses, withinKm } = conditions;
				for (const { listing, station, distanceKm } of found) {
					if (services) expect(services).toContain(listing.service);
					if (administrations) expect(administrations).toContain(station.administration);
					if (statuses) expect(statuses).toContain(listing.status);
					if (withinKm !== undefined) expect(distanceKm).toBeLessThanOrEqual(withinKm);
				}
				const all = findListings(D, { near: CAPE_TOWN }).filter(
					({ listing, station, distanceKm }) =>
						(services?.some((one) => one === listing.service) ?? true) &&
						(administrations?.includes(station.administration) ?? true) &&
						(statuses?.some((one) => one === listing.status) ?? true) &&
						(withinKm === undefined || (distanceKm !== null && distanceKm <= withinKm)),
				);
				expect(found).toHaveLength(all.length);
			}),
			{ seed: 62, numRuns: 40 },
		);
	});
});

describe("findStations", () => {
	it("finds each station once, with the number of its listings, also one without any", () => {
		const boston = findStations(D, { station: "NMF" });
		expect(boston).toHaveLength(1);
		expect(boston[0]).toMatchObject({ station: { id: "us-boston" }, listings: 13 });
		expect(findStations(D, { text: "former australian" })).toMatchObject([{ station: { id: "au-oldcoast" }, listings: 0 }]);
		expect(findStations(D, {})).toHaveLength(366);
		expect(findStations(D, { near: CAPE_TOWN, services: ["fax"], limit: 1 })).toMatchObject([{ station: { id: "za-capenaval" } }]);
	});
});
