import { MEMORY } from "./fromMemory.ts";
import type { MufSpread } from "./support.ts";

const { blocks, latitudes, lower, upper } = MEMORY.f2Spread.value;

/** Of the E layer, at any place and time: ITU-R P.1239 section 4 and P.533 section 3.4, as quoted by others. */
export const E_SPREAD: MufSpread = { lower: 0.95, upper: 1.05 };

const F2_SPREADS: readonly (readonly MufSpread[])[] = lower.map((row, band) =>
	row.map((value, block) => ({ lower: value, upper: upper[band]![block]! })),
);

/**
 * Of the F2 layer: `MEMORY.f2Spread`, by classes.
 * @param latDeg of the path's middle
 * @param reachesAurora whether the path comes to geomagnetic latitude 60: then the highest latitudes' row holds
 * @param localHour [0, 24)
 */
export function f2Spread(latDeg: number, reachesAurora: boolean, localHour: number): MufSpread {
	let band = 0;
	while (band < latitudes.length && (reachesAurora || Math.abs(latDeg) >= latitudes[band]!)) band++;
	const block = Math.floor(((localHour - blocks.from + 24) % 24) / blocks.hours);
	return F2_SPREADS[band]![block]!;
}
