import type { Position } from "@skipwright/units";
import { distanceKm } from "./distance.ts";

/** Length in km of the track through the samples in their order, great circle by great circle; 0 for fewer than two. */
export function pathDistanceKm(samples: readonly Position[]): number {
	let km = 0;
	for (let i = 1; i < samples.length; i++) km += distanceKm(samples[i - 1]!, samples[i]!);
	return km;
}
