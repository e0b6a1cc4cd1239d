import { LOST_MARK } from "../text/printer.ts";

/** Combinations of five elements, first sent as the lowest bit, 1 the mark. Source: ITU-T S.1 table 1 (from memory). */
export const ITA2_LETTERS = 31,
	ITA2_FIGURES = 27;
const CARRIAGE_RETURN = 8,
	LINE_FEED = 2;

/** Code 0 to 31 by place: a dot where nothing is printed (blank, carriage return, shifts, answer-back, bell). */
const LETTERS = ".E\nA SIU.DRJNFCKTZLWHYPQOBG.MXV.";
/** The international figures. Those of F, G and H are national: ! & # here, as the other text receivers of this package print them. */
const FIGURES = ".3\n- '87..4.,!:(5+)2#6019?&../=.";
const SILENT = ".";
/** Full stop is the figure of M, so that the table of figures cannot hold it. */
const FULL_STOP_CODE = 28;

/** The code of a character that was lost or whose framing was broken. */
export const LOST_CODE = -1;

/**
 * Turns codes into print one by one, keeping the shift, at a space too (S.1 has no return to letters there); starts in letters. A lost
 * character prints as `LOST_MARK`, a line's end as "\n".
 */
export function createIta2Printer(): (code: number) => string {
	let isFigures = false;
	return (code) => {
		if (code === LOST_CODE) return LOST_MARK;
		if (code === ITA2_LETTERS || code === ITA2_FIGURES) isFigures = code === ITA2_FIGURES;
		return printed(code, isFigures);
	};
}

function printed(code: number, isFigures: boolean): string {
	if (isFigures && code === FULL_STOP_CODE) return ".";
	const sign = (isFigures ? FIGURES : LETTERS)[code]!;
	return sign === SILENT ? "" : sign;
}

/**
 * The codes that print `text`: letters shift first, then a shift only where the next character needs it; a line ends with carriage
 * return, line feed and the shift again, however it is written here.
 * @throws RangeError where the alphabet has no such character
 */
export function ita2Codes(text: string): readonly number[] {
	let shift = ITA2_LETTERS;
	const codes = [shift];
	for (const character of text.replaceAll(/\r\n?|\n/g, "\n")) {
		if (character === "\n") codes.push(CARRIAGE_RETURN, LINE_FEED, shift);
		else {
			const sending = SENDING.get(character);
			if (sending === undefined) {
				throw new RangeError(`Cannot send ${JSON.stringify(character)}: the alphabet has capitals, digits, space and ${SIGNS}`);
			}
			if (sending.shift !== null && sending.shift !== shift) {
				shift = sending.shift;
				codes.push(shift);
			}
			codes.push(sending.code);
		}
	}
	return codes;
}

interface Sending {
	readonly code: number;
	/** null: the same in letters and in figures. */
	readonly shift: number | null;
}

const SENDING: ReadonlyMap<string, Sending> = new Map(
	Array.from({ length: 32 }, (_, code): [string, Sending][] => {
		const [letter, figure] = [printed(code, false), printed(code, true)];
		if (letter === figure) return [[letter, { code, shift: null }]];
		return [
			[letter, { code, shift: ITA2_LETTERS }],
			[figure, { code, shift: ITA2_FIGURES }],
		];
	})
		.flat()
		.filter(([sign]) => sign !== "" && sign !== "\n"),
);

const SIGNS = [...SENDING.keys()].filter((sign) => !/[A-Z0-9 ]/.test(sign)).join(" ");
