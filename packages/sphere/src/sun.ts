import type { Position } from "@skipwright/units";
import { DEGREES_PER_RADIAN, wrap180 } from "./angle.ts";
import { angleBetween, vectorOf } from "./vector.ts";

/**
 * Angle in degrees, 0 to 180, of the sun's centre from the zenith, without refraction.
 * @param subsolar from `subsolarPoint`: one call serves every place at that time
 */
export function solarZenithDeg(where: Position, subsolar: Position): number {
	return angleBetween(vectorOf(where), vectorOf(subsolar)) * DEGREES_PER_RADIAN;
}

/** Degrees, [-180, 180), by which the sun has passed the meridian of `where`; negative before local noon. */
export function hourAngleDeg(where: Position, subsolar: Position): number {
	return wrap180(where.lonDeg - subsolar.lonDeg);
}
