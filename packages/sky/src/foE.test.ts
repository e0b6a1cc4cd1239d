import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { eRows } from "../truth/readMaps.ts";
import { type ESun, eLayer, foEMHz } from "./foE.ts";
import { sunAt, sunOver, underSun } from "./foESun.ts";
import { phi12 } from "./indices.ts";

const RADIANS = Math.PI / 180;

function sunOf(latDeg: number, declinationDeg: number, zenithDeg: number, hoursAfterSunset: number | null): ESun {
	const cosNoon = Math.cos((latDeg - declinationDeg) * RADIANS);
	return { zenithDeg, cosZenith: Math.cos(zenithDeg * RADIANS), cosNoon, hoursAfterSunset };
}

describe("foE", () => {
	it("meets every row of an independent evaluation of ITU-R P.1239 s.4 within 0.005 MHz (foe.csv)", () => {
		const rows = eRows();
		expect(rows.length).toBe(96);
		expect(rows.filter(({ hoursAfterSunset }) => hoursAfterSunset !== null).length).toBeGreaterThan(20);
		const worst = { given: 0, own: 0, zenith: 0 };
		for (const row of rows) {
			const layer = eLayer(row.where.latDeg, phi12(row.r12));
			const given = sunOf(row.where.latDeg, row.declinationDeg, row.zenithDeg, row.hoursAfterSunset);
			const own = sunOver(underSun(row.where), sunAt(Date.UTC(2020, row.month - 1, 15, row.utcHour)));
			worst.given = Math.max(worst.given, Math.abs(foEMHz(layer, given) - row.foEMHz));
			worst.own = Math.max(worst.own, Math.abs(foEMHz(layer, own) - row.foEMHz));
			worst.zenith = Math.max(worst.zenith, Math.abs(own.zenithDeg - row.zenithDeg));
		}
		console.info(
			`foE: ${rows.length} rows, worst ${worst.given.toFixed(5)} MHz with the rows' sun, ${worst.own.toFixed(5)} with ours (zenith ${worst.zenith.toFixed(4)} degree)`,
		);
		expect(worst.given).toBeLessThan(0.005);
		expect(worst.own).toBeLessThan(0.005);
		expect(worst.zenith).toBeLessThan(0.01);
	});

	it("has no step where its pieces meet: low sun, sunset, the tropics' edge by 0.1 MHz", () => {
		const layer = eLayer(50, phi12(80));
		const at = (zenithDeg: number, after: number | null) => foEMHz(layer, sunOf(50, 10, zenithDeg, after));
		expect(Math.abs(at(73, null) - at(73.0001, null))).toBeLessThan(0.003); // the equation's own: 0.05 degree of bend
		expect(Math.abs(at(89.9999, null) - at(90, 0))).toBeLessThan(0.02);
		expect(Math.abs(at(90, 0) - at(90, null))).toBeLessThan(1e-12);
		const across = (lat: number) => foEMHz(eLayer(lat, phi12(80)), sunOf(lat, 10, 40, null));
		expect(Math.abs(across(31.9999) - across(32))).toBeLessThan(0.1);
	});

	it("is steady over the globe and the year: no NaN, higher with more sunspots, higher by day", () => {
		let compared = 0;
		for (let month = 1; month <= 12; month++) {
			for (let hour = 0; hour < 24; hour += 3) {
				const sun = sunAt(Date.UTC(2027, month - 1, 15, hour));
				for (let lat = -90; lat <= 90; lat += 5) {
					for (let lon = -180; lon < 180; lon += 20) {
						const over = sunOver(underSun(position(lat, lon)), sun);
						const [quiet, active] = [0, 150].map((r12) => foEMHz(eLayer(lat, phi12(r12)), over)) as [number, number];
						expect(quiet).toBeGreaterThan(0.3);
						expect(active).toBeGreaterThan(quiet);
						expect(active).toBeLessThan(over.zenithDeg < 90 ? 5 : 2);
						compared++;
					}
				}
			}
		}
		expect(compared).toBe(12 * 8 * 37 * 18);
	});
});

describe("hours after sunset", () => {
	const june = sunAt(Date.UTC(2027, 5, 15, 0));

	it("count from the moment the sun stands on the horizon, round midnight to sunrise", () => {
		const hours = Array.from({ length: 240 }, (_, i) => {
			const over = sunOver(underSun(position(30, 0)), sunAt(Date.UTC(2027, 2, 15, 0, i * 6)));
			return over.zenithDeg >= 90 ? over.hoursAfterSunset : null;
		});
		const dark = hours.filter((value) => value !== null);
		expect(dark.length).toBeGreaterThan(100);
		expect(Math.min(...dark)).toBeLessThan(0.1);
		expect(Math.max(...dark)).toBeGreaterThan(11);
		const start = hours.indexOf(Math.min(...dark)); // sunset, in the evening
		for (let i = start + 1; i < 240; i++) expect(hours[i]! - hours[i - 1]!).toBeCloseTo(0.1, 2);
	});

	it("are none in the polar night, nor at a pole", () => {
		for (const lat of [-80, -90]) {
			const over = sunOver(underSun(position(lat, 40)), june);
			expect(over.zenithDeg).toBeGreaterThan(90);
			expect(over.hoursAfterSunset).toBeNull();
			expect(foEMHz(eLayer(lat, 100), over)).toBeGreaterThan(0.3);
		}
	});
});
