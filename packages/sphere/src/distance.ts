import type { Position } from "@skipwright/units";
import { CIRCUMFERENCE_KM, EARTH_RADIUS_KM } from "./earth.ts";
import { angleBetween, vectorOf } from "./vector.ts";

/** Of the two ways along a great circle, the shorter or the one round the other side of the Earth. */
export type Way = "short" | "long";

/**
 * Great-circle distance in km, 0 to half the circumference, or for the long way the rest of it. Good to a micrometre on the
 * sphere at any distance; against the real, flattened Earth up to 0.56 % out.
 */
export function distanceKm(from: Position, to: Position, way: Way = "short"): number {
	const shortKm = EARTH_RADIUS_KM * angleBetween(vectorOf(from), vectorOf(to));
	return way === "short" ? shortKm : CIRCUMFERENCE_KM - shortKm;
}
