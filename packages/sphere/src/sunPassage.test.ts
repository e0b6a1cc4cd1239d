import { isoDate, position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { passages } from "../truth/readTruth.ts";
import { sunPassage, ZENITH_DEG } from "./sunPassage.ts";

/** Minutes, up to a latitude: the nearer the pole, the flatter the sun crosses and the more 0.01 degree costs. */
const CEILINGS = [
	{ fromLat: 0, toLat: 60, minutes: 0.1, count: 1264 },
	{ fromLat: 60.1, toLat: 75, minutes: 0.5, count: 276 },
	{ fromLat: 75.1, toLat: 90, minutes: 3, count: 8 },
];

describe("sunPassage against PyEphem 4.2.1 (truth/sunPassages.csv)", () => {
	const rows = passages().map((row) => ({
		...row,
		got: sunPassage(row.where, isoDate(row.date), ZENITH_DEG[row.kind as keyof typeof ZENITH_DEG]),
	}));

	it("rises and sets when it does, and not when it does not", () => {
		expect(rows.length).toBe(13 * 18 * 4);
		const missing = (of: { riseMin: number | null; setMin: number | null }) => [of.riseMin === null, of.setMin === null];
		expect(rows.filter(({ riseMin }) => riseMin === null).length).toBe(162);
		for (const row of rows) expect(missing(row.got)).toEqual(missing(row));
	});

	for (const { fromLat, toLat, minutes, count } of CEILINGS) {
		it(`is within ${minutes} minute of it from latitude ${fromLat} to ${toLat}`, () => {
			const errors = rows
				.filter(({ where }) => Math.abs(where.latDeg) >= fromLat && Math.abs(where.latDeg) <= toLat)
				.flatMap(({ got, riseMin, setMin }) => [difference(got.riseMin, riseMin), difference(got.setMin, setMin)])
				.filter((error) => error !== null);
			expect(errors.length).toBe(count);
			expect(Math.max(...errors)).toBeLessThan(minutes);
		});
	}

	it("finds noon within 0.02 minute", () => {
		expect(Math.max(...rows.map(({ got, noonMin }) => Math.abs(got.noonMin - noonMin)))).toBeLessThan(0.02);
	});
});

function difference(a: number | null, b: number | null): number | null {
	return a === null || b === null ? null : Math.abs(a - b);
}

describe("sunPassage", () => {
	it("tells polar day from polar night", () => {
		const tromso = position(69.65, 18.96);
		const summer = sunPassage(tromso, isoDate("2027-06-21"));
		const winter = sunPassage(tromso, isoDate("2027-12-21"));
		expect([summer.riseMin, summer.setMin, summer.noonIs]).toEqual([null, null, "above"]);
		expect([winter.riseMin, winter.setMin, winter.noonIs]).toEqual([null, null, "below"]);
	});

	it("speaks of the local day: beyond 0000 and 2400 UTC far from Greenwich", () => {
		const fiji = sunPassage(position(-18, 178), isoDate("2027-02-01"));
		const hawaii = sunPassage(position(21, -158), isoDate("2027-02-01"));
		expect(fiji.riseMin).toBeLessThan(0);
		expect(hawaii.setMin).toBeGreaterThan(1440);
	});

	it("keeps the order of twilights, every day of a year from pole to pole", () => {
		let compared = 0;
		for (let lat = -90; lat <= 90; lat += 10) {
			for (let day = 0; day < 365; day += 5) {
				const date = isoDate(new Date(Date.UTC(2027, 0, 1 + day)).toISOString().slice(0, 10));
				const of = (zenith: number) => sunPassage(position(lat, 40), date, zenith);
				const [sunrise, civil, nautical] = [of(ZENITH_DEG.sunrise), of(ZENITH_DEG.civil), of(ZENITH_DEG.nautical)];
				for (const [inner, outer] of [
					[sunrise, civil],
					[civil, nautical],
				] as const) {
					if (inner.riseMin === null || outer.riseMin === null || inner.setMin === null || outer.setMin === null) continue;
					expect(outer.riseMin).toBeLessThan(inner.riseMin);
					expect(inner.riseMin).toBeLessThan(inner.noonMin);
					expect(inner.noonMin).toBeLessThan(inner.setMin);
					expect(inner.setMin).toBeLessThan(outer.setMin);
					compared++;
				}
			}
		}
		expect(compared).toBeGreaterThan(1_800);
	});
});
