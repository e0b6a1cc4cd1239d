import { subsolarPoint, type Vector, vectorOf } from "@skipwright/sphere";

/** One month of one sun: what all paths share. */
export interface SkyMonth {
	/** 1 to 12. */
	readonly month: number;
	/** 12-month running mean sunspot number of the old scale, R12. */
	readonly sunspots: number;
	/** Direction from the Earth's centre in which the sun stands overhead, at each UTC hour of the month's 15th. */
	readonly suns: readonly Vector[];
	/** Whether absorption on paths to 9000 km counts `MEMORY.winterAnomaly`. */
	readonly winterAnomaly: boolean;
}

export const HOURS_PER_DAY = 24;
const MS_PER_HOUR = 3_600_000;
const MIDDLE_DAY = 15;

export interface MonthWanted {
	readonly year: number;
	readonly month: number;
	readonly sunspots: number;
	readonly winterAnomaly?: boolean;
}

/** @throws RangeError for a month outside 1 to 12 or sunspots under 0 */
export function skyMonth({ year, month, sunspots, winterAnomaly = false }: MonthWanted): SkyMonth {
	if (!Number.isInteger(month) || month < 1 || month > 12) throw new RangeError(`Cannot take ${month} as a month: expected 1 to 12`);
	if (!(sunspots >= 0)) throw new RangeError(`Cannot take ${sunspots} as a sunspot number: expected 0 or more`);
	const dayMs = Date.UTC(year, month - 1, MIDDLE_DAY);
	const suns = Array.from({ length: HOURS_PER_DAY }, (_, hour) => vectorOf(subsolarPoint(dayMs + hour * MS_PER_HOUR)));
	return { month, sunspots, suns, winterAnomaly };
}
