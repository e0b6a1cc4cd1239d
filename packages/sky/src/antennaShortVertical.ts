import { cos, log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";

/** dBi of a lossless short vertical over a perfect plane towards the horizon: 10 log10 3 (textbook; ITU-R P.341). */
const TOWARDS_HORIZON_DBI = 10 * log10(3);
const RADIANS = Math.PI / 180;

/** dBi of a lossless short vertical over sea: 4.8 + 20 log cos(elevation), towards the zenith not under `MEMORY.steepestGain`. */
export function shortVerticalDbi(elevationDeg: number): number {
	const along = Math.abs(cos(elevationDeg * RADIANS));
	return TOWARDS_HORIZON_DBI + Math.max(20 * log10(along), MEMORY.steepestGain.value);
}
