import { log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import type { NoiseSource } from "./noiseCombined.ts";

/** Noise of the galaxy, which counts only where it comes through: above the critical frequency overhead. */
export function galacticNoise(fMHz: number): NoiseSource {
	const { c, d, upperDecile, lowerDecile } = MEMORY.galacticNoise.value;
	return { medianDb: c - d * log10(fMHz), upperDecileDb: upperDecile, lowerDecileDb: lowerDecile };
}
