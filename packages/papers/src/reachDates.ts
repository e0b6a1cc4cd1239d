import { addDays, daysBetween, type IsoDate } from "@skipwright/units";

/** Days from `first` to `last`, both whole, laid out from `x` over `width` px. */
export interface DateScale {
	readonly first: IsoDate;
	readonly last: IsoDate;
	readonly x: number;
	readonly width: number;
}

/** No voyage on one picture is longer. */
const MOST_DAYS = 3_660;

/**
 * First and last of some days.
 * @throws RangeError for no day at all, or more than ten years from first to last
 */
export function datesBetween(dates: readonly IsoDate[], what: string): Pick<DateScale, "first" | "last"> {
	const sorted = [...dates].sort();
	const [first, last] = [sorted[0], sorted.at(-1)];
	if (first === undefined || last === undefined) throw new RangeError(`Cannot draw "${what}": expected a dated cell or leg, got none`);
	if (daysBetween(first, last) >= MOST_DAYS)
		throw new RangeError(`Cannot draw "${what}" from ${first} to ${last}: expected ${MOST_DAYS} days at most`);
	return { first, last };
}

/** Where `days` after the start of the scale's first day lies, px. */
export function dayX(days: number, { first, last, x, width }: DateScale): number {
	return x + (days / (daysBetween(first, last) + 1)) * width;
}

/** Where the start of a day lies, px. */
export function dateX(date: IsoDate, scale: DateScale): number {
	return dayX(daysBetween(scale.first, date), scale);
}

/** What each of some dated samples stands for, in days after `first`: halfway to its neighbours, and as far outward at the ends. */
export interface DaySpan {
	readonly fromDay: number;
	readonly toDay: number;
}

/**
 * Each sample stands at the middle of its day; several of one day share it out evenly, in their order.
 * @throws RangeError when a date comes before the one ahead of it
 */
export function daySpans(dates: readonly IsoDate[], { first, last }: DateScale, what: string): readonly DaySpan[] {
	const wrong = dates.findIndex((date, i) => i > 0 && date < dates[i - 1]!);
	if (wrong >= 0) throw new RangeError(`Cannot draw ${what}[${wrong}] of ${dates[wrong]}: expected no day before ${dates[wrong - 1]}`);
	const counts = Map.groupBy(dates, (date) => date);
	const middles = dates.map((date, i) => daysBetween(first, date) + (i - dates.indexOf(date) + 0.5) / counts.get(date)!.length);
	const days = daysBetween(first, last) + 1;
	return middles.map((middle, i) => {
		const [before, after] = [middles[i - 1], middles[i + 1]];
		const outward = Math.abs((before ?? after ?? middle + 1) - middle) / 2;
		return {
			fromDay: before === undefined ? Math.max(0, middle - outward) : (before + middle) / 2,
			toDay: after === undefined ? Math.min(days, middle + outward) : (middle + after) / 2,
		};
	});
}

const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
/** Which days bear a date, closest together first. */
const TICK_RULES: readonly ((month: number, day: number) => boolean)[] = [
	() => true,
	(_, day) => day % 5 === 1 && day < 31,
	(_, day) => day % 10 === 1 && day < 31,
	(_, day) => day === 1,
	(month, day) => day === 1 && month % 3 === 1,
	(month, day) => day === 1 && month === 1,
];

export interface DateTick {
	readonly date: IsoDate;
	readonly x: number;
	/** @example `"1 Mar"`; the first and each January with its year: `"1 Jan 2028"` */
	readonly words: string;
}

/** Dates along the scale, as close as `apart` px allows. When nothing of the rule falls on the scale its first day is told. */
export function dateTicks(scale: DateScale, apart: number): readonly DateTick[] {
	const days = Array.from({ length: daysBetween(scale.first, scale.last) + 1 }, (_, i) => addDays(scale.first, i));
	const chosen = TICK_RULES.map((rule) => days.filter((date) => rule(Number(date.slice(5, 7)), Number(date.slice(8)))));
	const fitting =
		chosen.find((dates) => dates.every((date, i) => i === 0 || dateX(date, scale) - dateX(dates[i - 1]!, scale) >= apart)) ?? [];
	const dates = fitting.length === 0 ? days.slice(0, 1) : fitting;
	return dates.map((date, i) => ({ date, x: dateX(date, scale), words: dateWords(date, i === 0 || date.endsWith("-01-01")) }));
}

/** @example `dateWords(isoDate("2027-03-01"), true)` is `"1 Mar 2027"` */
export function dateWords(date: IsoDate, withYear: boolean): string {
	const words = `${Number(date.slice(8))} ${MONTHS[Number(date.slice(5, 7)) - 1]}`;
	return withYear ? `${words} ${date.slice(0, 4)}` : words;
}
