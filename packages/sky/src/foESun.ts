import { hourAngleDeg, subsolarPoint } from "@skipwright/sphere";
import { acos, cos, type Position, sin } from "@skipwright/units";
import { type ESun, hoursAfterSunset } from "./foE.ts";

const RADIANS_PER_DEGREE = Math.PI / 180;

/** The sun at one time: what every place shares. */
export interface Sun {
	readonly overhead: Position;
	readonly sinDeclination: number;
	readonly cosDeclination: number;
}

/** @param utcMs milliseconds since 1970-01-01T00:00Z */
export function sunAt(utcMs: number): Sun {
	const overhead = subsolarPoint(utcMs);
	const declination = overhead.latDeg * RADIANS_PER_DEGREE;
	return { overhead, sinDeclination: sin(declination), cosDeclination: cos(declination) };
}

/** A place: what every hour shares. */
export interface UnderSun {
	readonly where: Position;
	readonly sinLat: number;
	readonly cosLat: number;
}

export function underSun(where: Position): UnderSun {
	const lat = where.latDeg * RADIANS_PER_DEGREE;
	return { where, sinLat: sin(lat), cosLat: cos(lat) };
}

/** The sun as the E layer over a place sees it. */
export function sunOver({ where, sinLat, cosLat }: UnderSun, { overhead, sinDeclination, cosDeclination }: Sun): ESun {
	const alongAxis = sinLat * sinDeclination;
	const across = cosLat * cosDeclination;
	const turnedDeg = hourAngleDeg(where, overhead);
	const cosZenith = alongAxis + across * cos(turnedDeg * RADIANS_PER_DEGREE);
	const zenithDeg = acos(cosZenith) / RADIANS_PER_DEGREE;
	const after = zenithDeg < 90 ? null : hoursAfterSunset(alongAxis / across, turnedDeg);
	return { zenithDeg, cosZenith, cosNoon: alongAxis + across, hoursAfterSunset: after };
}
