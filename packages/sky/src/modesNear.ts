import { absorptionIndex, winterAnomaly } from "./absorption.ts";
import { absorptionPlaces, eMufPlaces, f2MufPlaces, mirrorPlaces, type PointAt, type PointDay, screeningPlaces } from "./controlPoints.ts";
import { f2LayerAt, f2MirrorAt } from "./controlPointsF2.ts";
import { legLength, sinElevation } from "./elevation.ts";
import { simpleMirrorKm } from "./mirrorHeight.ts";
import type { Absorbing, NearHour } from "./modes.ts";
import { LEAST_SIN_ELEVATION } from "./mufE.ts";
import { F2_ORDERS, type F2Layer, f2MufMHz, f2MufOfLongestHopMHz, longestHopKm, standardShare } from "./mufF2.ts";
import type { SkyPath } from "./path.ts";
import type { Hop } from "./pathHop.ts";
import type { SkyMonth } from "./skyWaveMonth.ts";

/** The control points of a path up to 9000 km by use, each asked for once. */
export interface NearPoints {
	readonly middle: PointDay;
	readonly eMuf: readonly PointDay[];
	readonly screening: readonly PointDay[];
	readonly eAbsorption: AbsorptionPoints;
	/** @param endHop null up to the longest hop, beyond it one of the least number of hops */
	readonly f2: (endHop: Hop | null) => F2Points;
}

export interface F2Points {
	readonly muf: readonly PointDay[];
	readonly mirrors: readonly PointDay[];
	/** Those of the E layer first. */
	readonly absorption: AbsorptionPoints;
}

export interface AbsorptionPoints {
	readonly points: readonly PointDay[];
	/** Mean at 100 km. */
	readonly gyroMHz: number;
}

export function nearPoints({ km }: SkyPath, pointAt: PointAt): NearPoints {
	const known: F2Points[] = [];
	const at = (places: readonly number[]) => places.map(pointAt);
	return {
		middle: pointAt(km / 2),
		eMuf: at(eMufPlaces(km)),
		screening: at(screeningPlaces(km)),
		eAbsorption: absorptionPoints(at(absorptionPlaces(km, null))),
		f2(endHop) {
			const key = endHop?.count ?? 0;
			const before = known[key];
			if (before !== undefined) return before;
			const hopKm = endHop?.km ?? null;
			const points = {
				muf: at(f2MufPlaces(km, hopKm)),
				mirrors: at(mirrorPlaces(km, hopKm)),
				absorption: absorptionPoints(at(absorptionPlaces(km, hopKm))),
			};
			known[key] = points;
			return points;
		},
	};
}

function absorptionPoints(points: readonly PointDay[]): AbsorptionPoints {
	return { points, gyroMHz: points.reduce((sum, { gyro100MHz }) => sum + gyro100MHz, 0) / points.length };
}

export function nearHour(path: SkyPath, points: NearPoints, month: SkyMonth, hour: number): NearHour {
	const layer = f2LayerAt(points.middle, hour);
	const longestKm = longestHopKm(layer);
	const fewest = fewestHops(path.hops, longestKm, simpleMirrorKm(points.middle.m3000[hour]!));
	const isLong = path.km > longestKm;
	const f2 = points.f2(isLong ? path.hops[fewest]! : null);
	const f2Hops = path.hops.slice(fewest, fewest + F2_ORDERS);
	const f2MufsMHz = isLong ? longMufsMHz(f2.muf, f2Hops, hour) : shortMufsMHz(layer, f2Hops, longestKm);
	const eSum = indexSum(points.eAbsorption.points, month, hour);
	const eAbsorbing = absorbing(points.eAbsorption, eSum);
	return {
		path,
		foEMHz: leastFoE(points.eMuf, hour),
		f2Hops,
		f2MufsMHz,
		f2HighestMufMHz: greatestOf(f2MufsMHz),
		mirrors: f2.mirrors.map((point) => f2MirrorAt(point, hour, month.sunspots)),
		screeningFoEMHz: greatestFoE(points.screening, hour),
		eAbsorbing,
		f2Absorbing: isLong
			? absorbing(f2.absorption, indexSum(f2.absorption.points, month, hour, points.eAbsorption.points.length, eSum))
			: eAbsorbing,
	};
}

/** Index of the first hops that are short enough and leave high enough, by the simple mirror; the last that leaves room for the rest, if none do. */
function fewestHops(hops: readonly Hop[], longestKm: number, mirrorKm: number): number {
	const last = hops.length - F2_ORDERS;
	for (let index = 0; index < last; index++) {
		const hop = hops[index]!;
		if (hop.km <= longestKm && sinElevation(hop, mirrorKm, legLength(hop, mirrorKm)) >= LEAST_SIN_ELEVATION) return index;
	}
	return last;
}

/** MUFs of a path up to its longest hop: all by the layer over its middle. */
function shortMufsMHz(layer: F2Layer, hops: readonly Hop[], longestKm: number): readonly number[] {
	const standard = standardShare(longestKm);
	return hops.map(({ km }) => f2MufMHz(layer, km, longestKm, standard));
}

/**
 * MUFs of a path longer than its longest hop: that of the longest hop, at each end's control point times what the hops' MUF is to that
 * by the least number of hops, dmax not capped; the lower of the two holds. ITU-R P.533 section 3.5.2.
 */
function longMufsMHz(ends: readonly PointDay[], hops: readonly Hop[], hour: number): readonly number[] {
	const mufs = hops.map(() => Number.POSITIVE_INFINITY);
	for (const point of ends) {
		const layer = f2LayerAt(point, hour);
		const { longestHopKm: longestKm } = layer;
		const standard = standardShare(longestKm);
		const perMHz = f2MufOfLongestHopMHz(layer) / f2MufMHz(layer, hops[0]!.km, longestKm, standard);
		for (let mode = 0; mode < hops.length; mode++) {
			mufs[mode] = Math.min(mufs[mode]!, perMHz * f2MufMHz(layer, hops[mode]!.km, longestKm, standard));
		}
	}
	return mufs;
}

/** Sum of `absorptionIndex` over control points, from one of them on, added to that of those before it. */
function indexSum(points: readonly PointDay[], { month, sunspots, winterAnomaly: counted }: SkyMonth, hour: number, from = 0, before = 0) {
	let sum = before;
	for (let i = from; i < points.length; i++) {
		const { where, zenithDeg } = points[i]!;
		sum += absorptionIndex(zenithDeg[hour]!, sunspots) * (counted ? winterAnomaly(month, where.latDeg) : 1);
	}
	return sum;
}

function absorbing({ points, gyroMHz }: AbsorptionPoints, indices: number): Absorbing {
	return { index: indices / points.length, gyroMHz };
}

function leastFoE(points: readonly PointDay[], hour: number): number {
	let least = Number.POSITIVE_INFINITY;
	for (const { foEMHz } of points) least = Math.min(least, foEMHz[hour]!);
	return least;
}

function greatestFoE(points: readonly PointDay[], hour: number): number {
	let greatest = 0;
	for (const { foEMHz } of points) greatest = Math.max(greatest, foEMHz[hour]!);
	return greatest;
}

function greatestOf(values: readonly number[]): number {
	let greatest = 0;
	for (const value of values) greatest = Math.max(greatest, value);
	return greatest;
}
