import { type Position, position } from "@skipwright/units";
import type { DscCall, DscDistress, DscFault, DscMessage } from "./call.ts";
import { areaOf, frequencyOf, frequencyWidth, identityOf, NO_POSITION, NO_TIME, positionOf, timeOf } from "./callFields.ts";
import {
	CATEGORIES,
	type CodeList,
	type DscEnd,
	FIRST_TELECOMMANDS,
	type FirstTelecommand,
	FORMATS,
	NATURES,
	SECOND_TELECOMMANDS,
	type UnknownCode,
} from "./codeWords.ts";
import { summaryOf } from "./summary.ts";

/** A call as a set reports it by NMEA 0183. */
export interface LoggedCall {
	/** 1-based line of its DSC sentence. */
	readonly line: number;
	/** Date and time, or time, that the line begins with, as it stands there; null where it has none. */
	readonly stamp: string | null;
	/** Null where not even the format could be read. A set reports calls to itself: `to` is null. */
	readonly call: DscCall | null;
	/** The checksum agrees. */
	readonly ok: boolean;
	readonly faults: readonly DscFault[];
	readonly summary: string;
}

const OWN_SET = "the set that kept the log";

/**
 * Calls in a set's log: DSC sentences, their positions made finer by the DSE sentences that follow. Other lines are passed over, and
 * whatever stands before the $ of a line. It takes any text and never throws.
 *
 * Fields as in NMEA 0183, codes by the last two digits of ITU-R M.493's (three are taken too), identities of nine or ten digits. The
 * address is that of the calling station (an equipment manual; general libraries read it so).
 */
export function readDscLog(text: string): readonly LoggedCall[] {
	const calls: LoggedCall[] = [];
	for (const [i, line] of text.split(/\r\n|\r|\n/).entries()) {
		const sentence = sentenceIn(line);
		if (sentence === null) continue;
		if (sentence.kind === "DSC") calls.push({ ...loggedCall(i + 1, sentence), stamp: STAMP.exec(line)?.[1] ?? null });
		else refine(calls, sentence);
	}
	return calls;
}

/** As 2026-11-24T10:00:00Z, the same with a space, or 10:00:00. */
const STAMP = /^\s*((?:\d{4}-\d\d-\d\d[T ])?\d\d:\d\d:\d\d(?:\.\d+)?Z?)(?=[\s,;$])/;

interface Sentence {
	readonly kind: "DSC" | "DSE";
	readonly fields: readonly string[];
	readonly faults: readonly DscFault[];
}

function sentenceIn(line: string): Sentence | null {
	const match = /\$([A-Z]{2}(DSC|DSE)(?:,[^*$]*)?)(?:\*([0-9A-Fa-f]{0,2}))?/.exec(line);
	if (match === null) return null;
	const [, body = "", kind, told] = match;
	return { kind: kind as "DSC" | "DSE", fields: body.split(",").map((field) => field.trim()), faults: checksumFaults(body, told) };
}

function checksumFaults(body: string, told: string | undefined): readonly DscFault[] {
	let sum = 0;
	for (let i = 0; i < body.length; i++) sum ^= body.charCodeAt(i);
	const right = (sum & 0xff).toString(16).toUpperCase().padStart(2, "0");
	if (told === undefined || told === "") return [{ code: "checksum-wrong", message: `no checksum; the characters give ${right}` }];
	return told.toUpperCase() === right
		? []
		: [{ code: "checksum-wrong", message: `the checksum reads ${told}, the characters give ${right}` }];
}

const ENDS_BY_LETTER: Readonly<Record<string, DscEnd>> = { R: "acknowledgement asked", B: "acknowledgement given", S: "none" };

function loggedCall(line: number, { fields, faults: before }: Sentence): Omit<LoggedCall, "stamp"> {
	const faults = [...before];
	const call = callOf(fields, faults);
	const ok = before.length === 0 && call !== null;
	return { line, call, ok, faults, summary: summaryOf(call, ok, OWN_SET) };
}

function callOf(fields: readonly string[], faults: DscFault[]): DscCall | null {
	const field = (place: number) => fields[place] ?? "";
	const code = <Words extends string>(name: string, place: number, list: CodeList<Words>) => coded(name, field(place), list, faults);
	const digits = <Value>(name: string, text: string, meaningOf: (digits: string) => Value | undefined, none?: string) =>
		read(name, text, meaningOf, none, faults);
	const format = code("format", 1, FORMATS);
	if (format === null) {
		if (field(1) === "") faults.push({ code: "cut-short", message: "the sentence has no format" });
		return null;
	}
	if (fields.slice(2).every((text) => text === "")) {
		faults.push({ code: "cut-short", message: "the sentence is too short: nothing stands after its format" });
		return null;
	}
	const isArea = format === "area" && !/^\d{8,9}0$/.test(field(2));
	const from = isArea ? null : digits("address", field(2), identityOfField);
	const area = isArea ? digits("area", field(2), (text) => (text.length === 10 ? areaOf(text) : undefined)) : null;
	const isAlert = format === "distress alert";
	const first = isAlert ? null : code("first telecommand", 4, FIRST_TELECOMMANDS);
	const isDistress = isAlert || first === "distress acknowledgement" || first === "distress relay";
	const place = digits("position", isPosition(field(6)) ? field(6) : "", positionOf, NO_POSITION);
	const time = digits("time", isDistress || isPosition(field(6)) ? field(7) : "", timeOf, NO_TIME);
	const ship = digits("ship in distress", field(8), identityOfField);
	const distress = (): DscDistress => ({
		ship: ship ?? (isAlert ? from : null),
		nature: isAlert ? code("nature of distress", 4, NATURES) : code("nature of distress", 9, NATURES),
		position: place,
		time,
		followOn: code("type of communication", 5, FIRST_TELECOMMANDS),
	});
	return {
		format,
		to: null,
		area,
		category: code("category", 3, CATEGORIES),
		from,
		// an alert that names its own ship in distress takes itself back (a publisher's sample of a cancellation)
		telecommand1: isAlert && ship !== null && ship === from ? ("distress acknowledgement" satisfies FirstTelecommand) : first,
		telecommand2: isDistress ? null : code("second telecommand", 5, SECOND_TELECOMMANDS),
		distress: isDistress ? distress() : null,
		message: isDistress ? null : messageOf(field(6), place, time, faults),
		end: field(10) === "" ? null : endOf(field(10), faults),
		undecoded: [],
	};
}

function endOf(letter: string, faults: DscFault[]): DscEnd | null {
	const end = ENDS_BY_LETTER[letter];
	if (end === undefined) faults.push({ code: "field-impossible", message: `acknowledgement: expected R, B or S, got "${letter}"` });
	return end ?? null;
}

function coded<Words extends string>(name: string, text: string, list: CodeList<Words>, faults: DscFault[]): Words | UnknownCode | null {
	if (text === "") return null;
	const code = /^\d{2}$/.test(text) ? 100 + Number(text) : /^1[0-2]\d$/.test(text) ? Number(text) : Number.NaN;
	if (!(code <= 127)) {
		faults.push({ code: "field-impossible", message: `${name}: expected the last two digits of a symbol, got "${text}"` });
		return null;
	}
	const words = list.wordsOf(code);
	if (!list.codes.includes(code)) faults.push({ code: "unknown-code", message: `${name}: ${code} is not in the list of ITU-R M.493` });
	return words;
}

function read<Value>(
	name: string,
	text: string,
	meaningOf: (digits: string) => Value | undefined,
	none: string | undefined,
	faults: DscFault[],
): Value | null {
	if (text === "" || text === none) return null;
	const value = /^\d+$/.test(text) ? meaningOf(text) : undefined;
	if (value === undefined) faults.push({ code: "field-impossible", message: `${name}: "${text}" cannot stand there` });
	return value ?? null;
}

/** Nine digits, with or without the 0 that a call carries after them. */
function identityOfField(digits: string): string | undefined {
	if (digits.length === 9) return digits;
	return digits.length === 10 ? identityOf(digits) : undefined;
}

function isPosition(text: string): boolean {
	return text.length === 10;
}

function messageOf(text: string, place: Position | null, time: string | null, faults: DscFault[]): DscMessage | null {
	if (text === "") return null;
	if (isPosition(text)) return { kind: "position", position: place, time };
	const width = frequencyWidth(Number(text.slice(0, 2)));
	const parts = width === null ? [] : [text.slice(0, width), text.slice(width)].filter((part) => part !== "");
	const isRight = parts.length > 0 && parts.every((part) => /^\d+$/.test(part) && frequencyWidth(Number(part.slice(0, 2))) === part.length);
	if (!isRight) {
		faults.push({ code: "field-impossible", message: `position, channel or frequency: "${text}" cannot stand there` });
		return null;
	}
	const [receive = null, transmit = null] = parts.map(frequencyOf);
	return { kind: "frequencies", receive, transmit };
}

/** Code 00 holds what the minutes of latitude and longitude have beyond the point, four digits each (from memory of NMEA 0183). */
const FINER_POSITION = "00";

function refine(calls: LoggedCall[], { fields, faults }: Sentence): void {
	const from = identityOfField(fields[4] ?? "") ?? null;
	const at = calls.findLastIndex(({ call }) => from !== null && (call?.from === from || call?.distress?.ship === from));
	const logged = calls[at];
	if (logged === undefined || logged.call === null) return;
	const more = [...faults];
	let call = logged.call;
	for (let i = 5; i < fields.length; i += 2) {
		const [code, data = ""] = [fields[i], fields[i + 1]];
		const finer = code === FINER_POSITION && /^\d{8}$/.test(data) ? data : null;
		if (finer !== null && faults.length === 0) call = refined(call, Number(finer.slice(0, 4)), Number(finer.slice(4)));
		else if (finer === null) more.push({ code: "not-decoded", message: `expansion ${code} "${data}" is not decoded` });
	}
	calls[at] = { ...logged, call, faults: [...logged.faults, ...more], summary: summaryOf(call, logged.ok, OWN_SET) };
}

/** Adds ten-thousandths of a minute, away from the equator and the prime meridian; a position that would leave the Earth stays as it is. */
function refined(call: DscCall, latParts: number, lonParts: number): DscCall {
	const shift = (value: number, parts: number) => (value < 0 ? value - parts / 600_000 : value + parts / 600_000);
	const finer = (at: Position | null) => {
		if (at === null) return null;
		const [lat, lon] = [shift(at.latDeg, latParts), shift(at.lonDeg, lonParts)];
		return Math.abs(lat) > 90 || Math.abs(lon) > 180 ? at : position(lat, lon);
	};
	const { distress, message } = call;
	return {
		...call,
		distress: distress === null ? null : { ...distress, position: finer(distress.position) },
		message: message?.kind === "position" ? { ...message, position: finer(message.position) } : message,
	};
}
