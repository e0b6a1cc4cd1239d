import { destination, distanceKm } from "@skipwright/sphere";
import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { type Constant, constantIonosphere } from "../truth/madeUpIonosphere.ts";
import { absorptionIndex } from "./absorption.ts";
import { auroralLossDb } from "./auroral.ts";
import type { Ionosphere } from "./controlPoints.ts";
import { elevationDeg, secIncidence } from "./elevation.ts";
import { f2Mirror, mirrorKm } from "./mirrorHeight.ts";
import { f2Layer, f2MufMHz, f2MufOfLongestHopMHz, longestHopKm } from "./mufF2.ts";
import { skyPath } from "./path.ts";
import { ISOTROPIC } from "./pathGain.ts";
import { hopOf } from "./pathHop.ts";
import { skyDay, skyHour } from "./skyWaveHour.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz, operationalMuf, supportChance } from "./skyWaveMuf.ts";
import { skyWaveWhy } from "./skyWaveWhy.ts";

const from = position(10, -30);
const month = skyMonth({ year: 2027, month: 3, sunspots: 60 });
const DAY = { foF2MHz: 8, m3000: 3, foEMHz: 3, zenithDeg: 40 };
const NIGHT = { foF2MHz: 5, m3000: 3, foEMHz: 0.5, zenithDeg: 130 };

const hourOf = (km: number, ionosphere: Ionosphere) => skyHour(skyDay(skyPath(from, destination(from, 90, km)), ionosphere, month), 12);
const whyOf = (km: number, values: Constant, fMHz: number) => skyWaveWhy(hourOf(km, constantIonosphere(values)), fMHz, ISOTROPIC);
/** Other values beyond a distance from the path's start than before it. */
const changingAt =
	(km: number, before: Constant, beyond: Constant): Ionosphere =>
	(where) =>
		constantIonosphere(distanceKm(from, where) < km ? before : beyond)(where);
const layerOf = ({ foF2MHz, m3000, foEMHz }: typeof DAY) => f2Layer({ foF2MHz, m3000, foEMHz, gyroMHz: 1.1 });

describe("modes up to 9000 km", () => {
	it("are six by F2 from the least number of hops on, and three by E up to 4000 km", () => {
		const modes = (km: number) => whyOf(km, DAY, 10).modes.map(({ layer, hops }) => `${hops}${layer}`);
		expect(modes(1500)).toEqual(["1E", "2E", "3E", "1F2", "2F2", "3F2", "4F2", "5F2", "6F2"]);
		expect(modes(3900)).toEqual(["2E", "3E", "4E", "2F2", "3F2", "4F2", "5F2", "6F2", "7F2"]); // by the simple mirror one hop leaves under 3 degrees
		expect(modes(6000)).toEqual(["2F2", "3F2", "4F2", "5F2", "6F2", "7F2"]);
	});

	it("leave under 3 degrees, or are screened, and then do not count", () => {
		const { modes } = whyOf(2500, NIGHT, 4);
		expect(modes.map(({ layer, hops, fate }) => `${hops}${layer} ${fate}`)).toContain("1F2 too low");
		for (const { fate, elevationDeg: elevation, losses } of modes) {
			if (fate === "too low") expect(elevation).toBeLessThan(3);
			else expect(elevation).toBeGreaterThanOrEqual(3);
			expect(losses === null).toBe(fate !== "counts");
		}
		const day = whyOf(1500, DAY, 8).modes.filter(({ layer }) => layer === "F2");
		expect(day.map(({ fate }) => fate).slice(0, 3)).toEqual(["screened", "counts", "counts"]);
		for (const { fate, screeningMHz } of day) expect(fate === "screened").toBe(8 < screeningMHz!);
	});

	it("keep the ray of the MUF above it", () => {
		const at = (fMHz: number) => whyOf(800, NIGHT, fMHz).modes.find(({ layer, hops }) => layer === "F2" && hops === 1)!;
		const muf = at(5).mufMHz;
		expect(at(muf * 1.5).mirrorKm).toBe(at(muf).mirrorKm);
		expect(at(muf * 0.9).mirrorKm).not.toBe(at(muf).mirrorKm);
	});

	it("lose 2 dB at each reflection from the ground, 8.72 all together, and by absorption what hops and slants make of it", () => {
		const why = whyOf(2400, DAY, 18);
		const two = why.modes.find(({ layer, hops }) => layer === "F2" && hops === 2)!;
		const i100 = secIncidence(Math.cos((two.elevationDeg * Math.PI) / 180), 100);
		const index = absorptionIndex(40, 60);
		expect(why.absorbing).toEqual({ index: expect.closeTo(index, 12), gyroMHz: expect.closeTo(1.2, 12) });
		expect(two.losses!.groundDb).toBe(2);
		expect(two.losses!.otherDb).toBe(8.72);
		expect(two.losses!.absorptionDb).toBeCloseTo((2 * 677.2 * i100 * index) / ((18 + 1.2) ** 1.98 + 10.2), 9);
	});

	it("lose by aurora what stands in the table for the path's middle at its local time", () => {
		const north = position(58, -40);
		const path = skyPath(north, destination(north, 90, 2000));
		const localHour = 5 + path.middle.lonDeg / 15;
		const hour = skyHour(skyDay(path, constantIonosphere(NIGHT), month), 5);
		const expected = auroralLossDb({ pathKm: path.km, geomagneticLatDeg: path.geomagneticLatDeg, season: "equinox", localHour });
		expect(expected).toBeGreaterThan(5);
		expect(hour.auroralDb).toBe(expected);
		expect(skyWaveWhy(hour, 6, ISOTROPIC).modes.find(({ fate }) => fate === "counts")!.losses!.auroralDb).toBe(expected);
	});
});

describe("MUFs", () => {
	it("by E take the lower foE of two points over 2000 km; screening takes the higher", () => {
		const ionosphere = changingAt(1500, { ...DAY, foEMHz: 3.4 }, { ...DAY, foEMHz: 2.2 });
		const hour = hourOf(3000, ionosphere);
		expect(hour.near!.foEMHz).toBe(2.2);
		const screened = skyWaveWhy(hour, 8, ISOTROPIC).modes.find(({ layer }) => layer === "F2")!;
		const i110 = secIncidence(Math.cos((screened.elevationDeg * Math.PI) / 180), 110);
		expect(screened.screeningMHz).toBeCloseTo(1.05 * 3.4 * i110, 9);
		expect(hour.eMufMHz).toBeCloseTo(2.2 * secIncidence(Math.cos((elevationDeg(hopOf(3000, 2), 110) * Math.PI) / 180), 110), 9);
		expect(hourOf(4001, ionosphere).eMufMHz).toBe(0);
	});

	it("by F2 up to the longest hop come from the middle alone", () => {
		const ionosphere = changingAt(1200, DAY, { ...DAY, foF2MHz: 5 });
		expect(hourOf(2300, ionosphere).f2MufMHz).toBeCloseTo(f2MufMHz(layerOf(DAY), 2300, longestHopKm(layerOf(DAY))), 9);
	});

	it("by F2 on longer paths are the longest hop's at the worse end, and fall with more hops", () => {
		const worse = { ...DAY, foF2MHz: 5 };
		for (const ionosphere of [changingAt(4000, DAY, worse), changingAt(4000, worse, DAY)]) {
			const { near, f2MufMHz: muf } = hourOf(7000, ionosphere);
			expect(muf).toBeCloseTo(f2MufOfLongestHopMHz(layerOf(worse)), 9);
			const layer = layerOf(worse);
			const [first, second] = [near!.f2Hops[0]!, near!.f2Hops[1]!];
			const ratio = f2MufMHz(layer, second.km, layer.longestHopKm) / f2MufMHz(layer, first.km, layer.longestHopKm);
			expect(near!.f2MufsMHz[1]).toBeCloseTo(muf * ratio, 9);
			expect([...near!.f2MufsMHz]).toEqual([...near!.f2MufsMHz].sort((a, b) => b - a));
		}
	});

	it("of the path are the better layer's, and operational ones go by season, day and power", () => {
		const hour = hourOf(1800, constantIonosphere({ ...DAY, foF2MHz: 4, foEMHz: 3.5 }));
		expect(basicMufMHz(hour)).toBe(hour.eMufMHz);
		expect(hour.eMufMHz).toBeGreaterThan(hour.f2MufMHz);
		const day = hourOf(2500, constantIonosphere(DAY)); // noon of an equinox, at a low latitude
		expect(operationalMuf(day, 30)).toEqual({
			medianMHz: expect.closeTo(1.15 * day.f2MufMHz, 9),
			nineDaysMHz: expect.closeTo(0.87 * 1.15 * day.f2MufMHz, 9),
			oneDayMHz: expect.closeTo(1.16 * 1.15 * day.f2MufMHz, 9),
		});
		const night = skyHour(skyDay(skyPath(from, destination(from, 90, 2500)), constantIonosphere(NIGHT), month), 1);
		expect(operationalMuf(night, 31).medianMHz).toBeCloseTo(1.3 * night.f2MufMHz, 9);
	});
});

describe("chance of support", () => {
	it("is the better layer's", () => {
		const hour = hourOf(1800, constantIonosphere({ ...DAY, foF2MHz: 4, foEMHz: 3.5 }));
		expect(supportChance(hour, hour.eMufMHz)).toBe(0.5);
		expect(supportChance(hour, hour.f2MufMHz)).toBeGreaterThan(0.9); // E carries it
		const byF2 = hourOf(5000, constantIonosphere(DAY));
		expect(supportChance(byF2, byF2.f2MufMHz)).toBe(0.5);
	});
});

describe("mirrors", () => {
	it("on paths over the longest hop are the mean of the ends' and the middle's", () => {
		const [near, far] = [
			{ ...NIGHT, m3000: 2.7 },
			{ ...NIGHT, m3000: 3.3 },
		];
		const { modes } = skyWaveWhy(hourOf(6000, changingAt(2000, near, far)), 7, ISOTROPIC);
		const two = modes.find(({ hops }) => hops === 2)!;
		const height = (values: typeof NIGHT) => mirrorKm(f2Mirror({ ...values, sunspots: 60 }), 3000, 7);
		expect(two.mirrorKm).toBeCloseTo((height(near) + 2 * height(far)) / 3, 9);
	});
});
