import type { Position } from "@skipwright/units";
import type { Way } from "./distance.ts";
import { EARTH_RADIUS_KM } from "./earth.ts";
import { angleBetween, cross, lengthOf, positionOf, turn, type Vector, vectorOf } from "./vector.ts";

/** A great circle from one place to another, worked out once so that many places on it come cheap. */
export interface Track {
	readonly start: Vector;
	/** Square to `start`, on the side of the end. */
	readonly ahead: Vector;
	/** Radians from start to end: 0 to pi, or for the long way -2 pi to -pi, as it sets out backwards. */
	readonly angle: number;
	readonly km: number;
}

/** Where both are one place, or antipodes, the circle is that through the poles. */
export function trackBetween(from: Position, to: Position, way: Way = "short"): Track {
	const start = vectorOf(from);
	const end = vectorOf(to);
	const shortAngle = angleBetween(start, end);
	const angle = way === "short" ? shortAngle : shortAngle - 2 * Math.PI;
	return { start, ahead: towards(start, end), angle, km: EARTH_RADIUS_KM * Math.abs(angle) };
}

/** The direction from the Earth's centre at a fraction of the way: 0 the start, 1 the end, beyond them it goes on. */
export function vectorAlong({ start, ahead, angle }: Track, fraction: number): Vector {
	return turn(start, ahead, fraction * angle);
}

/** The place at a fraction of the way, as `vectorAlong`. */
export function placeAlong(track: Track, fraction: number): Position {
	return positionOf(vectorAlong(track, fraction));
}

/** The unit vector square to `start` on the side of `end`. */
function towards(start: Vector, end: Vector): Vector {
	const axis = cross(start, end);
	const length = lengthOf(axis);
	if (length === 0) return northAt(start);
	const ahead = cross(axis, start);
	return { x: ahead.x / length, y: ahead.y / length, z: ahead.z / length };
}

function northAt({ x, y, z }: Vector): Vector {
	const level = Math.sqrt(x * x + y * y);
	return { x: (-z * x) / level, y: (-z * y) / level, z: level };
}
