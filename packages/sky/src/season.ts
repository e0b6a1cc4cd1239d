import { MEMORY } from "./fromMemory.ts";

export type Season = "winter" | "equinox" | "summer";

/** The season of the tables at a latitude: `MEMORY.seasons`. @param month 1 to 12 */
export function seasonAt(month: number, latDeg: number): Season {
	const north = MEMORY.seasons.value[month - 1];
	if (north === undefined) throw new RangeError(`Cannot tell the season of month ${month}: expected 1 to 12`);
	if (latDeg >= 0 || north === "equinox") return north;
	return north === "summer" ? "winter" : "summer";
}
