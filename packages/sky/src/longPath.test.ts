import { destination } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { constantIonosphere, smoothIonosphere } from "../truth/madeUpIonosphere.ts";
import { winterAnomaly } from "./absorption.ts";
import { MEMORY } from "./fromMemory.ts";
import { longFieldDb } from "./longPath.ts";
import { highestMHz } from "./longPathHighest.ts";
import { lowestMHz, withNight } from "./longPathLowest.ts";
import { type SkyPath, skyPath } from "./path.ts";
import { skyMonth } from "./skyWaveMonth.ts";

const { fieldDb, night } = MEMORY.longPath.value;
const from = position(50, -5);
const over = (km: number, bearingDeg = 200) => skyPath(from, destination(from, bearingDeg, km));

describe("the field of a long path, ITU-R P.533 section 5.3 from memory", () => {
	it("starts from 3 MW in free space: sqrt(30 P) / r is 139.5 dB(uV/m) at 1 km, the form has 139.6", () => {
		const derived = 20 * Math.log10((Math.sqrt(30 * 3e6) / 1000) * 1e6);
		expect(derived).toBeCloseTo(139.54, 2);
		expect(Math.abs(fieldDb - derived)).toBeLessThan(0.1);
	});

	it("loses all of the free field at its lowest and highest frequency, least between, and more and more outside", () => {
		const long = over(12_000).long!;
		const hour = { lowestMHz: 6, highestMHz: 24, gyroMHz: 1.1 };
		const field = (fMHz: number) => longFieldDb(long, hour, fMHz);
		expect(field(6)).toBeCloseTo(long.fixedDb, 9);
		expect(field(24)).toBeCloseTo(long.fixedDb, 9);
		const best = Math.sqrt(7.1 * 25.1) - 1.1; // where both parts of the loss are one size
		expect(field(best)).toBeGreaterThan(Math.max(field(best - 0.5), field(best + 0.5)));
		expect([3, 4, 5, 6].map(field)).toEqual([3, 4, 5, 6].map(field).sort((a, b) => a - b));
		expect(field(0.5)).toBeLessThan(-300);
		expect(field(30)).toBeLessThan(field(24));
	});

	it("draws together towards the antipode", () => {
		const fixed = [10_000, 14_000, 18_000, 19_800].map((km) => over(km).long!.fixedDb);
		expect(fixed).toEqual([...fixed].sort((a, b) => a - b));
		expect(fixed[3]! - fixed[0]!).toBeGreaterThan(10);
	});
});

describe("the lowest frequency of a long path", () => {
	it("halves in three hours of night: e^-0.23 three times over is 0.50", () => {
		expect(Math.exp(-night.falls * night.hours)).toBeCloseTo(0.5, 2);
	});

	it("holds the day's figure down to twice the night level, decays from that crossing, stays at the level, and rises with the day", () => {
		const byDay = Float64Array.from([12, 10, 8, 4, 1, -1, -1, -1, -1, -1, -1, 1, 2.5, 3, 5, 9, 12, 13, 14, 15, 16, 15, 14, 13]);
		const found = withNight(byDay, 2); // falls through 4 at hour 3
		expect([...found.slice(0, 4)]).toEqual([12, 10, 8, 4]);
		for (const since of [1, 2]) expect(found[3 + since]).toBeCloseTo(4 * Math.exp(-0.23 * since), 12);
		for (let hour = 6; hour <= 11; hour++) expect(found[hour]).toBe(2);
		expect([...found.slice(12)]).toEqual([...byDay.slice(12)]);
	});

	it("takes the moment of dusk between hours, round midnight too", () => {
		const byDay = Float64Array.from({ length: 24 }, (_, hour) => (hour === 23 ? 5 : hour < 12 ? 1 : 9));
		expect(withNight(byDay, 2)[0]).toBeCloseTo(4 * Math.exp(-0.23 * 0.75), 12); // through 4 a quarter of an hour after 23
	});

	it("is the night level in the polar night and the day's figure where the sun does not set", () => {
		expect([...withNight(new Float64Array(24).fill(-1), 2)]).toEqual(new Array(24).fill(2));
		expect([...withNight(new Float64Array(24).fill(7), 2)]).toEqual(new Array(24).fill(7));
	});

	it("is higher by day, with sunspots, and in the ends' winter", () => {
		const path = over(11_000, 270);
		const lowest = (month: number, sunspots: number) => lowestMHz(path, path.long!, skyMonth({ year: 2027, month, sunspots }), 1.1);
		const equinox = lowest(3, 50);
		expect(Math.max(...equinox)).toBeGreaterThan(2 * Math.min(...equinox));
		expect(Math.min(...equinox)).toBeCloseTo(Math.sqrt(11_000 / 3000), 2);
		expect(Math.max(...lowest(3, 150))).toBeGreaterThan(Math.max(...equinox));
	});

	it("is raised by the ends' winter: all where both lie poleward of 35 degrees, half where one does, none across the equator", () => {
		const may = skyMonth({ year: 2027, month: 5, sunspots: 50 });
		const ratio = (path: SkyPath, month: number) => {
			const noon = (of: number) => Math.max(...lowestMHz(path, path.long!, { ...may, month: of }, 0)); // the same sun in any month
			return noon(month) / noon(5);
		};
		const [tokyo, seattle, honolulu, quito, perth] = [
			position(35.7, 139.7),
			position(47.6, -122.3),
			position(21.3, -157.9),
			position(-0.2, -78.5),
			position(-36, 115.9),
		];
		const both = skyPath(tokyo, seattle);
		const middle = Math.abs(both.middle.latDeg);
		expect(middle).toBeGreaterThan(45);
		expect(ratio(both, 1)).toBeCloseTo(1.1 * winterAnomaly(1, middle), 9);
		expect(ratio(both, 11)).toBeCloseTo(1.05 * winterAnomaly(11, middle), 9);
		const one = skyPath(seattle, position(10, 125));
		expect(ratio(one, 12)).toBeCloseTo(1.05 * winterAnomaly(12, one.middle.latDeg), 9);
		expect(ratio(skyPath(honolulu, position(20, 60)), 1)).toBeCloseTo(
			winterAnomaly(1, skyPath(honolulu, position(20, 60)).middle.latDeg),
			9,
		);
		expect(ratio(skyPath(position(40, 120), perth), 1)).toBeCloseTo(1, 9);
		const south = skyPath(perth, quito);
		const southern = lowestMHz(south, south.long!, { ...may, month: 7 }, 0);
		const summer = lowestMHz(south, south.long!, { ...may, month: 1 }, 0);
		expect(Math.max(...southern) / Math.max(...summer)).toBeCloseTo(1.05 * winterAnomaly(7, south.middle.latDeg), 9);
	});
});

describe("the highest frequency of a long path", () => {
	it("is 1.1 F2(3000)MUF times 1.2 + W + Y where day and night are alike", () => {
		const point = constantIonosphere({ foF2MHz: 8, m3000: 3, foEMHz: 8 / 3, gyro300MHz: 0 })(from);
		for (const [bearingDeg, k] of [
			[90, 1.9],
			[270, 1.9],
			[0, 1.8],
			[180, 1.8],
			[45, 1.85],
			[135, 1.85],
			[315, 1.85],
		] as const) {
			const series = highestMHz(point, bearingDeg);
			expect(series.length).toBe(24);
			for (const value of series) expect(value / (1.1 * 2.9987 * 8)).toBeCloseTo(k, 3);
		}
	});

	it("weighs each hour against local noon and the day's least, by ITU-R P.533's W, X and Y", () => {
		const where = position(0, -90); // noon at 18 UTC
		const flat = constantIonosphere({ foF2MHz: 9, m3000: 3, foEMHz: 3, gyro300MHz: 0 })(where);
		const foF2MHz = Array.from({ length: 24 }, (_, hour) => (hour === 18 ? 9 : hour === 6 ? 3 : 6));
		const series = highestMHz({ ...flat, foF2MHz, foEMHz: foF2MHz.map((value) => value / 3) }, 90);
		for (const hour of [6, 12, 18]) {
			const toNoon = foF2MHz[hour]! / 9;
			const k = 1.2 + 0.1 * toNoon + 1.2 * (Math.cbrt(1 / toNoon) - 1) + 0.6 * (3 / 9) ** 2;
			expect(series[hour]! / (1.1 * 2.9987 * foF2MHz[hour]!)).toBeCloseTo(k, 3);
		}
	});

	it("keeps a night's figure up where the path runs east and west", () => {
		const point = smoothIonosphere(2027, 3)(from);
		const least = (bearingDeg: number) => Math.min(...highestMHz(point, bearingDeg));
		expect(least(90)).toBeGreaterThan(least(0));
	});
});
