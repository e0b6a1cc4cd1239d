import { destination, distanceKm } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { constantIonosphere, smoothIonosphere } from "../truth/madeUpIonosphere.ts";
import { MEMORY } from "./fromMemory.ts";
import { skyPath } from "./path.ts";
import { ISOTROPIC, pathGain } from "./pathGain.ts";
import { FIELD_TO_POWER_DB, FREE_SPACE_DB, NOTHING_DB, skyWaveDb } from "./skyWave.ts";
import { skyWaveCeilingDb } from "./skyWaveCeiling.ts";
import { type SkyHour, skyDay, skyHour } from "./skyWaveHour.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz, operationalMuf, supportChance } from "./skyWaveMuf.ts";
import { skyWaveWhy } from "./skyWaveWhy.ts";

const azores = position(38.5, -28.6);
const march = skyMonth({ year: 2027, month: 3, sunspots: 90 });
const smooth = smoothIonosphere(2027, 3);
const anywhere = fc
	.tuple(fc.double({ min: -90, max: 90, noNaN: true }), fc.double({ min: -180, max: 180, noNaN: true }))
	.map(([lat, lon]) => position(lat, lon));
const frequency = fc.double({ min: 0.5, max: 30, noNaN: true });
const hourOfDay = fc.integer({ min: 0, max: 23 });

function hourAt(km: number, utcHour: number, ionosphere = smooth, bearingDeg = 255) {
	return skyHour(skyDay(skyPath(azores, destination(azores, bearingDeg, km)), ionosphere, march), utcHour);
}

describe("constants of field and power", () => {
	it("follow from the units: 107.2, 32.45, and 137.2 where ITU-R P.533 as remembered has 136.6", () => {
		const metresAt1MHz = 299.792458;
		// power of an isotropic aerial, lambda^2 / (4 pi) times E^2 / (120 pi), for 1 uV/m
		expect(10 * Math.log10(((metresAt1MHz ** 2 / (4 * Math.PI)) * 1e-12) / (120 * Math.PI))).toBeCloseTo(FIELD_TO_POWER_DB, 1);
		expect(20 * Math.log10((4 * Math.PI * 1000) / metresAt1MHz)).toBeCloseTo(FREE_SPACE_DB, 2);
		const field = 20 * Math.log10((Math.sqrt(30 * 1000) / 1000) * 1e6) + FREE_SPACE_DB;
		expect(field).toBeCloseTo(137.2, 1);
		expect(field - MEMORY.fieldConstant.value).toBeCloseTo(0.62, 1);
	});
});

describe("a sky wave's strength", () => {
	it("is a number at every distance, frequency, layer and number of sunspots", () => {
		let compared = 0;
		const paths = [0, 1, 50, 400, 1500, 1999, 2001, 3100, 3999, 4001, 6500, 7000, 7001, 8999, 9000, 9001, 14_000, 20_000].map((km) =>
			skyPath(azores, destination(azores, 255, km)),
		);
		for (const sunspots of [0, 80, 160]) {
			const month = skyMonth({ year: 2027, month: 12, sunspots });
			for (const foF2MHz of [1, 2, 4, 8, 16]) {
				for (const foEMHz of [0.3, 0.8, 1.5, 3, 4.5]) {
					for (const m3000 of [1.8, 2.1, 2.4, 3, 3.6, 4.2]) {
						const ionosphere = constantIonosphere({ foF2MHz, foEMHz, m3000, zenithDeg: foEMHz > 1 ? 30 : 130 });
						for (const path of paths) {
							const hour = skyHour(skyDay(path, ionosphere, month), 13);
							const chances = [0.5, 3, 30].map((fMHz) => supportChance(hour, fMHz));
							if (!chances.every((chance) => chance >= 0 && chance <= 1)) expect.fail(`chances ${chances}`);
							const { nineDaysMHz, medianMHz, oneDayMHz } = operationalMuf(hour, 30);
							if (!(nineDaysMHz > 0 && nineDaysMHz < medianMHz && medianMHz < oneDayMHz)) expect.fail(`MUF ${nineDaysMHz} ${medianMHz}`);
							for (const fMHz of [0.5, 1.6, 4, 12, 30]) {
								const decibels = skyWaveDb(hour, fMHz, ISOTROPIC);
								if (!(decibels >= NOTHING_DB && decibels < -50)) expect.fail(`${decibels} dB over ${path.km} km at ${fMHz} MHz`);
								compared++;
							}
						}
					}
				}
			}
		}
		expect(compared).toBe(3 * 5 * 5 * 6 * 18 * 5);
	});

	it("is a number anywhere on Earth, poles and longitude 180 included, by either way", () => {
		fc.assert(
			fc.property(
				anywhere,
				anywhere,
				fc.constantFrom("short" as const, "long" as const),
				hourOfDay,
				frequency,
				(from, to, way, hour, fMHz) =>
					Number.isFinite(skyWaveDb(skyHour(skyDay(skyPath(from, to, way), smooth, march), hour), fMHz, ISOTROPIC)),
			),
			{
				seed: 1,
				numRuns: 500,
				examples: [
					[position(90, 0), position(-90, 0), "short", 3, 7],
					[position(0, -180), position(0, 179), "long", 3, 7],
				],
			},
		);
	});

	it("is the same both ways: control points, MUF and loss", () => {
		let worst = 0;
		fc.assert(
			fc.property(anywhere, anywhere, fc.constantFrom("short" as const, "long" as const), hourOfDay, frequency, (a, b, way, hour, fMHz) => {
				if (distanceKm(a, b) < 1 || distanceKm(a, b) > 20_000) return true; // between antipodes any circle is as good as another
				const seen: number[][] = [[], []];
				const [there, back] = (
					[
						[a, b],
						[b, a],
					] as const
				).map(([from, to], direction) =>
					skyHour(
						skyDay(
							skyPath(from, to, way),
							(where) => {
								seen[direction]!.push(where.latDeg);
								return smooth(where);
							},
							march,
						),
						hour,
					),
				) as [ReturnType<typeof skyHour>, ReturnType<typeof skyHour>];
				const sorted = seen.map((latitudes) => latitudes.sort((x, y) => x - y));
				worst = Math.max(worst, Math.abs(skyWaveDb(there, fMHz, ISOTROPIC) - skyWaveDb(back, fMHz, ISOTROPIC)));
				return (
					sorted[0]!.length === sorted[1]!.length &&
					sorted[0]!.every((lat, index) => Math.abs(lat - sorted[1]![index]!) < 1e-7) &&
					Math.abs(basicMufMHz(there) / basicMufMHz(back) - 1) < 1e-7
				);
			}),
			{ seed: 2, numRuns: 1000 },
		);
		expect(worst).toBeLessThan(1e-4);
	});

	it("falls with distance in the large: a day and a night, each band from where it begins", () => {
		const wins = { farther: 0, all: 0 };
		for (const [utcHour, fMHz] of [
			[14, 8.4],
			[14, 12.6],
			[2, 4.1],
			[2, 6.3],
		] as const) {
			const levels = [1500, 3000, 5000, 6900].map((km) => skyWaveDb(hourAt(km, utcHour), fMHz, ISOTROPIC));
			for (let index = 1; index < levels.length; index++) {
				wins.all++;
				if (levels[index]! < levels[index - 1]!) wins.farther++;
			}
		}
		expect(wins).toEqual({ farther: 12, all: 12 });
	});

	it("joins the forms: steps at 7000 and 9000 km of no more than 0.1 dB, in both of which 1 m is walked", () => {
		let compared = 0;
		for (const km of [7000, 9000]) {
			for (const utcHour of [2, 8, 14, 20]) {
				for (const fMHz of [4.1, 8.4, 16.8]) {
					const [before, after] = [km - 0.0005, km + 0.0005].map((at) => skyWaveDb(hourAt(at, utcHour), fMHz, ISOTROPIC));
					expect(Math.abs(after! - before!)).toBeLessThan(0.1);
					compared++;
				}
			}
		}
		expect(compared).toBe(24);
	});

	it("is weaker in the skip zone than beyond it, and far above the MUF", () => {
		const night = constantIonosphere({ foF2MHz: 4, foEMHz: 0.5, zenithDeg: 130 });
		const level = (km: number, fMHz: number) => skyWaveDb(hourAt(km, 2, night), fMHz, ISOTROPIC);
		expect(level(300, 8.4)).toBeLessThan(level(2000, 8.4) - 20);
		expect(level(2500, 16.8)).toBeLessThan(level(2500, 8.4) - 20);
	});

	it("by day falls on low bands and by night on high ones", () => {
		expect(skyWaveDb(hourAt(2000, 14), 4.1, ISOTROPIC)).toBeLessThan(skyWaveDb(hourAt(2000, 2), 4.1, ISOTROPIC) - 30);
		expect(skyWaveDb(hourAt(2000, 2), 16.8, ISOTROPIC)).toBeLessThan(skyWaveDb(hourAt(2000, 14), 16.8, ISOTROPIC) - 10);
	});

	it("counts both aerials' gain: 3 dB more everywhere is 3 dB more received", () => {
		for (const km of [800, 4500, 8000, 13_000]) {
			const hour = hourAt(km, 14);
			expect(
				skyWaveDb(
					hour,
					12.6,
					pathGain(() => 3),
				) - skyWaveDb(hour, 12.6, ISOTROPIC),
			).toBeCloseTo(3, 9);
		}
	});

	it("favours the short way of a path well under half the circle, at most hours", () => {
		const to = destination(azores, 255, 6000);
		const level = (way: "short" | "long", utcHour: number) =>
			skyWaveDb(skyHour(skyDay(skyPath(azores, to, way), smooth, march), utcHour), 12.6, ISOTROPIC);
		const wins = Array.from({ length: 24 }, (_, hour) => level("short", hour) > level("long", hour)).filter((wins) => wins).length;
		expect(wins).toBeGreaterThanOrEqual(18);
	});

	it("with the winter anomaly asked for, is weaker by day in winter at middle latitudes and the same in summer", () => {
		const level = (month: number, winterAnomaly: boolean) => {
			const december = skyMonth({ year: 2027, month, sunspots: 90, winterAnomaly });
			const path = skyPath(position(55, -20), position(55, 0));
			return skyWaveDb(skyHour(skyDay(path, smoothIonosphere(2027, month), december), 12), 4.1, ISOTROPIC);
		};
		expect(level(12, true)).toBeLessThan(level(12, false) - 0.5);
		expect(level(6, true)).toBe(level(6, false));
	});
});

describe("the ceiling", () => {
	const ceilingDb = (hour: SkyHour, fMHz: number, mostGain: number) =>
		Math.max(NOTHING_DB, skyWaveCeilingDb(hour, fMHz) + 10 * Math.log10(mostGain / (fMHz * fMHz)));

	it("is never under the answer, over random circuits; and not far over it where a mode is strong", () => {
		let closest = Number.POSITIVE_INFINITY;
		fc.assert(
			fc.property(anywhere, anywhere, hourOfDay, frequency, (from, to, utcHour, fMHz) => {
				const hour = skyHour(skyDay(skyPath(from, to), smooth, march), utcHour);
				const over =
					ceilingDb(hour, fMHz, 6) -
					skyWaveDb(
						hour,
						fMHz,
						pathGain((elevationDeg) => 7.78 - elevationDeg / 20),
					);
				if (hour.near !== null) closest = Math.min(closest, over);
				return over >= -1e-9;
			}),
			{ seed: 3, numRuns: 3000 },
		);
		expect(closest).toBeLessThan(15);
	});

	it("is never under the answer, over the layers' range", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 1, max: 20_000, noNaN: true }),
				fc.record({
					foF2MHz: fc.double({ min: 1, max: 16, noNaN: true }),
					foEMHz: fc.double({ min: 0.3, max: 4.5, noNaN: true }),
					m3000: fc.double({ min: 1.8, max: 4.2, noNaN: true }),
					zenithDeg: fc.double({ min: 0, max: 180, noNaN: true }),
				}),
				frequency,
				(km, layers, fMHz) => {
					const hour = hourAt(km, 14, constantIonosphere(layers));
					return ceilingDb(hour, fMHz, 1) >= skyWaveDb(hour, fMHz, ISOTROPIC) - 1e-9;
				},
			),
			{ seed: 4, numRuns: 5000 },
		);
	});
});

describe("why", () => {
	it("adds up to the strength: modes by their losses, and the mixture of both forms", () => {
		let compared = 0;
		for (const km of [150, 900, 2400, 3600, 5500, 6999]) {
			for (const utcHour of [2, 14]) {
				for (const fMHz of [2.2, 6.3, 12.6]) {
					const hour = hourAt(km, utcHour);
					const why = skyWaveWhy(hour, fMHz, ISOTROPIC);
					const counted = why.modes.flatMap(({ losses }) => (losses === null ? [] : [losses]));
					const power = counted.reduce((sum, { totalDb }) => sum + 10 ** (-totalDb / 10), 0);
					if (counted.length === 0 || why.pathDb === NOTHING_DB) continue;
					expect(10 * Math.log10(power) + MEMORY.fieldConstant.value - 30 + FIELD_TO_POWER_DB).toBeCloseTo(why.pathDb, 8);
					expect(why.pathDb).toBe(skyWaveDb(hour, fMHz, ISOTROPIC));
					expect(why.modes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
					compared++;
				}
			}
		}
		expect(compared).toBeGreaterThan(30);
	});

	it("tells of the form for long paths from 7000 km on, of both up to 9000", () => {
		expect(skyWaveWhy(hourAt(6500, 14), 12.6, ISOTROPIC).long).toBeNull();
		const mixed = skyWaveWhy(hourAt(8000, 14), 12.6, ISOTROPIC);
		expect(mixed.pathDb).toBeLessThanOrEqual(Math.max(mixed.nearDb!, mixed.long!.pathDb));
		expect(mixed.pathDb).toBeGreaterThanOrEqual(Math.min(mixed.nearDb!, mixed.long!.pathDb));
		const far = skyWaveWhy(hourAt(12_000, 14), 12.6, ISOTROPIC);
		expect([far.modes.length, far.nearDb, far.pathDb === far.long!.pathDb]).toEqual([0, null, true]);
	});

	it("lists what of the answer rests on memory, and no more than that", () => {
		const basis = (km: number, utcHour: number, fMHz: number) => skyWaveWhy(hourAt(km, utcHour), fMHz, ISOTROPIC).basis;
		const near = basis(900, 14, 4.1);
		expect(near).toEqual(expect.arrayContaining(["absorption", "fieldConstant", "otherLosses", "controlPoints", "screening"]));
		for (const id of ["longPath", "longPathJoin", "winterAnomaly"]) expect(near).not.toContain(id);
		expect(basis(900, 2, 25)).toContain("aboveMuf");
		expect(basis(8000, 2, 8)).toContain("longPathJoin");
		const far = basis(12_000, 2, 8);
		expect(far).toEqual(expect.arrayContaining(["longPath", "winterAnomaly"]));
		expect(far).not.toContain("absorption");
	});
});
