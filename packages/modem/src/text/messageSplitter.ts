import { type BitMark, PAIR_S, type ReadSignal } from "./collectiveReader.ts";
import type { TextGap } from "./heardText.ts";
import { subjectWords, type TextIdentity } from "./navtex.ts";
import { createPrinter, LOST, LOST_MARK } from "./printer.ts";
import { ALPHA, codeOf, FIGS, LTRS, RPT, SEVEN_UNIT } from "./sevenUnit.ts";

/** A text cut out of the stream of signals. */
export interface SplitText {
	readonly text: string;
	readonly identity: TextIdentity | null;
	readonly gaps: readonly TextGap[];
	readonly characters: number;
	readonly lostCharacters: number;
	readonly isInverted: boolean;
	/** Of the signals' second copies, first to last. */
	readonly marks: readonly BitMark[];
}

export interface MessageSplitter {
	signal(signal: ReadSignal): readonly SplitText[];
	/** No more signals by `nowS`, seconds from the start of the stream. */
	end(nowS: number): readonly SplitText[];
}

/** Idle pairs that end a text: 2 s (M.625-4 4.6.7.1, from memory). */
const CLOSING_PAIRS = 14;
/** Those after which a plain text counts as ended, where the recording stops. */
const CLOSED_PAIRS = 4;
/** s. A longer hole in a text ends it; a shorter one is filled with marks of loss. */
export const LONGEST_HOLE_S = 20;
/** s. A text that runs to within this of the end of a recording was cut by it. */
const CUT_WITHIN_S = 2;
/** Letters and digits that a text must have at least, and its largest share of lost characters: less is no text but chance. */
const LEAST_PRINTED = 5;
const MOST_LOST = 0.5;

const IDLE: ReadonlySet<number> = new Set([ALPHA, RPT, codeOf("BETA")]);
const LF = codeOf("LF");
/** A shift read with more doubt than this may be none. */
const DOUBTFUL = 0.001;
/** No figures of an international text: national ones, bell, answer-back. */
const NO_FIGURES: ReadonlySet<number> = new Set(["D", "F", "G", "H", "J"].map(codeOf));
/** Told by signals, not by print: they are known even where a shift was lost. */
const BEGIN = ["Z", "C", "Z", "C"].map(codeOf);
const END = ["N", "N", "N", "N"].map(codeOf);

interface Entry {
	readonly mark: BitMark;
	code: number;
	print: string;
}

/** Cuts signals into messages by ZCZC and NNNN, into plain texts by idle signals, and says what each lacks. */
export function createMessageSplitter(): MessageSplitter {
	const printer = createPrinter();
	let entries: Entry[] = [];
	/** Those of the last that printed anything: enough for a sign of the frame and what stands before it. */
	let recent: Entry[] = [];
	/** The last shift to figures, if in doubt, or the last one lost since: it may have been a shift to letters or no shift at all. */
	let doubtful: Entry | null = null;
	let hasBegin = false;
	let isAfterIdle = false;
	let idle = 0;
	/** Signals lost after idle ones: idle themselves or the first of a text, as the next will tell. */
	let unclear: BitMark[] = [];
	let lastS = Number.NEGATIVE_INFINITY;
	let isInverted = false;

	/** Ends the text under way; `end` is why it is not whole. */
	function close(end: TextGap | null, nextIsAfterIdle: boolean): readonly SplitText[] {
		const closed = entries;
		const isHeadless = !hasBegin && (!isAfterIdle || isSign(END));
		const began = hasBegin;
		entries = [];
		recent = [];
		doubtful = null;
		unclear = [];
		hasBegin = false;
		isAfterIdle = nextIsAfterIdle;
		printer.letters();
		const kept = closed.slice(began ? 0 : closed.findIndex(isVisible), closed.findLastIndex(isVisible) + 1);
		const text = kept.map(({ print }) => print).join("");
		const lostCharacters = kept.filter(({ code }) => code === LOST).length;
		if (text.replaceAll(/[^A-Z0-9]/g, "").length < LEAST_PRINTED || lostCharacters > MOST_LOST * kept.length) return [];
		const gaps = [...(isHeadless ? ["joined late" as const] : []), ...(end === null ? [] : [end])];
		const identity = began ? identityOf(kept) : null;
		return [{ text, identity, gaps, characters: kept.length, lostCharacters, isInverted, marks: kept.map(({ mark }) => mark) }];
	}

	function add(code: number, mark: BitMark, doubt: number): readonly SplitText[] {
		const entry = { code, mark, print: printer.print(code) };
		entries.push(entry);
		if (code === LTRS || code === FIGS) doubtful = null;
		if (code === LOST || (code === FIGS && doubt > DOUBTFUL)) doubtful = entry;
		if (NO_FIGURES.has(code) && entry.print !== SEVEN_UNIT[code]!.letter && doubtful !== null) {
			if (doubtful.code === FIGS) doubtful.code = LOST;
			printer.letters();
			for (const each of entries.slice(entries.indexOf(doubtful))) each.print = printer.print(each.code);
		}
		if (entry.print === "") return [];
		recent = [...recent.slice(-END.length), entry];
		if (isSign(BEGIN)) {
			const sign = entries.splice(entries.indexOf(recent.at(-BEGIN.length)!));
			const before = close("next message began", true);
			entries = sign.map((each) => ({ ...each, print: printer.print(each.code) }));
			hasBegin = true;
			return before;
		}
		if (!isSign(END)) return [];
		printer.letters();
		for (const each of recent.slice(-END.length)) each.print = printer.print(each.code);
		return close(null, true);
	}

	/** Whether the last signals are those, one of them lost at most; where one is, the sign of the end must stand at the head of a line. */
	function isSign(sign: readonly number[]): boolean {
		const last = recent.slice(-sign.length);
		const lost = last.filter(({ code }) => code === LOST).length;
		if (last.length < sign.length || lost > 1 || last.some(({ code }, i) => code !== LOST && code !== sign[i])) return false;
		return lost === 0 || sign === BEGIN || (recent.length > sign.length && recent[0]!.code === LF);
	}

	function take(code: number, mark: BitMark, doubt: number): readonly SplitText[] {
		if (IDLE.has(code)) {
			idle += 1 + unclear.length;
			unclear = [];
			return idle < CLOSING_PAIRS ? [] : close(hasBegin ? "ended without NNNN" : null, true);
		}
		if (code === LOST && idle > 0) {
			unclear.push(mark);
			return [];
		}
		if (idle > 0 && entries.length === 0) isAfterIdle = true;
		const lost = unclear;
		unclear = [];
		idle = 0;
		return [...lost.flatMap((at) => add(LOST, at, 1)), ...add(code, mark, doubt)];
	}

	return {
		signal(signal) {
			const { code, mark, doubt } = signal;
			const holeS = mark.atS - lastS - PAIR_S;
			if (holeS < -PAIR_S / 2) return []; // read before, from the carrier that this one follows
			const texts: SplitText[] = [];
			if (holeS > LONGEST_HOLE_S || signal.isInverted !== isInverted) {
				texts.push(...close("faded out", false));
				idle = 0;
			} else if (idle > 0 || entries.length > 0) {
				for (let i = Math.round(holeS / PAIR_S); i > 0; i--) texts.push(...take(LOST, mark, 1));
			}
			isInverted = signal.isInverted;
			lastS = mark.atS;
			texts.push(...take(code, mark, doubt));
			return texts;
		},
		end(nowS) {
			const last = entries.findLast(isVisible);
			if (last === undefined) return [];
			const why = nowS - last.mark.atS < CUT_WITHIN_S ? "recording stopped" : "faded out";
			return close(hasBegin || idle < CLOSED_PAIRS ? why : null, false);
		},
	};
}

function isVisible({ code, print }: Entry): boolean {
	return code !== LOST && print.trim() !== "";
}

/** B1 to B4 after ZCZC; digits are told by their signals too. Null where they are no identity. */
function identityOf(entries: readonly Entry[]): TextIdentity | null {
	const line = entries.findIndex(({ code }) => code === LF);
	const head = line < 0 ? entries : entries.slice(0, line);
	const codes = head.filter(({ print }) => print.trim() !== "").map(({ code }) => code);
	const said = codes.slice(BEGIN.length);
	while (said.length > 4 && said.includes(LOST)) said.splice(said.indexOf(LOST), 1); // a shift or the space
	const [station, subject, tens, units] = said;
	if (station === undefined || subject === undefined || tens === undefined || units === undefined) return null;
	const letterOf = (code: number) => (code === LOST ? LOST_MARK : SEVEN_UNIT[code]!.letter);
	const digitOf = (code: number) => (code === LOST ? LOST_MARK : SEVEN_UNIT[code]!.figure);
	const number = digitOf(tens) + digitOf(units);
	if (!/^[0-9*]{2}$/.test(number)) return null;
	return { station: letterOf(station), subject: letterOf(subject), about: subjectWords(letterOf(subject)), number };
}
