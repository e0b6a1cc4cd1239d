import { HOURS_PER_DAY } from "./skyWaveMonth.ts";

/** A series by UTC hour: 24 values, of 0 to 23. Several times faster than `Array.from` with a length. */
export function byHour<T>(of: (utcHour: number) => T): readonly T[] {
	const series = new Array<T>(HOURS_PER_DAY);
	for (let utcHour = 0; utcHour < HOURS_PER_DAY; utcHour++) series[utcHour] = of(utcHour);
	return series;
}
