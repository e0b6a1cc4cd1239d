import { placeAlong } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import type { SkyPath } from "./path.ts";

const { middleUpTo, fromEnds } = MEMORY.controlPoints.value;

/** The ionosphere over one place in one month; each series by UTC hour, 24 long. */
export interface PointDay {
	readonly where: Position;
	readonly foF2MHz: ArrayLike<number>;
	/** M(3000)F2, not under 1.8 or so: B misbehaves near 2. */
	readonly m3000: ArrayLike<number>;
	readonly foEMHz: ArrayLike<number>;
	/** Degrees of the sun from the zenith. */
	readonly zenithDeg: ArrayLike<number>;
	/** Gyrofrequency at 300 and at 100 km. */
	readonly gyro300MHz: number;
	readonly gyro100MHz: number;
}

/** Month and sunspots are chosen already. Pure; a caller that asks twice for a place may remember it. */
export type Ionosphere = (where: Position) => PointDay;

/** The control points of one path in one month, each asked for when first needed. Distances in km from the path's start. */
export type PointAt = (km: number) => PointDay;

export function pointsOf({ track, km: pathKm }: SkyPath, ionosphere: Ionosphere): PointAt {
	const known = new Map<number, PointDay>();
	return (km) => {
		const before = known.get(km);
		if (before !== undefined) return before;
		const point = ionosphere(placeAlong(track, pathKm === 0 ? 0 : km / pathKm));
		known.set(km, point);
		return point;
	};
}

/*
 * ITU-R P.533 table 1, as km from the start; all symmetrical. `MEMORY.controlPoints`. F2's depend on whether the path is longer than the
 * longest hop: then `endHopKm` is the length of one of its least number of hops, otherwise null.
 */

export function eMufPlaces(pathKm: number): readonly number[] {
	return pathKm <= middleUpTo ? [pathKm / 2] : [fromEnds, pathKm - fromEnds];
}

export function screeningPlaces(pathKm: number): readonly number[] {
	return eMufPlaces(pathKm);
}

export function f2MufPlaces(pathKm: number, endHopKm: number | null): readonly number[] {
	return endHopKm === null ? [pathKm / 2] : [endHopKm / 2, pathKm - endHopKm / 2];
}

export function mirrorPlaces(pathKm: number, endHopKm: number | null): readonly number[] {
	return endHopKm === null ? [pathKm / 2] : [endHopKm / 2, pathKm / 2, pathKm - endHopKm / 2];
}

export function absorptionPlaces(pathKm: number, endHopKm: number | null): readonly number[] {
	if (pathKm <= middleUpTo) return [pathKm / 2];
	const places = [fromEnds, pathKm / 2, pathKm - fromEnds];
	return endHopKm === null ? places : [...places, endHopKm / 2, pathKm - endHopKm / 2];
}
