import { asin, pow } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";

/** Both aerials of a path at one frequency, their gains multiplied: as powers over isotropic ones. */
export interface PathGain {
	/** Towards the elevation with that sine. */
	readonly at: (sinElevation: number) => number;
	/** The most towards any of the low elevations that paths over 9000 km use. */
	readonly low: number;
}

export const ISOTROPIC: PathGain = { at: () => 1, low: 1 };

const STEPS = 128;
const { lowAngleDeg } = MEMORY.longPath.value;

/**
 * A table of the sum of both aerials' gains, so that asking costs little.
 * @param decibels dBi of one and of the other added, towards an elevation from 0 to 90 degrees
 */
export function pathGain(decibels: (elevationDeg: number) => number): PathGain {
	const gain = (elevationDeg: number) => pow(10, decibels(elevationDeg) / 10);
	const table = Float64Array.from({ length: STEPS + 1 }, (_, step) => gain((asin(step / STEPS) * 180) / Math.PI));
	const lowAngles = Array.from({ length: lowAngleDeg + 1 }, (_, degrees) => gain(degrees));
	return {
		at: (sinElevation) => {
			const step = Math.min(Math.max(sinElevation, 0) * STEPS, STEPS - 1e-9);
			const before = Math.floor(step);
			return table[before]! + (step - before) * (table[before + 1]! - table[before]!);
		},
		low: Math.max(...lowAngles),
	};
}
