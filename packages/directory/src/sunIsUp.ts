import type { Position } from "@skipwright/units";

/** Whether the sun is up at a place. */
export function sunIsUp(atMs: number, where: Position): boolean {
	throw new Error(`not built yet: ${atMs} ${where.latDeg}`);
}
