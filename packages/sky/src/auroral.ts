import { MEMORY } from "./fromMemory.ts";
import type { Season } from "./season.ts";

const { nearUpToKm, fromLat, step, blocks, near, far } = MEMORY.auroralLoss.value;

export interface AuroralWanted {
	readonly pathKm: number;
	/** At the middle of the path, as the next two. */
	readonly geomagneticLatDeg: number;
	readonly season: Season;
	/** [0, 24). */
	readonly localHour: number;
}

/** dB of auroral and other losses, L_h of ITU-R P.533: `MEMORY.auroralLoss`, by classes, without interpolation. */
export function auroralLossDb({ pathKm, geomagneticLatDeg, season, localHour }: AuroralWanted): number {
	const row = Math.max(0, Math.ceil((fromLat - geomagneticLatDeg) / step)); // a row holds from its lower bound on
	const column = Math.floor(((localHour - blocks.from + 24) % 24) / blocks.hours);
	return (pathKm <= nearUpToKm ? near : far)[season][row]?.[column] ?? 0;
}
