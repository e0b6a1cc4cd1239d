/** How the MUF is spread over the days of a month: its lower and upper decile over its median. */
export interface MufSpread {
	readonly lower: number;
	readonly upper: number;
}

/**
 * Chance from 0 to 1 that a layer carries a frequency on a day: 0.9 at the MUF's lower decile, 0.5 at its median, 0.1 at its upper decile
 * (ITU-R P.533 section 3.6). Says nothing of strength.
 */
export function chanceOfSupport(fMHz: number, medianMufMHz: number, { lower, upper }: MufSpread): number {
	const ratio = fMHz / medianMufMHz;
	if (ratio <= 1) return Math.min(1, 1.3 - 0.8 / (1 + (1 - ratio) / (1 - lower)));
	return Math.max(0, 0.8 / (1 + (ratio - 1) / (upper - 1)) - 0.3);
}
