import { log10 } from "@skipwright/units";
import { shortVerticalDbi } from "./antennaShortVertical.ts";
import type { MemoryId } from "./fromMemory.ts";

/** A vertical aerial by or on the sea. */
export interface Antenna {
	/** Share of the sender's power that is radiated, above 0 up to 1. */
	readonly efficiency: (fMHz: number) => number;
	/** dBi towards an elevation, losses counted: for sending by sky wave. (By ground wave: efficiency times power is the e.m.r.p.) */
	readonly gainDb: (fMHz: number, elevationDeg: number) => number;
	/** dBi without losses: for receiving, where noise from outside suffers them too; `receiverNoiseDb(efficiency)` counts the rest. */
	readonly directivityDb: (elevationDeg: number) => number;
	readonly basis: readonly MemoryId[];
}

export function verticalAntenna(efficiency: (fMHz: number) => number, basis: readonly MemoryId[]): Antenna {
	return {
		efficiency,
		gainDb: (fMHz, elevationDeg) => shortVerticalDbi(elevationDeg) + 10 * log10(efficiency(fMHz)),
		directivityDb: shortVerticalDbi,
		basis,
	};
}
