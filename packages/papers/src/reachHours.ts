import { formatHhmm, MINUTES_PER_DAY } from "@skipwright/units";

/** What a clock `offsetMin` ahead of UTC shows, `hhmm`. The end of a UTC day is 2400, not another 0000. */
export function clock(minute: number, offsetMin: number, isUtc: boolean): string {
	return formatHhmm(isUtc ? minute : (minute + offsetMin + MINUTES_PER_DAY) % MINUTES_PER_DAY);
}

/** @throws RangeError unless boat time lies less than a day from UTC */
export function checkedOffset(offsetMin: number): number {
	if (Math.abs(offsetMin) < MINUTES_PER_DAY) return offsetMin;
	throw new RangeError(`Cannot draw boat time ${offsetMin} minutes from UTC: expected less than a day`);
}
