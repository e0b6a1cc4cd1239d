import type { IsoDate, Position } from "@skipwright/units";
import type { Schedule } from "./schedule.ts";

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

/**
 * What starts on a UTC day, in order of time.
 * @param where the station; needed only by "day" and "night" without fixed local hours, which give nothing when it is null
 */
export function occurrences(schedule: Schedule, date: IsoDate, where: Position | null): readonly Occurrence[] {
	throw new Error(`not built yet: ${schedule.word} ${date} ${where}`);
}

/** When a listing is on the air within one UTC day, tails from the day before included, merged and clipped to the day. */
export function airtime(schedule: Schedule, date: IsoDate, where: Position | null): readonly Interval[] {
	throw new Error(`not built yet: ${schedule.word} ${date} ${where}`);
}

/** Whether a schedule says when: `cannot-tell` is an answer and differs from `off`. */
export type ScheduleKnown = "timed" | "continuous" | "off" | "cannot-tell";

export function scheduleKnown(schedule: Schedule): ScheduleKnown {
	throw new Error(`not built yet: ${schedule.word}`);
}
