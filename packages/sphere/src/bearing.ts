import { atan2, cos, type Position, sin } from "@skipwright/units";
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE, wrap360 } from "./angle.ts";
import type { Way } from "./distance.ts";

/**
 * True bearing in degrees, [0, 360), in which the great circle leaves `from`. Between a place and itself or its antipode
 * any bearing is as good as another; from a pole it counts from the meridian of the longitude given for the pole.
 */
export function initialBearingDeg(from: Position, to: Position, way: Way = "short"): number {
	const lat1 = from.latDeg * RADIANS_PER_DEGREE;
	const lat2 = to.latDeg * RADIANS_PER_DEGREE;
	const east = (to.lonDeg - from.lonDeg) * RADIANS_PER_DEGREE;
	const sinHalf = sin(east / 2);
	// cos lat1 sin lat2 - sin lat1 cos lat2 cos east, without the loss of figures between near places
	const northward = sin(lat2 - lat1) + 2 * sin(lat1) * cos(lat2) * sinHalf * sinHalf;
	const bearing = atan2(sin(east) * cos(lat2), northward) * DEGREES_PER_RADIAN;
	return wrap360(way === "short" ? bearing : bearing + 180);
}
