import { EARTH_RADIUS_KM } from "@skipwright/sphere";
import { atan2 } from "@skipwright/units";
import type { Hop } from "./pathHop.ts";

/*
 * A ray from the ground to a mirror over the middle of its hop. In units of the mirror's distance from the Earth's centre its leg goes
 * sin(half) sideways and cos(half) - R0 / (R0 + h) upwards: ITU-R P.533's elevation formula, tan = cot(half) - R0 / (R0 + h) csc(half), and
 * slant range without a division by a short hop's angle.
 */

/** Length of one leg over the mirror's distance from the Earth's centre. */
export function legLength({ sinHalf, cosHalf }: Hop, mirrorKm: number): number {
	const up = cosHalf - EARTH_RADIUS_KM / (EARTH_RADIUS_KM + mirrorKm);
	return Math.sqrt(sinHalf * sinHalf + up * up);
}

/** @param leg from `legLength` of the same hop and mirror */
export function sinElevation({ cosHalf }: Hop, mirrorKm: number, leg: number): number {
	return (cosHalf - EARTH_RADIUS_KM / (EARTH_RADIUS_KM + mirrorKm)) / leg;
}

export function cosElevation({ sinHalf }: Hop, leg: number): number {
	return sinHalf / leg;
}

/** km along the ray by all hops, P.533's virtual slant range p'. */
export function slantKm({ count }: Hop, mirrorKm: number, leg: number): number {
	return 2 * count * (EARTH_RADIUS_KM + mirrorKm) * leg;
}

/** Degrees over the horizon at which the ray leaves; under it, negative. */
export function elevationDeg({ sinHalf, cosHalf }: Hop, mirrorKm: number): number {
	return (atan2(cosHalf - EARTH_RADIUS_KM / (EARTH_RADIUS_KM + mirrorKm), sinHalf) * 180) / Math.PI;
}

/** 1 / cos of the angle from the vertical at which a ray of that elevation passes a height. */
export function secIncidence(cosineOfElevation: number, heightKm: number): number {
	const sine = (EARTH_RADIUS_KM * cosineOfElevation) / (EARTH_RADIUS_KM + heightKm);
	return 1 / Math.sqrt(1 - sine * sine);
}
