export interface Ratio {
	/** Median signal to noise, dB. */
	readonly snrDb: number;
	/** What is needed, dB in the same bandwidth. */
	readonly neededDb: number;
	/** How far the upper and lower decile of the ratio lie from its median, dB, from 0 up. */
	readonly upperDb: number;
	readonly lowerDb: number;
}

/**
 * Chance from 0 to 1 that the ratio meets the need: the share of days at that hour, ITU-R P.842's basic circuit reliability. 0.9 where
 * the median stands a lower decile above the need, 0.5 at it, 0.1 an upper decile under it; 1 and 0 are reached.
 */
export function chanceOf({ snrDb, neededDb, upperDb, lowerDb }: Ratio): number {
	const margin = snrDb - neededDb;
	if (margin === 0) return 0.5;
	if (margin > 0) return Math.min(1, 1.3 - 0.8 / (1 + margin / lowerDb));
	return Math.max(0, 0.8 / (1 - margin / upperDb) - 0.3);
}
