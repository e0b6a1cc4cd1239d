// Codes of a call and their words. Source: ITU-R M.493, tables A1-3 and following, as listed by a general library that
// cites edition 16; format 121 and nature 112 from memory and older listings.

/** A code that the lists do not hold, by its number. */
export type UnknownCode = `code ${number}`;

/** One of the Recommendation's lists: words by code and the way back. */
export interface CodeList<Words extends string> {
	readonly wordsOf: (code: number) => Words | UnknownCode;
	/** @throws RangeError for words that are neither in the list nor `code N` */
	readonly codeOf: (words: Words | UnknownCode) => number;
	readonly codes: readonly number[];
}

export const FORMATS = codeList({
	102: "area",
	112: "distress alert",
	114: "group",
	116: "all ships",
	120: "individual",
	121: "national use",
	123: "individual, automatic service",
});

export const CATEGORIES = codeList({ 100: "routine", 108: "safety", 110: "urgency", 112: "distress" });

export const NATURES = codeList({
	100: "fire or explosion",
	101: "flooding",
	102: "collision",
	103: "grounding",
	104: "listing, in danger of capsizing",
	105: "sinking",
	106: "disabled and adrift",
	107: "undesignated",
	108: "abandoning ship",
	109: "piracy or armed attack",
	110: "man overboard",
	112: "EPIRB emission",
});

/** First telecommand, and what a distress call asks to follow on. */
export const FIRST_TELECOMMANDS = codeList({
	100: "F3E or G3E telephony",
	101: "F3E or G3E duplex telephony",
	103: "polling",
	104: "unable to comply",
	105: "end of call",
	106: "data",
	109: "J3E telephony",
	110: "distress acknowledgement",
	112: "distress relay",
	113: "teletype with forward error correction",
	115: "teletype with requests for repetition",
	118: "test",
	121: "position",
	126: "no information",
});

export const SECOND_TELECOMMANDS = codeList({
	100: "no reason given",
	101: "congestion at the switching centre",
	102: "busy",
	103: "queue",
	104: "station barred",
	105: "no operator",
	106: "operator away for now",
	107: "equipment disabled",
	108: "cannot use the proposed channel",
	109: "cannot use the proposed mode",
	110: "ship or aircraft of a State not party to an armed conflict",
	111: "medical transport",
	112: "public call office",
	113: "facsimile or data",
	126: "no information",
});

export const ENDS = codeList({ 117: "acknowledgement asked", 122: "acknowledgement given", 127: "none" });

type WordsIn<List> = List extends CodeList<infer Words> ? Words | UnknownCode : never;
export type DscFormat = WordsIn<typeof FORMATS>;
export type DscCategory = WordsIn<typeof CATEGORIES>;
export type DscNature = WordsIn<typeof NATURES>;
export type FirstTelecommand = WordsIn<typeof FIRST_TELECOMMANDS>;
export type SecondTelecommand = WordsIn<typeof SECOND_TELECOMMANDS>;
export type DscEnd = WordsIn<typeof ENDS>;

function codeList<const Words extends string>(list: Readonly<Record<number, Words>>): CodeList<Words> {
	const wordsByCode = new Map(Object.entries(list).map(([code, words]) => [Number(code), words]));
	const codeByWords = new Map<string, number>([...wordsByCode].map(([code, words]) => [words, code]));
	return {
		wordsOf: (code) => wordsByCode.get(code) ?? `code ${code}`,
		codeOf: (words) => codeByWords.get(words) ?? unknownCode(words),
		codes: [...wordsByCode.keys()],
	};
}

function unknownCode(words: string): number {
	const digits = /^code (\d{1,3})$/.exec(words)?.[1];
	const code = digits === undefined ? Number.NaN : Number(digits);
	if (!(code <= 127)) throw new RangeError(`Cannot send "${words}": expected words of ITU-R M.493's list, or code 0 to code 127`);
	return code;
}
