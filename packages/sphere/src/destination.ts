import { cos, type Position, sin } from "@skipwright/units";
import { RADIANS_PER_DEGREE } from "./angle.ts";
import { EARTH_RADIUS_KM } from "./earth.ts";
import { positionOf, turn, type Vector, vectorOf } from "./vector.ts";

/** The place reached from `from` by leaving it on a true bearing and keeping to the great circle for `km`; a negative `km` goes back. */
export function destination(from: Position, bearingDeg: number, km: number): Position {
	return positionOf(turn(vectorOf(from), headingOf(from, bearingDeg), km / EARTH_RADIUS_KM));
}

/** The horizontal direction of a bearing at a place. */
function headingOf({ latDeg, lonDeg }: Position, bearingDeg: number): Vector {
	const lat = latDeg * RADIANS_PER_DEGREE;
	const lon = lonDeg * RADIANS_PER_DEGREE;
	const north = cos(bearingDeg * RADIANS_PER_DEGREE);
	const east = sin(bearingDeg * RADIANS_PER_DEGREE);
	return {
		x: -north * sin(lat) * cos(lon) - east * sin(lon),
		y: -north * sin(lat) * sin(lon) + east * cos(lon),
		z: north * cos(lat),
	};
}
