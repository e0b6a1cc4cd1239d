/** Chances this near to one another are the same to a listener: far under what the prediction itself is worth. */
const AS_GOOD_WITHIN = 0.03;
const HOURS_PER_DAY = 24;

export interface BestHours {
	/** UTC hour of the highest chance, the first of equals. */
	readonly hour: number;
	/** The run of hours about as good around it, told as in `HourRun`. */
	readonly fromHour: number;
	readonly toHour: number;
}

/** When in a day that closes on itself it is heard best. @param chances 24, by UTC hour */
export function bestHours(chances: ArrayLike<number>): BestHours {
	let hour = 0;
	for (let next = 1; next < HOURS_PER_DAY; next++) if (chances[next]! > chances[hour]!) hour = next;
	const isAsGood = (at: number) => chances[(at + HOURS_PER_DAY) % HOURS_PER_DAY]! >= chances[hour]! - AS_GOOD_WITHIN;
	let last = hour;
	while (last - hour < HOURS_PER_DAY && isAsGood(last + 1)) last++;
	if (last - hour === HOURS_PER_DAY) return { hour, fromHour: 0, toHour: HOURS_PER_DAY };
	let first = hour;
	while (isAsGood(first - 1)) first--;
	return { hour, fromHour: (first + HOURS_PER_DAY) % HOURS_PER_DAY, toHour: (last % HOURS_PER_DAY) + 1 };
}
