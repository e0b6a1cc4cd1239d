import { log10 } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import type { NoiseSource } from "./noiseCombined.ts";

export type ManMadeClass = keyof typeof MEMORY.manMadeNoise.value;

/** Median man-made noise at a site of a class, and its deciles in time. Another site of the same class differs by `siteSigma` (1 sigma). */
export function manMadeNoise(manMade: ManMadeClass, fMHz: number): NoiseSource {
	const { c, d, upperDecile, lowerDecile } = MEMORY.manMadeNoise.value[manMade];
	return { medianDb: c - d * log10(fMHz), upperDecileDb: upperDecile, lowerDecileDb: lowerDecile };
}
