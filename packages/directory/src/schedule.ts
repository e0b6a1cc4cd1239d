/** Words that stand for a whole schedule. */
export const SCHEDULE_WORDS = [
	"continuous",
	"closed",
	"seasonal",
	"day",
	"night",
	"experimental",
	"unknown",
	"see list",
	"after DSC alert",
] as const;
export type ScheduleWord = (typeof SCHEDULE_WORDS)[number];

/** One entry of a list of times. Minutes are minutes after 0000 UTC, or past the full hour for the hourly kinds. */
export type ScheduleItem =
	| { readonly kind: "at"; readonly minute: number }
	/** `toMin` at or before `fromMin` lies on the next day; 1440 is 2400. */
	| { readonly kind: "span"; readonly fromMin: number; readonly toMin: number }
	| { readonly kind: "hourly"; readonly minute: number }
	/** `toMin` up to 60; before `fromMin` it lies in the next hour. */
	| { readonly kind: "hourly-span"; readonly fromMin: number; readonly toMin: number }
	/** The six NAVTEX slots of a station's B1 letter. */
	| { readonly kind: "slot"; readonly letter: string };

/** From one clock time to another, minutes after 0000 UTC; the end may lie on the next day (`toMin` <= `fromMin`). */
export interface Span {
	readonly fromMin: number;
	readonly toMin: number;
}

export interface MonthDay {
	readonly month: number;
	readonly day: number;
}

export interface Season {
	readonly from: MonthDay | null;
	readonly to: MonthDay | null;
	/** As published, for a reader. */
	readonly words: string;
}

/** What the finer remarks of a source add to the times. `words` is what no rule could read, to be shown as it stands. */
export interface FinePrint {
	/** Lengths for start times: "windows 0037-0047, 0337-0347". */
	readonly windows: readonly Span[];
	/** Limits hourly items: "on the air 1100-2300". */
	readonly onAir: Span | null;
	/** 0 (Sunday) to 6: "Monday to Friday". */
	readonly weekdays: readonly number[] | null;
	/** "also 0700-0715 (Mo,We)". */
	readonly extra: readonly { readonly span: Span; readonly weekdays: readonly number[] | null }[];
	/** "season from about 15 June to 20 December"; either end may be unpublished. */
	readonly season: Season | null;
	/** Start times that are kept in a season only: "ice 1218 in season". */
	readonly seasonTimes: readonly number[];
	/** Start times by European local time: published for winter, an hour earlier by UTC in summer. */
	readonly localTimes: readonly number[] | "all" | null;
	/** Start times that stand in UTC all year although they are among the local ones too. */
	readonly fixedTimes: readonly number[];
	readonly words: string;
}

/** Fixed local hours that a source gives for "day"; night is the rest. */
export interface DayHours {
	/** Minutes east of UTC, no summer time. */
	readonly utcOffsetMin: number;
	/** Local minutes after midnight. */
	readonly fromMin: number;
	readonly toMin: number;
	/** What is in doubt about the hours, or "". */
	readonly doubt: string;
	readonly source: string;
}

/** A schedule as parsed: either one word or a list of items, never both. */
export interface Schedule {
	readonly word: ScheduleWord | null;
	readonly items: readonly ScheduleItem[];
	readonly fine: FinePrint;
	/** Minutes assumed for an item that has only a start; null when the service is not known. */
	readonly assumedLengthMin: number | null;
	readonly dayHours: DayHours | null;
}

export const NO_FINE_PRINT: FinePrint = {
	windows: [],
	onAir: null,
	weekdays: null,
	extra: [],
	season: null,
	seasonTimes: [],
	localTimes: null,
	fixedTimes: [],
	words: "",
};
