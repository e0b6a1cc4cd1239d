import type { DscArea, DscCall, DscDistress, DscFault, DscFrequency, DscMessage } from "./call.ts";
import {
	areaOf,
	EMPTY,
	frequencyOf,
	frequencyWidth,
	identityOf,
	NO_POSITION,
	NO_TIME,
	POSITION_FOLLOWS,
	positionOf,
	timeOf,
} from "./callFields.ts";
import {
	CATEGORIES,
	type CodeList,
	ENDS,
	FIRST_TELECOMMANDS,
	FORMATS,
	NATURES,
	SECOND_TELECOMMANDS,
	type UnknownCode,
} from "./codeWords.ts";
import { eccOf } from "./sequence.ts";
import { summaryOf } from "./summary.ts";

export interface DscReading {
	/** Null where not even the format specifier is there. */
	readonly call: DscCall | null;
	/** The check agrees and no symbol is lost. Fields may still hold what cannot be: see `faults`. */
	readonly ok: boolean;
	readonly faults: readonly DscFault[];
	/** One sentence for the log. */
	readonly summary: string;
}

/**
 * Reads a call into plain data and words. It takes whatever it is given and never throws.
 * @param symbols format specifier once, then to the end of sequence; null for a lost symbol
 * @param ecc the check as received; null when it was lost
 */
export function parseDsc(symbols: readonly (number | null)[], ecc: number | null): DscReading {
	const reader = symbolReader(symbols.map((symbol) => (isSymbol(symbol) ? symbol : null)));
	const call = callOf(reader);
	const lost = symbols.filter((symbol) => !isSymbol(symbol)).length;
	const faults = [...lostFault(lost, symbols.length), ...checkFault(symbols, ecc), ...reader.faults];
	const ok = symbols.length > 0 && lost === 0 && ecc === eccOf(symbols as readonly number[]); // none is null
	return { call, ok, faults, summary: summaryOf(call, ok) };
}

function isSymbol(symbol: number | null | undefined): symbol is number {
	return typeof symbol === "number" && Number.isInteger(symbol) && symbol >= 0 && symbol <= 127;
}

function lostFault(lost: number, all: number): readonly DscFault[] {
	return lost === 0 ? [] : [{ code: "symbol-lost", message: `${lost} of ${all} symbols lost` }];
}

function checkFault(symbols: readonly (number | null)[], ecc: number | null): readonly DscFault[] {
	if (symbols.length === 0) return [];
	if (ecc === null) return [{ code: "ecc-wrong", message: "the check symbol is lost" }];
	if (!symbols.every(isSymbol)) return [{ code: "ecc-wrong", message: "with symbols lost, the check tells nothing" }];
	const sum = eccOf(symbols);
	return sum === ecc ? [] : [{ code: "ecc-wrong", message: `the check reads ${ecc}, the symbols give ${sum}: at least one is wrong` }];
}

interface SymbolReader {
	readonly faults: DscFault[];
	readonly left: () => number;
	readonly peek: () => number | null;
	/** Any symbol; null when lost or absent. */
	readonly symbol: (field: string) => number | null;
	/** The word of a code; null when lost or absent. */
	readonly code: <Words extends string>(field: string, list: CodeList<Words>) => Words | UnknownCode | null;
	/** What `meaningOf` makes of the field's digits; null when lost, absent or impossible, or when the digits are `none`. */
	readonly digits: <Value>(field: string, count: number, meaningOf: (digits: string) => Value | undefined, none?: string) => Value | null;
	readonly rest: (keep: number) => readonly (number | null)[];
}

function symbolReader(symbols: readonly (number | null)[]): SymbolReader {
	const faults: DscFault[] = [];
	let at = 0;
	const take = (count: number) => {
		const taken = symbols.slice(at, at + count);
		at += taken.length;
		return taken;
	};
	const absent = (field: string) => faults.push({ code: "cut-short", message: `the call ends before its ${field}` });
	const symbol = (field: string) => {
		if (at >= symbols.length) absent(field);
		return take(1)[0] ?? null;
	};
	return {
		faults,
		left: () => symbols.length - at,
		peek: () => symbols[at] ?? null,
		symbol,
		code: (field, list) => {
			const code = symbol(field);
			if (code === null) return null;
			const words = list.wordsOf(code);
			if (words.startsWith("code ")) faults.push({ code: "unknown-code", message: `${field}: ${code} is not in the list of ITU-R M.493` });
			return words;
		},
		digits: (field, count, meaningOf, none) => {
			const taken = take(count / 2);
			if (taken.length < count / 2) absent(field);
			if (taken.length < count / 2 || taken.includes(null)) return null;
			const digits = taken.map((one) => String(one).padStart(2, "0")).join("");
			if (digits === none) return null;
			const value = digits.length === count ? meaningOf(digits) : undefined; // a symbol above 99 has three digits
			if (value === undefined) faults.push({ code: "field-impossible", message: `${field}: ${taken.join(" ")} cannot stand there` });
			return value ?? null;
		},
		rest: (keep) => take(Math.max(0, symbols.length - at - keep)),
	};
}

const NOTHING: DscCall = {
	format: "national use",
	to: null,
	area: null,
	category: null,
	from: null,
	telecommand1: null,
	telecommand2: null,
	distress: null,
	message: null,
	end: null,
	undecoded: [],
};

/** Fields are read in the order in which they stand: the order of these statements matters. */
function callOf(reader: SymbolReader): DscCall | null {
	if (reader.left() === 0) return null;
	const format = reader.code("format specifier", FORMATS);
	if (format === null) return null;
	const body = bodyOf(format, reader);
	return { ...NOTHING, format, ...body, undecoded: undecodedOf(reader, body.undecoded), end: reader.code("end of sequence", ENDS) };
}

type Body = Partial<DscCall>;

function bodyOf(format: DscCall["format"], reader: SymbolReader): Body {
	switch (format) {
		case "distress alert": {
			const from = identity(reader, "own identity");
			return { from, distress: distressOf(reader, from) };
		}
		case "all ships":
			return addressedBody(reader, {});
		case "area":
			return addressedBody(reader, { area: reader.digits<DscArea>("area", 10, areaOf) });
		case "group":
		case "individual":
		case "individual, automatic service":
			return addressedBody(reader, { to: identity(reader, "address") });
		default:
			reader.faults.push({ code: "not-decoded", message: `a call of the format "${format}" is not decoded` });
			return { undecoded: reader.rest(1) };
	}
}

function addressedBody(reader: SymbolReader, address: Body): Body {
	const category = reader.code("category", CATEGORIES);
	const from = identity(reader, "own identity");
	const telecommand1 = reader.code("first telecommand", FIRST_TELECOMMANDS);
	const head = { ...address, category, from, telecommand1 };
	if (telecommand1 === "distress acknowledgement" || telecommand1 === "distress relay") {
		const ship = reader.peek() === EMPTY ? emptyIdentity(reader) : identity(reader, "identity of the ship in distress");
		return { ...head, distress: distressOf(reader, ship) };
	}
	if (isAutomaticConnection(reader.peek())) {
		const code = reader.symbol("second telecommand")!; // was peeked at
		reader.faults.push({ code: "newer-edition", message: "automatic connection system: from a newer edition, not decoded" });
		return { ...head, telecommand2: `code ${code}`, undecoded: reader.rest(1) };
	}
	return { ...head, telecommand2: reader.code("second telecommand", SECOND_TELECOMMANDS), message: messageOf(reader) };
}

/** Remaining transmissions of the automatic connection system, edition 16. */
function isAutomaticConnection(symbol: number | null): boolean {
	return symbol !== null && symbol >= 120 && symbol <= 125;
}

function identity(reader: SymbolReader, field: string): string | null {
	return reader.digits(field, 10, identityOf);
}

/** A relay for a ship whose identity is not known carries the empty symbol five times (from memory of M.493). */
function emptyIdentity(reader: SymbolReader): null {
	const symbols = Array.from({ length: 5 }, () => reader.symbol("identity of the ship in distress"));
	if (symbols.some((symbol) => symbol !== null && symbol !== EMPTY)) {
		reader.faults.push({ code: "field-impossible", message: `identity of the ship in distress: ${symbols.join(" ")} cannot stand there` });
	}
	return null;
}

function distressOf(reader: SymbolReader, ship: string | null): DscDistress {
	return {
		ship,
		nature: reader.code("nature of distress", NATURES),
		position: reader.digits("position", 10, positionOf, NO_POSITION),
		time: reader.digits("time", 4, timeOf, NO_TIME),
		followOn: reader.code("what follows on", FIRST_TELECOMMANDS),
	};
}

function messageOf(reader: SymbolReader): DscMessage {
	if (reader.peek() === POSITION_FOLLOWS) {
		reader.symbol("position");
		const position = reader.digits("position", 10, positionOf, NO_POSITION);
		const time = reader.left() > 2 ? reader.digits("time", 4, timeOf, NO_TIME) : null;
		return { kind: "position", position, time };
	}
	const receive = frequencyField(reader, "frequency to receive on");
	return { kind: "frequencies", receive, transmit: frequencyField(reader, "frequency to transmit on") };
}

function frequencyField(reader: SymbolReader, field: string): DscFrequency | null {
	const first = reader.peek();
	if (first !== null && first !== EMPTY && frequencyWidth(first) !== null) {
		return reader.digits(field, frequencyWidth(first)!, frequencyOf);
	}
	const stand = reader.left() - 1; // the end of sequence stands after them
	const width = stand === 4 || stand === 8 ? 4 : 3; // of two fields left 6 or 8, of one 3 or 4
	if (stand < 1) {
		reader.faults.push({ code: "cut-short", message: `the call ends before its ${field}` });
		return null;
	}
	const symbols = Array.from({ length: Math.min(width, stand) }, () => reader.symbol(field));
	const impossible = symbols.length < 3 || symbols.some((symbol) => symbol !== null && symbol !== EMPTY);
	if (impossible) reader.faults.push({ code: "field-impossible", message: `${field}: ${symbols.join(" ")} cannot stand there` });
	return null;
}

/** What stands between the fields and the end of sequence. */
function undecodedOf(reader: SymbolReader, already: DscCall["undecoded"] = []): DscCall["undecoded"] {
	const rest = reader.rest(1);
	if (rest.length > 0) {
		reader.faults.push({ code: "not-decoded", message: `${rest.length} symbols after the last field are not decoded: ${rest.join(" ")}` });
	}
	return [...already, ...rest];
}
