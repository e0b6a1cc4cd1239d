import { BadInputError, type CsvFault } from "@skipwright/units";
import type * as z from "zod";
import { type JsonFault, lineAndColumn, mapJson, pathText } from "./jsonText.ts";

/** JSON that could not be read: `faults` hold the path in `column`; the message gives line, path, value and expectation. */
export class BadJsonError extends BadInputError {
	constructor(source: string, faults: readonly CsvFault[]) {
		super(source, faults);
		this.name = "BadJsonError";
		const hidden = faults.length - 20;
		this.message =
			faults
				.slice(0, 20)
				.map((fault) => `${source}: ${faultText(fault)}`)
				.join("\n") + (hidden > 0 ? `\n... and ${hidden} more` : "");
	}
}

function faultText({ line, column, value, expected }: CsvFault): string {
	return `line ${line}, ${column}: expected ${expected}, got ${value}`;
}

export interface JsonForm<S extends z.ZodType> {
	/** The document's `format`. */
	readonly format: string;
	/** Newest `version` that is read. */
	readonly version: number;
	/** What it is, for messages: "a set profile". */
	readonly what: string;
	readonly schema: S;
}

/**
 * Reads a JSON document of ours; another format and another version are refused by name before anything else is looked at.
 * @param source name of the file, for messages
 * @throws BadJsonError with every fault: line, path, value and what was expected
 */
export function readJson<S extends z.ZodType>(source: string, jsonText: string, form: JsonForm<S>): z.output<S> {
	const text = jsonText.replace(/^\uFEFF/, "");
	const { fault: jsonFault, offsets } = mapJson(text);
	const fault = encodingFault(text) ?? jsonFault;
	if (fault !== null) {
		const { line, column } = lineAndColumn(text, fault.offset);
		const value = fault.offset < text.length ? JSON.stringify(text.slice(fault.offset, fault.offset + 20)) : "the end of the file";
		throw new BadJsonError(source, [{ line, column: `column ${column}`, value, expected: fault.expected }]);
	}
	const document: unknown = JSON.parse(text);
	const faultAt = (path: readonly PropertyKey[], expected: string): CsvFault => {
		const offset = nearestOffset(offsets, path);
		return { line: lineAndColumn(text, offset).line, column: pathText(path) || "the document", value: shown(document, path), expected };
	};
	const refusal = refusalOf(document, form);
	if (refusal !== null) throw new BadJsonError(source, [faultAt(refusal.path, refusal.expected)]);
	const result = form.schema.safeParse(document);
	if (result.success) return result.data;
	throw new BadJsonError(
		source,
		result.error.issues.flatMap((issue) => expectations(issue).map(({ path, expected }) => faultAt(path, expected))),
	);
}

/** UTF-16 read as UTF-8 is full of NUL; other encodings leave replacement characters. */
function encodingFault(text: string): JsonFault | null {
	const offset = text.search(/[\0\uFFFD]/);
	return offset < 0 ? null : { offset, expected: "text in UTF-8 without NUL (another encoding? save it as UTF-8)" };
}

interface Expectation {
	readonly path: readonly PropertyKey[];
	readonly expected: string;
}

function refusalOf(document: unknown, { format, version, what }: JsonForm<z.ZodType>): Expectation | null {
	if (typeof document !== "object" || document === null || Array.isArray(document)) {
		return { path: [], expected: `${what}, an object with "format": "${format}"` };
	}
	const head = document as { format?: unknown; version?: unknown };
	if (head.format !== format) return { path: ["format"], expected: `"${format}", as this is to be ${what}` };
	if (head.version === version) return null;
	const newer = typeof head.version === "number" && head.version > version;
	return { path: ["version"], expected: newer ? `version ${version} or older (this file is from a newer program)` : `version ${version}` };
}

/** An absent value has no place of its own: the fault stands where its parent begins. */
function nearestOffset(offsets: ReadonlyMap<string, number>, path: readonly PropertyKey[]): number {
	for (let length = path.length; length > 0; length--) {
		const offset = offsets.get(pathText(path.slice(0, length)));
		if (offset !== undefined) return offset;
	}
	return offsets.get("") ?? 0;
}

function shown(document: unknown, path: readonly PropertyKey[]): string {
	let value: unknown = document;
	for (const key of path) {
		if (typeof value !== "object" || value === null || !Object.hasOwn(value, key)) return "nothing";
		value = (value as Record<PropertyKey, unknown>)[key];
	}
	const text = JSON.stringify(value);
	return text.length > 80 ? `${text.slice(0, 80)}...` : text;
}

const KINDS: Readonly<Record<string, string>> = {
	string: "text",
	number: "a number",
	int: "a whole number",
	boolean: "true or false",
	array: "a list",
	object: "an object",
	record: "an object",
	null: "null",
};

function expectations(issue: z.core.$ZodIssue): readonly Expectation[] {
	const { path } = issue;
	switch (issue.code) {
		case "invalid_type":
			return [{ path, expected: KINDS[issue.expected] ?? issue.expected }];
		case "too_small":
			return [{ path, expected: `${issue.inclusive === false ? "more than" : "at least"} ${issue.minimum}${counted(issue.origin)}` }];
		case "too_big":
			return [{ path, expected: `${issue.inclusive === false ? "less than" : "at most"} ${issue.maximum}${counted(issue.origin)}` }];
		case "invalid_value":
			return [{ path, expected: `one of ${issue.values.map((value) => JSON.stringify(value)).join(", ")}` }];
		case "unrecognized_keys":
			return issue.keys.map((key) => ({ path: [...path, key], expected: "no such name here" }));
		case "invalid_key":
			return [{ path, expected: "a name that is not empty" }];
		default:
			return [{ path, expected: issue.message }];
	}
}

function counted(origin: string): string {
	if (origin === "string") return " characters";
	return origin === "array" ? " entries" : "";
}
