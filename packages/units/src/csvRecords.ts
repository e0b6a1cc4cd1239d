/** One line of cells, quotes taken off. */
export interface CsvRecord {
	readonly cells: readonly string[];
	/** 1-based line on which the record starts. */
	readonly line: number;
}

/** Where the quoting went wrong; what follows cannot be told apart any more. */
export interface QuoteFault {
	readonly line: number;
	/** 0-based index of the cell in its record. */
	readonly cell: number;
	readonly value: string;
	readonly expected: string;
}

export interface CsvRecords {
	/** All records, or those before the fault. */
	readonly records: readonly CsvRecord[];
	readonly fault: QuoteFault | null;
}

const QUOTE = 0x22;
const HASH = 0x23;
const COMMA = 0x2c;
const LF = 0x0a;
const CR = 0x0d;
const BYTE_ORDER_MARK = 0xfeff;

/**
 * Comma-separated text to records after RFC 4180, with any of CRLF, LF and CR as the line end, a byte order mark
 * passed over, and empty lines and lines that start with # left out.
 */
export function csvRecords(text: string): CsvRecords {
	const records: CsvRecord[] = [];
	let at = text.charCodeAt(0) === BYTE_ORDER_MARK ? 1 : 0;
	let line = 1;
	while (at < text.length) {
		const first = text.charCodeAt(at);
		if (first === HASH) at = endOfLine(text, at);
		else if (first !== LF && first !== CR) {
			const record: { cells: string[]; line: number } = { cells: [], line };
			for (;;) {
				const quoted = text.charCodeAt(at) === QUOTE;
				const end = quoted ? endOfQuoted(text, at) : endOfPlain(text, at);
				const follows = text.charCodeAt(end);
				if (end < 0 || !(end === text.length || follows === COMMA || follows === LF || follows === CR)) {
					const value = text.slice(at, endOfLine(text, Math.max(at, end)));
					return { records, fault: { line, cell: record.cells.length, value, expected: quoted ? closing(end) : QUOTE_INSIDE } };
				}
				const cell = quoted ? text.slice(at + 1, end - 1) : text.slice(at, end);
				if (quoted) line += breaksIn(cell);
				record.cells.push(quoted && cell.includes('"') ? cell.replaceAll('""', '"') : cell);
				at = end;
				if (follows !== COMMA) break;
				at += 1;
			}
			records.push(record);
		}
		at += text.charCodeAt(at) === CR && text.charCodeAt(at + 1) === LF ? 2 : 1;
		line += 1;
	}
	return { records, fault: null };
}

const QUOTE_INSIDE = "quotes around a cell that holds a quote, and each quote inside doubled";

function closing(end: number): string {
	return end < 0 ? "a closing quote for the one that opens this cell" : "a comma or the end of the line after the closing quote";
}

function endOfPlain(text: string, from: number): number {
	for (let at = from; at < text.length; at++) {
		const code = text.charCodeAt(at);
		if (code === COMMA || code === LF || code === CR || code === QUOTE) return at;
	}
	return text.length;
}

/** Index after the closing quote, -1 when there is none. */
function endOfQuoted(text: string, opening: number): number {
	let quote = text.indexOf('"', opening + 1);
	while (quote >= 0 && text.charCodeAt(quote + 1) === QUOTE) quote = text.indexOf('"', quote + 2);
	return quote < 0 ? -1 : quote + 1;
}

function endOfLine(text: string, from: number): number {
	let at = from;
	while (at < text.length && text.charCodeAt(at) !== LF && text.charCodeAt(at) !== CR) at++;
	return at;
}

/** Line breaks in `text`: CRLF counts once. */
export function breaksIn(text: string): number {
	return text.match(/\r\n|\r|\n/g)?.length ?? 0;
}
