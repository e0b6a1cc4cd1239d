import { MINUTES_PER_DAY } from "@skipwright/units";

/** Minutes of an hour angle or longitude: the Earth turns one degree in four. */
export const MINUTES_PER_DEGREE = 4;

/** Local mean time at a longitude, in minutes after local midnight, [0, 1440), for minutes after 0000 UTC of any day. */
export function localMeanTimeMin(lonDeg: number, utcMin: number): number {
	const local = utcMin + MINUTES_PER_DEGREE * lonDeg;
	return local - MINUTES_PER_DAY * Math.floor(local / MINUTES_PER_DAY);
}
