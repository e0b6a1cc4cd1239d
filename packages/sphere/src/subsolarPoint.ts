import { asin, atan2, cos, type Position, position, sin } from "@skipwright/units";
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE, wrap180, wrap360 } from "./angle.ts";

const MS_PER_DAY = 86_400_000;
/** Days from 1970-01-01T00:00Z to the epoch J2000, 2000-01-01T12:00Z. */
const J2000_DAY = 10_957.5;

/**
 * The place where the sun stands overhead: its latitude is the sun's declination, and its longitude holds the equation of
 * time. Good to 0.01 degree from 1990 to 2050, as measured by the tests.
 * Low-precision formula of the Astronomical Almanac, section C (named from memory).
 * @param utcMs milliseconds since 1970-01-01T00:00Z
 */
export function subsolarPoint(utcMs: number): Position {
	const days = utcMs / MS_PER_DAY - J2000_DAY;
	const anomaly = radians(357.528 + 0.9856003 * days);
	const meanLonDeg = 280.46 + 0.9856474 * days;
	const eclipticLon = radians(meanLonDeg + 1.915 * sin(anomaly) + 0.02 * sin(2 * anomaly));
	const obliquity = radians(23.439 - 0.0000004 * days);
	const declination = asin(sin(obliquity) * sin(eclipticLon));
	const rightAscensionDeg = atan2(cos(obliquity) * sin(eclipticLon), cos(eclipticLon)) * DEGREES_PER_RADIAN;
	const equationOfTimeDeg = wrap180(meanLonDeg - rightAscensionDeg);
	const meanSunLonDeg = wrap180(-360 * (utcMs / MS_PER_DAY - 0.5 - Math.floor(utcMs / MS_PER_DAY)));
	return position(declination * DEGREES_PER_RADIAN, meanSunLonDeg - equationOfTimeDeg);
}

function radians(degrees: number): number {
	return wrap360(degrees) * RADIANS_PER_DEGREE;
}
