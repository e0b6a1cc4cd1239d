import { parseHhmm } from "@skipwright/units";
import { parseSpan } from "./parseSchedule.ts";
import { type FinePrint, type MonthDay, NO_FINE_PRINT, type Span } from "./schedule.ts";

type Reader = (match: RegExpExecArray, soFar: FinePrint) => Partial<FinePrint>;

const HHMM = "(?:[01]\\d|2[0-3])[0-5]\\d";
const SPAN = `${HHMM}-${HHMM}`;
const DAYS = ["Su", "Mo", "Tu", "We", "Th", "Fr", "Sa"];
const LONG_DAYS = ["Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"];
const MONTHS = ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];
const DATE = `\\d{1,2} (?:${MONTHS.join("|")})`;

/** Every form that a remark can take; the first that fits a remark reads it. */
const FORMS: readonly (readonly [RegExp, Reader])[] = [
	[
		new RegExp(`^windows?(?: in the list)?:? (${SPAN}(?:, ${SPAN})*)$`),
		(match, soFar) => ({ windows: [...soFar.windows, ...spans(match[1])] }),
	],
	[new RegExp(`^on the air (${SPAN})$`), (match) => ({ onAir: spans(match[1])[0] ?? null })],
	[new RegExp(`^(${LONG_DAYS.join("|")}) to (${LONG_DAYS.join("|")})$`), (match) => ({ weekdays: dayRange(match[1], match[2]) })],
	[new RegExp(`^also (${SPAN}(?: \\([A-Za-z,]+\\))?(?:, ${SPAN}(?: \\([A-Za-z,]+\\))?)*)$`), readExtras],
	[
		new RegExp(`^season(?: from (?:about )?(${DATE}))?(?: to (${DATE}))?$`),
		(match) => ({ season: { from: monthDay(match[1]), to: monthDay(match[2]), words: match[0] } }),
	],
	[/^[a-z ]+, seasonal$/, (match) => ({ season: { from: null, to: null, words: match[0] } })],
	[new RegExp(`^ice (${HHMM}) in season$`), (match) => ({ seasonTimes: times(match[1]) })],
	[
		new RegExp(`^navigational warnings (${HHMM}(?:, ${HHMM})*) UTC in winter \\(from local time\\)$`),
		(match) => ({ localTimes: times(match[1]) }),
	],
	[new RegExp(`^weather (${HHMM}(?: ${HHMM})*)$`), (match) => ({ fixedTimes: times(match[1]) })],
	[/^all times UTC in winter \(from local time\), an hour earlier in summer$/, () => ({ localTimes: "all" })],
];

/**
 * Reads the remarks of a listing: those that say something about its times become data, the rest stays words.
 * @param notes remarks joined by "; "
 */
export function readFinePrint(notes: string): FinePrint {
	let print = NO_FINE_PRINT;
	const words: string[] = [];
	for (const remark of notes.split("; ")) {
		const read = readRemark(remark, print);
		if (read === null) words.push(remark);
		else {
			const { words: left, ...data } = read;
			print = { ...print, ...data };
			if (left) words.push(left);
		}
	}
	return { ...print, words: words.join("; ") };
}

function readRemark(remark: string, soFar: FinePrint): Partial<FinePrint> | null {
	for (const [form, read] of FORMS) {
		const match = form.exec(remark);
		if (match !== null && !hasEmptySpan(remark)) return read(match, soFar);
	}
	return null;
}

/** "0700-0700" is no span: such a remark stays words. */
function hasEmptySpan(remark: string): boolean {
	return /\b(\d{4})-\1\b/.test(remark);
}

function spans(list: string | undefined): readonly Span[] {
	return (list ?? "").split(", ").map(parseSpan);
}

function times(list: string | undefined): readonly number[] {
	return (list ?? "").split(/,? /).map(parseHhmm);
}

function monthDay(text: string | undefined): MonthDay | null {
	const [day, month] = (text ?? "").split(" ");
	return month === undefined ? null : { month: MONTHS.indexOf(month) + 1, day: Number(day) };
}

function dayRange(from: string | undefined, to: string | undefined): readonly number[] {
	const first = LONG_DAYS.indexOf(from ?? "");
	const length = ((LONG_DAYS.indexOf(to ?? "") - first + 7) % 7) + 1;
	return Array.from({ length }, (_, index) => (first + index) % 7);
}

/** Entries marked "(irr)" come irregularly and stay words. */
function readExtras(match: RegExpExecArray): Partial<FinePrint> {
	const entries = (match[1] ?? "").split(/, (?=\d)/);
	const extra: { span: Span; weekdays: readonly number[] | null }[] = [];
	const words: string[] = [];
	for (const entry of entries) {
		const days = /\((.*)\)/.exec(entry)?.[1]?.split(",") ?? null;
		if (days !== null && !days.every((day) => DAYS.includes(day))) words.push(entry);
		else extra.push({ span: parseSpan(entry.slice(0, 9)), weekdays: days?.map((day) => DAYS.indexOf(day)) ?? null });
	}
	return { extra, words: words.length > 0 ? `also ${words.join(", ")}` : "" };
}
