import { MEMORY } from "./fromMemory.ts";
import type { Season } from "./season.ts";

const { eirpDbw: limitDbw, upTo, over } = MEMORY.operationalRatio.value;

/** Operational over basic MUF by the F2 layer: what scatter and rough layers add. ITU-R P.1240, `MEMORY.operationalRatio`. By E: 1. */
export function operationalRatio(season: Season, isDay: boolean, eirpDbw: number): number {
	return (eirpDbw <= limitDbw ? upTo : over)[season][isDay ? 1 : 0];
}
