import { log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";

export interface NoiseBand {
	/** dB above kT0b. */
	readonly faDb: number;
	readonly fMHz: number;
	readonly bandwidthHz: number;
}

/** Noise field in dB(uV/m) at a short vertical monopole over perfect ground, ITU-R P.372 (`MEMORY.noiseField`). */
export function noiseFieldDb({ faDb, fMHz, bandwidthHz }: NoiseBand): number {
	return faDb + 20 * log10(fMHz) + 10 * log10(bandwidthHz) + MEMORY.noiseField.value;
}
