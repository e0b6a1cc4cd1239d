import type { Position } from "@skipwright/units";
export function distanceKm(a: Position, b: Position): number {
	throw new Error(`not built yet ${a} ${b}`);
}
