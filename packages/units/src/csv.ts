import { breaksIn, type CsvRecord, csvRecords } from "./csvRecords.ts";

/** One bad cell, row or header: where it stands, what was there and what was expected. */
export interface CsvFault {
	/** 1-based line of the file. */
	readonly line: number;
	/** Column name, or null when the whole line is meant. */
	readonly column: string | null;
	readonly value: string;
	readonly expected: string;
}

/** Input that could not be read. Nothing of it was imported; `faults` lists everything that is wrong. */
export class BadInputError extends Error {
	readonly source: string;
	readonly faults: readonly CsvFault[];
	constructor(source: string, faults: readonly CsvFault[]) {
		super(
			faults
				.slice(0, 20)
				.map((fault) => `${source}: ${faultText(fault)}`)
				.join("\n") + more(faults.length - 20),
		);
		this.name = "BadInputError";
		this.source = source;
		this.faults = faults;
	}
}

function more(hidden: number): string {
	return hidden > 0 ? `\n... and ${hidden} more` : "";
}

function faultText({ line, column, value, expected }: CsvFault): string {
	const place = column === null ? `line ${line}` : `line ${line}, column ${column}`;
	return `${place}: expected ${expected}, got ${JSON.stringify(value.slice(0, 80))}`;
}

export interface CsvTable {
	readonly rows: readonly CsvRow[];
	/** Columns of the file, in its order. */
	readonly columns: readonly string[];
}

export interface CsvRow {
	readonly line: number;
	/** Cell by column name; every known column is there, absent optional ones as "". */
	readonly cells: Readonly<Record<string, string>>;
}

export interface CsvShape {
	readonly required: readonly string[];
	readonly optional?: readonly string[];
}

/**
 * Reads a CSV with a header: columns in any order, BOM and CRLF allowed, empty lines and lines that start with #
 * skipped (a quoted first cell may start with #). Cells are not trimmed; the apostrophe that guards a formula comes off.
 * @param source name of the file, for messages
 * @throws BadInputError for text that is not UTF-8, a missing, extra or repeated column, an uneven row or bad quotes
 */
export function readCsv(source: string, text: string, shape: CsvShape): CsvTable {
	checkDecoding(source, text);
	const { records, fault } = csvRecords(text);
	const header = records[0];
	if (header === undefined) {
		throw new BadInputError(source, [fault ? { ...fault, column: null } : noHeader(shape)]);
	}
	const columns = header.cells.map((name) => name.trim());
	const faults = headerFaults(header.line, columns, shape);
	if (faults.length > 0) throw new BadInputError(source, faults);
	if (fault !== null) {
		const { line, cell, value, expected } = fault;
		throw new BadInputError(source, [{ line, column: columns[cell] ?? null, value, expected }]);
	}
	const absent = (shape.optional ?? []).filter((name) => !columns.includes(name));
	const rows: CsvRow[] = [];
	for (const record of records.slice(1)) {
		if (record.cells.length === columns.length) rows.push(rowOf(record, columns, absent));
		else {
			const expected = `${columns.length} cells as in the header, not ${record.cells.length}`;
			faults.push({ line: record.line, column: null, value: record.cells.join(","), expected });
		}
	}
	if (faults.length > 0) throw new BadInputError(source, faults);
	return { rows, columns };
}

/** UTF-16 read as UTF-8 is full of NUL; other encodings leave replacement characters. */
function checkDecoding(source: string, text: string): void {
	const at = text.search(/[\0\uFFFD]/);
	if (at < 0) return;
	const expected =
		text[at] === "\0"
			? "text without NUL bytes (a spreadsheet's own format or UTF-16? save it as CSV UTF-8)"
			: "text in UTF-8 (another encoding? save it as CSV UTF-8)";
	throw new BadInputError(source, [{ line: 1 + breaksIn(text.slice(0, at)), column: null, value: text.slice(at, at + 1), expected }]);
}

function noHeader(shape: CsvShape): CsvFault {
	return { line: 1, column: null, value: "", expected: `a header with ${shape.required.join(",")}` };
}

function headerFaults(line: number, columns: readonly string[], shape: CsvShape): CsvFault[] {
	const known = [...shape.required, ...(shape.optional ?? [])];
	const value = columns.join(",");
	if (columns.length === 1 && known.length > 1 && /[;\t]/.test(value)) {
		return [{ line, column: null, value, expected: "cells separated by commas" }];
	}
	const faults: CsvFault[] = [];
	for (const name of shape.required) {
		if (!columns.includes(name)) faults.push({ line, column: name, value, expected: `a column ${name} in the header` });
	}
	for (const [i, name] of columns.entries()) {
		const column = name === "" ? null : name;
		if (!known.includes(name)) faults.push({ line, column, value, expected: `only the columns ${known.join(",")}` });
		else if (columns.indexOf(name) < i) faults.push({ line, column, value, expected: `the column ${name} once` });
	}
	return faults;
}

function rowOf({ cells, line }: CsvRecord, columns: readonly string[], absent: readonly string[]): CsvRow {
	const byName: Record<string, string> = {};
	for (let i = 0; i < columns.length; i++) byName[columns[i]!] = unguard(cells[i]!);
	for (const name of absent) byName[name] = "";
	return { line, cells: byName };
}

/**
 * Cells to CSV text with LF line ends, quoted where needed. A cell that a spreadsheet would run as a formula
 * gets an apostrophe in front, which `readCsv` takes off again; plain numbers stay as they are.
 */
export function writeCsv(columns: readonly string[], rows: readonly (readonly string[])[]): string {
	return [columns, ...rows].map((row) => `${row.map(writeCell).join(",") || '""'}\n`).join("");
}

// The starts that spreadsheets take for a formula, full-width forms included (OWASP, CSV injection).
const FORMULA_START = /^'*[=+\-@\t\r\n＝＋－＠]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

function writeCell(cell: string): string {
	const guarded = FORMULA_START.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
	return /[",\r\n]|^\s|\s$|^#/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

function unguard(cell: string): string {
	return cell.startsWith("'") && FORMULA_START.test(cell) ? cell.slice(1) : cell;
}
