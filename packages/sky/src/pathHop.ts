import { EARTH_RADIUS_KM } from "@skipwright/sphere";
import { cos, sin } from "@skipwright/units";

/** A path cut into equal hops. */
export interface Hop {
	/** How many make the path. */
	readonly count: number;
	/** Length of one along the ground. */
	readonly km: number;
	/** Sine and cosine of half the angle that one spans at the Earth's centre. */
	readonly sinHalf: number;
	readonly cosHalf: number;
}

export function hopOf(pathKm: number, count: number): Hop {
	const km = pathKm / count;
	const half = km / (2 * EARTH_RADIUS_KM);
	return { count, km, sinHalf: sin(half), cosHalf: cos(half) };
}
