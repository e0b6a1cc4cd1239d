import { formatHhmm, MINUTES_PER_DAY, parseHhmm } from "@skipwright/units";
import { NO_FINE_PRINT, SCHEDULE_WORDS, type Schedule, type ScheduleItem, type Span } from "./schedule.ts";

const FORMS = `hhmm, hhmm-hhmm, H+mm, H+mm-H+mm or slot A..X joined by ";", or one of the words ${SCHEDULE_WORDS.join(", ")}`;

/**
 * Reads the schedule notation, all times UTC: `hhmm`, `hhmm-hhmm` (may cross midnight), `H+mm`, `H+mm-H+mm`, `slot N` (NAVTEX letter),
 * joined by `;`, or one word. Case and blanks round an entry do not matter.
 * @throws SyntaxError naming the text and the accepted forms
 * @example `parseSchedule("2320-0000;H+20").items.length` is `2`
 */
export function parseSchedule(text: string): Schedule {
	const trimmed = text.trim();
	const word = SCHEDULE_WORDS.find((known) => known.toLowerCase() === trimmed.toLowerCase()) ?? null;
	const items = word === null ? trimmed.split(";").map((entry) => parseItem(entry.trim(), text)) : [];
	return { word, items, fine: NO_FINE_PRINT, assumedLengthMin: null, dayHours: null };
}

/** The text itself, once it is known to parse. @throws SyntaxError as `parseSchedule` */
export function checkedSchedule(text: string): string {
	parseSchedule(text);
	return text;
}

/** The notation again. `parseSchedule(formatSchedule(s))` equals `s` for every schedule that `parseSchedule` gave. */
export function formatSchedule({ word, items }: Schedule): string {
	return word ?? items.map(formatItem).join(";");
}

/**
 * `hhmm-hhmm`, both ends from 0000; the end may be 2400 or lie on the next day.
 * @throws SyntaxError when the ends are the same (a whole day is written `continuous`)
 */
export function parseSpan(text: string): Span {
	const [, from, to] = /^(\d{4})-(\d{4})$/.exec(text) ?? [];
	if (from === undefined || to === undefined) throw new SyntaxError(`expected hhmm-hhmm, got "${text}"`);
	const span = { fromMin: startMinute(from), toMin: parseHhmm(to) };
	if (span.fromMin === span.toMin % MINUTES_PER_DAY)
		throw new SyntaxError(`expected two different times (a whole day is "continuous"), got "${text}"`);
	return span;
}

function parseItem(entry: string, whole: string): ScheduleItem {
	try {
		return (
			parseHourly(entry) ??
			parseSlot(entry) ??
			(entry.includes("-") ? { kind: "span", ...parseSpan(entry) } : { kind: "at", minute: startMinute(entry) })
		);
	} catch (error) {
		if (!(error instanceof SyntaxError)) throw error;
		throw new SyntaxError(`expected a schedule as ${FORMS}; got "${whole}" (${error.message})`);
	}
}

function startMinute(text: string): number {
	const minute = parseHhmm(text);
	if (minute === MINUTES_PER_DAY) throw new SyntaxError(`expected a start from 0000 to 2359, got "${text}"`);
	return minute;
}

function parseHourly(entry: string): ScheduleItem | null {
	const [whole, from, to] = /^H\+(\d{2})(?:-H\+(\d{2}))?$/i.exec(entry) ?? [];
	if (whole === undefined) return null;
	const fromMin = Number(from);
	const toMin = to === undefined ? null : Number(to);
	if (fromMin > 59 || (toMin !== null && (toMin > 60 || toMin === fromMin))) {
		throw new SyntaxError(`expected H+00 to H+59, ending at another minute up to H+60, got "${entry}"`);
	}
	return toMin === null ? { kind: "hourly", minute: fromMin } : { kind: "hourly-span", fromMin, toMin };
}

function parseSlot(entry: string): ScheduleItem | null {
	const [, letter] = /^slot\s+([A-X])$/i.exec(entry) ?? [];
	return letter === undefined ? null : { kind: "slot", letter: letter.toUpperCase() };
}

function formatItem(item: ScheduleItem): string {
	switch (item.kind) {
		case "at":
			return formatHhmm(item.minute);
		case "span":
			return `${formatHhmm(item.fromMin)}-${formatHhmm(item.toMin)}`;
		case "hourly":
			return hourText(item.minute);
		case "hourly-span":
			return `${hourText(item.fromMin)}-${hourText(item.toMin)}`;
		case "slot":
			return `slot ${item.letter}`;
	}
}

function hourText(minute: number): string {
	return `H+${String(minute).padStart(2, "0")}`;
}
