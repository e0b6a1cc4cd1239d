import { hourAngleDeg, subsolarPoint } from "@skipwright/sphere";
import { acos, cos, type Position, sin } from "@skipwright/units";
import { type ESun, hoursAfterSunset } from "./foE.ts";

const RADIANS_PER_DEGREE = Math.PI / 180;

/** The sun at one time: what every place shares. */
export interface Sun {
	readonly overhead: Position;
	readonly sinDeclination: number;
	readonly cosDeclination: number;
	/** Of the longitude over which it stands. */
	readonly sinLon: number;
	readonly cosLon: number;
}

/** @param utcMs milliseconds since 1970-01-01T00:00Z */
export function sunAt(utcMs: number): Sun {
	const overhead = subsolarPoint(utcMs);
	const declination = overhead.latDeg * RADIANS_PER_DEGREE;
	const lon = overhead.lonDeg * RADIANS_PER_DEGREE;
	return { overhead, sinDeclination: sin(declination), cosDeclination: cos(declination), sinLon: sin(lon), cosLon: cos(lon) };
}

/** A place: what every hour shares. */
export interface UnderSun {
	readonly where: Position;
	readonly sinLat: number;
	readonly cosLat: number;
	readonly sinLon: number;
	readonly cosLon: number;
}

export function underSun(where: Position): UnderSun {
	const lat = where.latDeg * RADIANS_PER_DEGREE;
	const lon = where.lonDeg * RADIANS_PER_DEGREE;
	return { where, sinLat: sin(lat), cosLat: cos(lat), sinLon: sin(lon), cosLon: cos(lon) };
}

/** The sun as the E layer over a place sees it. */
export function sunOver(place: UnderSun, sun: Sun): ESun {
	const alongAxis = place.sinLat * sun.sinDeclination;
	const across = place.cosLat * sun.cosDeclination;
	const cosHourAngle = place.cosLon * sun.cosLon + place.sinLon * sun.sinLon;
	const cosZenith = alongAxis + across * cosHourAngle;
	const zenithDeg = acos(cosZenith) / RADIANS_PER_DEGREE;
	const after = zenithDeg < 90 ? null : hoursAfterSunset(alongAxis / across, hourAngleDeg(place.where, sun.overhead));
	return { zenithDeg, cosZenith, cosNoon: alongAxis + across, hoursAfterSunset: after };
}
