import { type Track, type Vector, vectorAlong } from "@skipwright/sphere";
import { asin, atan2, cos, sin } from "@skipwright/units";

const RADIANS = Math.PI / 180;

/**
 * North pole of the centred dipole, 78.5 north 68.2 west: ITU-R P.533's and P.842's geomagnetic latitude, as quoted by others;
 * 47 CFR 73.190 prints the same form with 69.
 */
const POLE: Vector = {
	x: cos(78.5 * RADIANS) * cos(-68.2 * RADIANS),
	y: cos(78.5 * RADIANS) * sin(-68.2 * RADIANS),
	z: sin(78.5 * RADIANS),
};

/** Degrees from the geomagnetic equator, 0 to 90, of a direction from the Earth's centre. */
export function geomagneticLatDeg(where: Vector): number {
	return asin(Math.min(1, Math.abs(alongPole(where)))) / RADIANS;
}

/** The most degrees from the geomagnetic equator on a track between two fractions of it. */
export function highestGeomagneticLatDeg(track: Track, fromFraction: number, toFraction: number): number {
	// along the circle the sine goes as A cos(angle) + B sin(angle): highest at atan2(B, A), lowest half a turn from it
	const top = atan2(alongPole(track.ahead), alongPole(track.start));
	const first = Math.min(fromFraction * track.angle, toFraction * track.angle);
	const last = Math.max(fromFraction * track.angle, toFraction * track.angle);
	const extreme = top + Math.PI * Math.ceil((first - top) / Math.PI);
	const fractions = extreme <= last ? [fromFraction, toFraction, extreme / track.angle] : [fromFraction, toFraction];
	return Math.max(...fractions.map((fraction) => geomagneticLatDeg(vectorAlong(track, fraction))));
}

function alongPole({ x, y, z }: Vector): number {
	return x * POLE.x + y * POLE.y + z * POLE.z;
}
