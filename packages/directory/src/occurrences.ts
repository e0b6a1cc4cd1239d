import { addDays, type IsoDate, MINUTES_PER_DAY, type Position, weekday } from "@skipwright/units";
import { stretchByHours, stretchesBySun } from "./dayAndNight.ts";
import { isEuropeanSummer } from "./europeanSummerTime.ts";
import { navtexSlots } from "./navtex.ts";
import type { FinePrint, MonthDay, Schedule, ScheduleItem, Season, Span } from "./schedule.ts";
import { sunIsUp } from "./sunIsUp.ts";

/** One broadcast or period of watch. It belongs to the UTC day on which it starts. */
export interface Occurrence {
	/** Minutes after 0000 UTC of the day asked for, 0 to 1439. */
	readonly fromMin: number;
	/** More than `fromMin`; over 1440 when it runs into the next day. */
	readonly toMin: number;
	/** Where the length comes from: the published times, a finer remark of the source, or the table of assumed lengths. */
	readonly length: "published" | "noted" | "assumed";
	/** What is in doubt about it, in words, or "". */
	readonly doubt: string;
}

/** Part of one UTC day, 0 <= `fromMin` < `toMin` <= 1440. */
export interface Interval {
	readonly fromMin: number;
	readonly toMin: number;
}

/** Whether a schedule says when: `cannot-tell` is an answer and differs from `off`. */
export type ScheduleKnown = "timed" | "continuous" | "off" | "cannot-tell";

/**
 * Minutes. A noted window longer than this tells when a frequency is in use, not how long one broadcast lasts ("windows 0640-2240"),
 * or is a slip ("1103-2310"). The longest real one in the shipped data is 60.
 */
const LONGEST_WINDOW_MIN = 120;
/** Minutes assumed for an item that has only a start, where no service says otherwise. */
const UNKNOWN_LENGTH_MIN = 15;
/** Minutes by which European local time is ahead in summer. */
const SUMMER_SHIFT_MIN = 60;

export function scheduleKnown({ word, items, fine }: Schedule): ScheduleKnown {
	if (word === "continuous") return "continuous";
	if (word === "closed") return "off";
	return items.length > 0 || fine.extra.length > 0 || word === "day" || word === "night" ? "timed" : "cannot-tell";
}

/**
 * What starts on a UTC day, in order of time. Something that crosses midnight belongs to the day on which it starts and is not cut there;
 * what began the day before is not in the list (`airtime` has its tail). A schedule that does not say when gives nothing: ask `scheduleKnown`.
 * @param where the station; needed only by "day" and "night" without fixed local hours, which give nothing when it is null
 */
export function occurrences(schedule: Schedule, date: IsoDate, where: Position | null): readonly Occurrence[] {
	const { fine } = schedule;
	const season = seasonOn(fine.season, date);
	if (season === null) return [];
	const day = weekday(date);
	const regular =
		fine.weekdays === null || fine.weekdays.includes(day) ? [...ofWord(schedule, date, where), ...ofItems(schedule, date)] : [];
	const extra = fine.extra
		.filter(({ weekdays }) => weekdays === null || weekdays.includes(day))
		.map(({ span }): Occurrence => ({ fromMin: span.fromMin, toMin: endOf(span), length: "published", doubt: "" }));
	return [...regular, ...extra].map((occurrence) => doubted(occurrence, season)).sort((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin);
}

/** When a listing is on the air within one UTC day, tails from the day before included, merged and clipped to the day. */
export function airtime(schedule: Schedule, date: IsoDate, where: Position | null): readonly Interval[] {
	const before = occurrences(schedule, addDays(date, -1), where).map(({ fromMin, toMin }) => ({
		fromMin: fromMin - MINUTES_PER_DAY,
		toMin: toMin - MINUTES_PER_DAY,
	}));
	const merged: { fromMin: number; toMin: number }[] = [];
	for (const { fromMin, toMin } of [...before, ...occurrences(schedule, date, where)]) {
		const part = { fromMin: Math.max(fromMin, 0), toMin: Math.min(toMin, MINUTES_PER_DAY) };
		const last = merged.at(-1);
		if (part.toMin <= part.fromMin) continue;
		if (last !== undefined && part.fromMin <= last.toMin) last.toMin = Math.max(last.toMin, part.toMin);
		else merged.push(part);
	}
	return merged;
}

function ofWord({ word, dayHours }: Schedule, date: IsoDate, where: Position | null): readonly Occurrence[] {
	if (word === "continuous") return [{ fromMin: 0, toMin: MINUTES_PER_DAY, length: "published", doubt: "" }];
	if (word !== "day" && word !== "night") return [];
	if (dayHours !== null) return [{ ...stretchByHours(word, dayHours), length: "published", doubt: dayHours.doubt }];
	if (where === null) return [];
	const doubt = `taken as ${word} by the sun at the station`;
	return stretchesBySun(word, date, (atMs) => sunIsUp(atMs, where)).map((stretch) => ({ ...stretch, length: "assumed", doubt }));
}

function ofItems(schedule: Schedule, date: IsoDate): readonly Occurrence[] {
	return schedule.items.flatMap((item) => {
		switch (item.kind) {
			case "at":
				return startsOf(item.minute, schedule.fine, date).map((start) => withLength(start, item.minute, schedule));
			case "span":
				return { fromMin: item.fromMin, toMin: endOf(item), length: "published", doubt: "" };
			case "slot":
				return navtexSlots(item.letter).map((minute) => withLength(minute, minute, schedule));
			default:
				return ofHours(item, schedule);
		}
	});
}

function ofHours(item: Extract<ScheduleItem, { kind: "hourly" | "hourly-span" }>, schedule: Schedule): readonly Occurrence[] {
	const { onAir } = schedule.fine;
	const minute = item.kind === "hourly" ? item.minute : item.fromMin;
	return Array.from({ length: 24 }, (_, hour) => hour * 60 + minute)
		.filter((start) => onAir === null || isWithin(onAir, start))
		.map((start) => {
			if (item.kind === "hourly") return withLength(start, start, schedule);
			const length = item.toMin > item.fromMin ? item.toMin - item.fromMin : item.toMin - item.fromMin + 60;
			return { fromMin: start, toMin: start + length, length: "published", doubt: "" };
		});
}

/** Starts on the day of an item published for `minute`: another one, or a second one, where it follows European local time. */
function startsOf(minute: number, { localTimes, fixedTimes }: FinePrint, date: IsoDate): readonly number[] {
	const isLocal = localTimes === "all" || (localTimes?.includes(minute) ?? false);
	if (!isLocal || !isEuropeanSummer(date, minute)) return [minute];
	const shifted = (minute - SUMMER_SHIFT_MIN + MINUTES_PER_DAY) % MINUTES_PER_DAY;
	return fixedTimes.includes(minute) ? [shifted, minute] : [shifted];
}

/** @param published the start as the source prints it, by which remarks about it are found */
function withLength(start: number, published: number, { fine, assumedLengthMin }: Schedule): Occurrence {
	const window = fine.windows.find(({ fromMin }) => fromMin === published);
	const noted = window === undefined ? Number.POSITIVE_INFINITY : endOf(window) - window.fromMin;
	const doubt = fine.seasonTimes.includes(published) ? "kept in the ice season only, its dates are not published" : "";
	return noted <= LONGEST_WINDOW_MIN
		? { fromMin: start, toMin: start + noted, length: "noted", doubt }
		: { fromMin: start, toMin: start + (assumedLengthMin ?? UNKNOWN_LENGTH_MIN), length: "assumed", doubt };
}

/** End of a span counted from 0000 UTC of the day on which it starts. */
function endOf({ fromMin, toMin }: Span): number {
	return toMin > fromMin ? toMin : toMin + MINUTES_PER_DAY;
}

/** From `fromMin` up to, not including, `toMin`. */
function isWithin({ fromMin, toMin }: Span, minute: number): boolean {
	return fromMin < toMin ? minute >= fromMin && minute < toMin : minute >= fromMin || minute < toMin;
}

/** What is in doubt about a day in the season ("" for nothing); null outside it. */
function seasonOn(season: Season | null, date: IsoDate): string | null {
	if (season === null) return "";
	const today = Number(date.slice(5, 7)) * 100 + Number(date.slice(8, 10));
	const from = season.from === null ? null : ordinal(season.from);
	const to = season.to === null ? null : ordinal(season.to);
	const isAfterFrom = from === null || today >= from;
	const isBeforeTo = to === null || today <= to;
	const crossesNewYear = from !== null && to !== null && from > to;
	if (crossesNewYear ? !isAfterFrom && !isBeforeTo : !isAfterFrom || !isBeforeTo) return null;
	return from === null || to === null || season.words.includes("about") ? season.words : "";
}

function ordinal({ month, day }: MonthDay): number {
	return month * 100 + day;
}

function doubted(occurrence: Occurrence, season: string): Occurrence {
	return season === "" ? occurrence : { ...occurrence, doubt: occurrence.doubt === "" ? season : `${season}; ${occurrence.doubt}` };
}
