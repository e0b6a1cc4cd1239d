import type { Position } from "@skipwright/units";
import type { Way } from "./distance.ts";
import { placeAlong, trackBetween } from "./track.ts";

/**
 * The place at a fraction of the great circle from one place to another: 0 is `from`, 1 is `to`, beyond them it goes on.
 * Where both are one place, or antipodes, the circle is that through the poles.
 */
export function intermediate(from: Position, to: Position, fraction: number, way: Way = "short"): Position {
	return placeAlong(trackBetween(from, to, way), fraction);
}
