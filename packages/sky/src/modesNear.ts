import { absorptionIndex, winterAnomaly } from "./absorption.ts";
import { absorptionPlaces, eMufPlaces, f2MufPlaces, mirrorPlaces, type PointAt, type PointDay, screeningPlaces } from "./controlPoints.ts";
import { f2LayerAt, f2MirrorAt } from "./controlPointsF2.ts";
import { legLength, sinElevation } from "./elevation.ts";
import { simpleMirrorKm } from "./mirrorHeight.ts";
import type { Absorbing, NearHour } from "./modes.ts";
import { LEAST_SIN_ELEVATION } from "./mufE.ts";
import { f2MufMHz, f2MufOfLongestHopMHz, longestHopKm } from "./mufF2.ts";
import type { SkyPath } from "./path.ts";
import type { Hop } from "./pathHop.ts";
import type { SkyMonth } from "./skyWaveMonth.ts";

/** Numbers of hops by the F2 layer that count, from the least on: ITU-R P.533 section 5.2. */
export const F2_ORDERS = 6;

/** The control points of a path up to 9000 km by use, each asked for once. */
export interface NearPoints {
	readonly middle: PointDay;
	readonly eMuf: readonly PointDay[];
	readonly screening: readonly PointDay[];
	readonly eAbsorption: readonly PointDay[];
	/** @param endHop null up to the longest hop, beyond it one of the least number of hops */
	readonly f2: (endHop: Hop | null) => F2Points;
}

export interface F2Points {
	readonly muf: readonly PointDay[];
	readonly mirrors: readonly PointDay[];
	readonly absorption: readonly PointDay[];
}

export function nearPoints({ km }: SkyPath, pointAt: PointAt): NearPoints {
	const known = new Map<number, F2Points>();
	const at = (places: readonly number[]) => places.map(pointAt);
	return {
		middle: pointAt(km / 2),
		eMuf: at(eMufPlaces(km)),
		screening: at(screeningPlaces(km)),
		eAbsorption: at(absorptionPlaces(km, null)),
		f2(endHop) {
			const key = endHop?.count ?? 0;
			const before = known.get(key);
			if (before !== undefined) return before;
			const hopKm = endHop?.km ?? null;
			const points = {
				muf: at(f2MufPlaces(km, hopKm)),
				mirrors: at(mirrorPlaces(km, hopKm)),
				absorption: at(absorptionPlaces(km, hopKm)),
			};
			known.set(key, points);
			return points;
		},
	};
}

export function nearHour(path: SkyPath, points: NearPoints, month: SkyMonth, hour: number): NearHour {
	const layer = f2LayerAt(points.middle, hour);
	const longestKm = longestHopKm(layer);
	const fewest = fewestHops(path.hops, longestKm, simpleMirrorKm(points.middle.m3000[hour]!));
	const isLong = path.km > longestKm;
	const f2 = points.f2(isLong ? path.hops[fewest]! : null);
	const f2Hops = path.hops.slice(fewest, fewest + F2_ORDERS);
	const f2MufsMHz = isLong ? longMufsMHz(f2.muf, f2Hops, hour) : f2Hops.map(({ km }) => f2MufMHz(layer, km, longestKm));
	const eAbsorbing = absorbing(points.eAbsorption, month, hour);
	return {
		path,
		foEMHz: least(points.eMuf, hour),
		f2Hops,
		f2MufsMHz,
		f2HighestMufMHz: Math.max(...f2MufsMHz),
		mirrors: f2.mirrors.map((point) => f2MirrorAt(point, hour, month.sunspots)),
		screeningFoEMHz: greatest(points.screening, hour),
		eAbsorbing,
		f2Absorbing: isLong ? absorbing(f2.absorption, month, hour) : eAbsorbing,
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

/**
 * MUFs of a path longer than its longest hop: that of the longest hop, at each end's control point times what the hops' MUF is to that
 * by the least number of hops, dmax not capped; the lower of the two holds. ITU-R P.533 section 3.5.2.
 */
function longMufsMHz(ends: readonly PointDay[], hops: readonly Hop[], hour: number): readonly number[] {
	const fewestKm = hops[0]!.km;
	const mufs = hops.map(() => Number.POSITIVE_INFINITY);
	for (const point of ends) {
		const layer = f2LayerAt(point, hour);
		const perMHz = f2MufOfLongestHopMHz(layer) / f2MufMHz(layer, fewestKm, layer.longestHopKm);
		for (let mode = 0; mode < hops.length; mode++) {
			mufs[mode] = Math.min(mufs[mode]!, perMHz * f2MufMHz(layer, hops[mode]!.km, layer.longestHopKm));
		}
	}
	return mufs;
}

function absorbing(points: readonly PointDay[], { month, sunspots, winterAnomaly: counted }: SkyMonth, hour: number): Absorbing {
	let index = 0;
	let gyroMHz = 0;
	for (const { where, zenithDeg, gyro100MHz } of points) {
		index += absorptionIndex(zenithDeg[hour]!, sunspots) * (counted ? winterAnomaly(month, where.latDeg) : 1);
		gyroMHz += gyro100MHz;
	}
	return { index: index / points.length, gyroMHz: gyroMHz / points.length };
}

function least(points: readonly PointDay[], hour: number): number {
	return points.reduce((lowest, { foEMHz }) => Math.min(lowest, foEMHz[hour]!), Number.POSITIVE_INFINITY);
}

function greatest(points: readonly PointDay[], hour: number): number {
	return points.reduce((highest, { foEMHz }) => Math.max(highest, foEMHz[hour]!), 0);
}
