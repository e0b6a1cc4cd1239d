declare const kind: unique symbol;

/** A calendar day in UTC as `YYYY-MM-DD`; compares as text. */
export type IsoDate = string & { readonly [kind]: "IsoDate" };

export const MINUTES_PER_DAY = 1_440;
const MS_PER_DAY = 86_400_000;

/** @throws SyntaxError unless `text` is a real day written `YYYY-MM-DD`. */
export function isoDate(text: string): IsoDate {
	const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
	const ms = match === null ? Number.NaN : Date.UTC(Number(match[1]), Number(match[2]) - 1, Number(match[3]));
	if (Number.isNaN(ms) || new Date(ms).toISOString().slice(0, 10) !== text) {
		throw new SyntaxError(`expected a day as YYYY-MM-DD, got "${text}"`);
	}
	return text as IsoDate;
}

/** Milliseconds since 1970-01-01T00:00Z at the start of the day. */
export function dayStartMs(date: IsoDate): number {
	return Date.parse(`${date}T00:00:00Z`);
}

/** The UTC day that `ms` since 1970-01-01T00:00Z falls in; years 0000 to 9999. */
export function dateOfMs(ms: number): IsoDate {
	return new Date(ms).toISOString().slice(0, 10) as IsoDate;
}

export function addDays(date: IsoDate, days: number): IsoDate {
	return dateOfMs(dayStartMs(date) + days * MS_PER_DAY);
}

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
	return Math.round((dayStartMs(to) - dayStartMs(from)) / MS_PER_DAY);
}

/** 0 (Sunday) to 6 (Saturday). */
export function weekday(date: IsoDate): number {
	return new Date(dayStartMs(date)).getUTCDay();
}

/**
 * Minutes after 0000 UTC to `hhmm`, a fraction cut off; 1440 is written `2400`.
 * @throws RangeError outside 0 to 1440
 * @example `formatHhmm(95)` is `"0135"`
 */
export function formatHhmm(minute: number): string {
	if (!(minute >= 0 && minute <= MINUTES_PER_DAY)) {
		throw new RangeError(`Cannot write minute ${minute} as hhmm: expected 0 to ${MINUTES_PER_DAY}`);
	}
	return String(Math.floor(minute / 60)).padStart(2, "0") + String(Math.floor(minute % 60)).padStart(2, "0");
}

/** `hhmm` to minutes after 0000; `2400` is 1440. @throws SyntaxError */
export function parseHhmm(text: string): number {
	const match = /^(\d{2})(\d{2})$/.exec(text);
	const minute = match === null ? Number.NaN : Number(match[1]) * 60 + Number(match[2]);
	if (match === null || Number(match[2]) > 59 || minute > MINUTES_PER_DAY) {
		throw new SyntaxError(`expected a time as hhmm from 0000 to 2400, got "${text}"`);
	}
	return minute;
}
