import type { Position } from "@skipwright/units";
import type { Way } from "./distance.ts";
import { angleBetween, cross, lengthOf, positionOf, turn, type Vector, vectorOf } from "./vector.ts";

/**
 * The place at a fraction of the great circle from one place to another: 0 is `from`, 1 is `to`, beyond them it goes on.
 * Where both are one place, or antipodes, the circle is that through the poles.
 */
export function intermediate(from: Position, to: Position, fraction: number, way: Way = "short"): Position {
	const start = vectorOf(from);
	const end = vectorOf(to);
	const angle = angleBetween(start, end);
	const wholeWay = way === "short" ? angle : angle - 2 * Math.PI;
	return positionOf(turn(start, towards(start, end), fraction * wholeWay));
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
