import { decimalYear } from "@skipwright/sphere";
import { isoDate } from "@skipwright/units";

/** A month of a year. */
export interface YearMonth {
	readonly year: number;
	/** 1 to 12. */
	readonly month: number;
}

/** The day that stands for a month. */
export const MIDDLE_DAY = 15;

/** @throws SyntaxError unless `text` is a month written `YYYY-MM` */
export function yearMonth(text: string): YearMonth {
	const match = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(text);
	if (match === null) throw new SyntaxError(`expected a month as YYYY-MM, got "${text}"`);
	return { year: Number(match[1]), month: Number(match[2]) };
}

/** Decimal year of a month's middle day. */
export function middleOf({ year, month }: YearMonth): number {
	return decimalYear(isoDate(`${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${MIDDLE_DAY}`));
}
