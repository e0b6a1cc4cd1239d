import { type IsoDate, isoDate } from "@skipwright/units";

/** @throws SyntaxError unless `text` is `YYYY`, `YYYY-MM` or `YYYY-MM-DD` */
export function parseAsOf(text: string): string {
	earliestDay(text);
	return text;
}

/** First day of a year, month or day: the date that lets a listing look no fresher than it may be. @throws SyntaxError */
export function earliestDay(text: string): IsoDate {
	if (!/^\d{4}(-\d{2}){0,2}$/.test(text)) throw new SyntaxError(`expected a date as YYYY, YYYY-MM or YYYY-MM-DD, got "${text}"`);
	return isoDate(`${text}-01-01`.slice(0, 10));
}
