import { parse } from "csv-parse/browser/esm/sync";

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
 * Reads a CSV with a header: columns in any order, BOM and CRLF allowed, lines that start with # skipped.
 * @param source name of the file, for messages
 * @throws BadInputError for NUL bytes, a missing, extra or repeated column, an uneven row or an open quote
 */
export function readCsv(source: string, text: string, shape: CsvShape): CsvTable {
	const nul = text.indexOf("\0");
	if (nul >= 0)
		fail(source, lineAt(text, nul), null, "\0", "text without NUL bytes (is this a spreadsheet or UTF-16 file? save it as CSV UTF-8)");
	const records = parseRecords(source, text);
	const header = records[0];
	if (header === undefined) fail(source, 1, null, "", `a header with ${shape.required.join(",")}`);
	const columns = header.record.map((name) => name.trim());
	checkHeader(source, header.line, columns, shape);
	const blank = Object.fromEntries((shape.optional ?? []).map((name) => [name, ""]));
	const faults: CsvFault[] = [];
	const rows = records.slice(1).map(({ record, line }) => {
		if (record.length !== columns.length) {
			faults.push({ line, column: null, value: record.join(","), expected: `${columns.length} cells as in the header` });
		}
		const cells: Record<string, string> = { ...blank };
		for (const [i, name] of columns.entries()) cells[name] = unguard(record[i] ?? "");
		return { line, cells };
	});
	if (faults.length > 0) throw new BadInputError(source, faults);
	return { rows, columns };
}

interface RawRecord {
	readonly record: readonly string[];
	readonly line: number;
}

function parseRecords(source: string, text: string): readonly RawRecord[] {
	try {
		const raw = parse(text, {
			bom: true,
			relax_column_count: true,
			skip_empty_lines: true,
			comment: "#",
			comment_no_infix: true,
			info: true,
		}) as unknown as readonly { record: string[]; info: { lines: number } }[];
		// csv-parse reports the line a record ends on; a quoted line break inside it would shift the number
		return raw.map(({ record, info }) => ({ record, line: info.lines - breaksIn(record) }));
	} catch (error) {
		const lines = (error as { lines?: number }).lines ?? 1;
		fail(source, lines, null, error instanceof Error ? error.message : String(error), "well-formed CSV (quotes doubled inside quotes)");
	}
}

function breaksIn(record: readonly string[]): number {
	let breaks = 0;
	for (const cell of record) if (cell.includes("\n") || cell.includes("\r")) breaks += cell.split(/\r\n|\r|\n/).length - 1;
	return breaks;
}

function checkHeader(source: string, line: number, columns: readonly string[], shape: CsvShape): void {
	const known = new Set([...shape.required, ...(shape.optional ?? [])]);
	const faults: CsvFault[] = [];
	const fault = (value: string, expected: string) => faults.push({ line, column: value || null, value: columns.join(","), expected });
	for (const name of shape.required) if (!columns.includes(name)) fault(name, `a column ${name} in the header`);
	for (const name of new Set(columns)) {
		if (!known.has(name)) fault(name, `only the columns ${[...known].join(",")}`);
		if (columns.filter((other) => other === name).length > 1) fault(name, `the column ${name} once`);
	}
	if (faults.length > 0) throw new BadInputError(source, faults);
}

function lineAt(text: string, index: number): number {
	return text.slice(0, index).split(/\r\n|\r|\n/).length;
}

function fail(source: string, line: number, column: string | null, value: string, expected: string): never {
	throw new BadInputError(source, [{ line, column, value, expected }]);
}

/**
 * Cells to CSV text with LF line ends, quoted where needed. A cell that a spreadsheet would run as a formula
 * gets an apostrophe in front, which `readCsv` takes off again; plain numbers stay as they are.
 */
export function writeCsv(columns: readonly string[], rows: readonly (readonly string[])[]): string {
	return [columns, ...rows].map((row) => `${row.map(writeCell).join(",")}\n`).join("");
}

const FORMULA_START = /^'*[=+\-@\t\r]/;
const PLAIN_NUMBER = /^-?\d+(\.\d+)?$/;

function writeCell(cell: string): string {
	const guarded = FORMULA_START.test(cell) && !PLAIN_NUMBER.test(cell) ? `'${cell}` : cell;
	return /[",\r\n]|^\s|\s$|^#/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}

function unguard(cell: string): string {
	return cell.startsWith("'") && FORMULA_START.test(cell.slice(1)) ? cell.slice(1) : cell;
}
