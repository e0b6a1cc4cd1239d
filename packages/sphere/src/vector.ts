import { atan2, cos, type Position, position, sin } from "@skipwright/units";
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from "./angle.ts";

/** A direction from the Earth's centre: x to 0°N 0°E, y to 0°N 90°E, z to the north pole. Of length one unless said. */
export interface Vector {
	readonly x: number;
	readonly y: number;
	readonly z: number;
}

export function vectorOf({ latDeg, lonDeg }: Position): Vector {
	const lat = latDeg * RADIANS_PER_DEGREE;
	const lon = lonDeg * RADIANS_PER_DEGREE;
	const cosLat = cos(lat);
	return { x: cosLat * cos(lon), y: cosLat * sin(lon), z: sin(lat) };
}

/** Where a direction of any length but zero leaves the sphere; well-conditioned everywhere, poles included. */
export function positionOf({ x, y, z }: Vector): Position {
	return position(atan2(z, Math.sqrt(x * x + y * y)) * DEGREES_PER_RADIAN, atan2(y, x) * DEGREES_PER_RADIAN);
}

export function dot(a: Vector, b: Vector): number {
	return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function cross(a: Vector, b: Vector): Vector {
	return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

export function lengthOf(a: Vector): number {
	return Math.sqrt(dot(a, a));
}

/** Radians from 0 to pi, by sine and cosine both, so that neither nearness nor antipodes cost figures. */
export function angleBetween(a: Vector, b: Vector): number {
	return atan2(lengthOf(cross(a, b)), dot(a, b));
}

/** The point at `angle` radians from `start` towards `ahead`, which stands square to it. */
export function turn(start: Vector, ahead: Vector, angle: number): Vector {
	const c = cos(angle);
	const s = sin(angle);
	return { x: c * start.x + s * ahead.x, y: c * start.y + s * ahead.y, z: c * start.z + s * ahead.z };
}
