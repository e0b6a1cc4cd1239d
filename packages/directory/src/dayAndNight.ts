import { dayStartMs, type IsoDate, MINUTES_PER_DAY } from "@skipwright/units";
import type { DayHours } from "./schedule.ts";

/** A stretch of day or night, minutes after 0000 UTC of a date; `toMin` may be over 1440. */
export interface Stretch {
	readonly fromMin: number;
	readonly toMin: number;
}

/** A day or night shorter than this may be missed, which happens on a day or two a year near the polar circles. */
const STEP_MIN = 10;
const WINDOW_FROM_MIN = -MINUTES_PER_DAY;
const WINDOW_TO_MIN = 2 * MINUTES_PER_DAY;

/** The one stretch of day or night by fixed local hours that starts on a UTC day. */
export function stretchByHours(word: "day" | "night", { utcOffsetMin, fromMin, toMin }: DayHours): Stretch {
	const [local, length] = word === "day" ? [fromMin, toMin - fromMin] : [toMin, fromMin - toMin];
	const from = modulo(local - utcOffsetMin);
	return { fromMin: from, toMin: from + modulo(length) };
}

/**
 * Stretches with the sun up (`day`) or down (`night`) that start on a UTC day, to the minute.
 * A stretch longer than a day (polar day or night) is cut at 0000 UTC, so that each day has its part.
 * @param isUp whether the sun is up, by milliseconds since 1970
 */
export function stretchesBySun(word: "day" | "night", date: IsoDate, isUp: (atMs: number) => boolean): readonly Stretch[] {
	const wanted = word === "day";
	const startMs = dayStartMs(date);
	const holds = (minute: number) => isUp(startMs + minute * 60_000) === wanted;
	return runs(holds).flatMap((run) => partOfDay(run));
}

/** Runs within the window, with ends at -Infinity and Infinity where they go on outside it. */
function runs(holds: (minute: number) => boolean): readonly Stretch[] {
	const found: Stretch[] = [];
	let open = holds(WINDOW_FROM_MIN) ? Number.NEGATIVE_INFINITY : null;
	for (let minute = WINDOW_FROM_MIN; minute < WINDOW_TO_MIN; minute += STEP_MIN) {
		const next = holds(minute + STEP_MIN);
		if (next === (open !== null)) continue;
		const change = firstMinute(minute, (at) => holds(at) === next);
		if (open === null) open = change;
		else {
			found.push({ fromMin: open, toMin: change });
			open = null;
		}
	}
	return open === null ? found : [...found, { fromMin: open, toMin: Number.POSITIVE_INFINITY }];
}

function firstMinute(before: number, reached: (minute: number) => boolean): number {
	let minute = before + 1;
	while (minute < before + STEP_MIN && !reached(minute)) minute++;
	return minute;
}

function partOfDay({ fromMin, toMin }: Stretch): readonly Stretch[] {
	const isLong = toMin - fromMin > MINUTES_PER_DAY;
	if (fromMin >= MINUTES_PER_DAY || toMin <= 0 || (fromMin < 0 && !isLong)) return [];
	return [{ fromMin: Math.max(fromMin, 0), toMin: isLong ? Math.min(toMin, MINUTES_PER_DAY) : toMin }];
}

function modulo(minute: number): number {
	return minute - MINUTES_PER_DAY * Math.floor(minute / MINUTES_PER_DAY);
}
