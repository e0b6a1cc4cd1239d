const MINUTES_PER_HOUR = 60;
const MINUTES_PER_DAY = 1_440;

/** Chance at any minute of the day: straight between the hours, the day closing on itself. @param chances 24, by UTC hour */
export function chanceAtMinute(chances: ArrayLike<number>, minute: number): number {
	const within = ((minute % MINUTES_PER_DAY) + MINUTES_PER_DAY) % MINUTES_PER_DAY;
	const hour = Math.floor(within / MINUTES_PER_HOUR);
	const share = within / MINUTES_PER_HOUR - hour;
	return chances[hour]! + share * (chances[(hour + 1) % 24]! - chances[hour]!);
}

export interface UsableSpan {
	/** Minutes after 0000 UTC of the day on which the broadcast starts; may lie before 0 or after 1440. */
	readonly firstMin: number;
	readonly lastMin: number;
}

/**
 * The run of minutes with at least a chance that takes in the broadcast or part of it: how much too early or late one may switch on.
 * null when no minute of the broadcast has the chance; a whole day, 0 to 1440 around its start, when every minute has.
 * @param fromMin, toMin the broadcast, minutes after 0000 UTC
 */
export function usableSpan(chances: ArrayLike<number>, least: number, fromMin: number, toMin: number): UsableSpan | null {
	const isUsable = (minute: number) => chanceAtMinute(chances, minute) >= least;
	let first = fromMin;
	while (first <= toMin && !isUsable(first)) first++;
	if (first > toMin) return null;
	let last = first;
	while (last - first < MINUTES_PER_DAY && isUsable(last + 1)) last++;
	while (last - first < MINUTES_PER_DAY && isUsable(first - 1)) first--;
	return { firstMin: first, lastMin: last };
}

/** By hour, the index of the row with the best chance, the higher frequency of equals; null where none has any. */
export function bestByHour(rows: readonly { readonly fMHz: number; readonly chances: ArrayLike<number> }[]): readonly (number | null)[] {
	return Array.from({ length: 24 }, (_, hour) => {
		let best: number | null = null;
		for (const [index, { fMHz, chances }] of rows.entries()) {
			const chance = chances[hour]!;
			const so = best === null ? null : rows[best]!;
			if (chance > 0 && (so === null || chance > so.chances[hour]! || (chance === so.chances[hour]! && fMHz > so.fMHz))) best = index;
		}
		return best;
	});
}
