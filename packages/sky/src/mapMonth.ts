import { MEMORY } from "./fromMemory.ts";
import { HIGH_R12, LOW_R12, type MapCoefficients, monthCoefficients } from "./mapCoefficients.ts";

/** The maps of one month at one smoothed sunspot number: what serves every place and hour. */
export interface MonthMaps {
	readonly month: number;
	readonly r12: number;
	/** Coefficients of foF2 in MHz, at `j * FOF2_SHAPE.geographic + k`. */
	readonly foF2: Float64Array;
	/** Coefficients of M(3000)F2, at `j * M3000_SHAPE.geographic + k`. */
	readonly m3000F2: Float64Array;
}

/**
 * The maps between (or beyond) their two solar levels by a straight line in R12 (ITU-R P.1239). foF2 is held above R12 = 160.
 * @param month 1 to 12
 * @param r12 smoothed sunspot number on the old scale, as `sunspots` gives it
 * @throws RangeError for a month or a sunspot number that is none
 */
export function monthMaps(month: number, r12: number): MonthMaps {
	if (!(r12 >= 0 && r12 <= 400)) throw new RangeError(`Cannot take ${r12} as a smoothed sunspot number: expected 0 to 400`);
	const { foF2, m3000F2 } = monthCoefficients(month);
	return { month, r12, foF2: between(foF2, Math.min(r12, MEMORY.foF2R12Cap.value)), m3000F2: between(m3000F2, r12) };
}

function between({ low, high }: MapCoefficients, r12: number): Float64Array {
	const part = (r12 - LOW_R12) / (HIGH_R12 - LOW_R12);
	return low.map((value, i) => value + (high[i]! - value) * part);
}
