/** One thing wrong with a JSON text, and where. */
export interface JsonFault {
	/** Index into the text. */
	readonly offset: number;
	readonly expected: string;
}

export interface JsonMap {
	readonly fault: JsonFault | null;
	/** Where each value starts, by its path as `pathText` writes it; "" is the whole document. */
	readonly offsets: ReadonlyMap<string, number>;
}

/** Deepest nesting that is read; a job needs eight levels. */
const DEEPEST = 64;

/**
 * Finds the first fault of a JSON text (RFC 8259), and where each value stands in it. `JSON.parse` makes the value;
 * engines differ in what they say about where it failed, and none of them minds a name given twice.
 */
export function mapJson(text: string): JsonMap {
	const offsets = new Map<string, number>();
	try {
		const end = skipSpace(text, readValue(text, skipSpace(text, 0), "", 0, offsets));
		if (end < text.length) refuse(end, "nothing after the end of the document");
		return { fault: null, offsets };
	} catch (error) {
		if (error instanceof Refusal) return { fault: error.fault, offsets };
		throw error;
	}
}

/** A path as messages write it. @example `pathText(["pins", 0, "place"])` is `"pins[0].place"` */
export function pathText(path: readonly PropertyKey[]): string {
	return path.reduce<string>((text, key) => childPath(text, typeof key === "symbol" ? String(key) : key), "");
}

/** 1-based line and column of an index into the text. */
export function lineAndColumn(text: string, offset: number): { readonly line: number; readonly column: number } {
	const before = text.slice(0, offset).split(/\r\n|\r|\n/);
	return { line: before.length, column: (before.at(-1) ?? "").length + 1 };
}

class Refusal extends Error {
	readonly fault: JsonFault;
	constructor(fault: JsonFault) {
		super(fault.expected);
		this.fault = fault;
	}
}

function refuse(offset: number, expected: string): never {
	throw new Refusal({ offset, expected });
}

function childPath(parent: string, key: string | number): string {
	if (typeof key === "number") return `${parent}[${key}]`;
	if (!/^[A-Za-z_][\w-]*$/.test(key)) return `${parent}[${JSON.stringify(key)}]`;
	return parent === "" ? key : `${parent}.${key}`;
}

function skipSpace(text: string, from: number): number {
	let at = from;
	while (at < text.length && " \t\n\r".includes(text[at] ?? "")) at++;
	return at;
}

const WORD = /true|false|null/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** @returns the index after the value */
function readValue(text: string, at: number, path: string, depth: number, offsets: Map<string, number>): number {
	offsets.set(path, at);
	if (depth > DEEPEST) refuse(at, `at most ${DEEPEST} levels of nesting`);
	const first = text[at];
	if (first === "{") return readObject(text, at, path, depth, offsets);
	if (first === "[") return readArray(text, at, path, depth, offsets);
	if (first === '"') return readString(text, at);
	return (
		matchEnd(WORD, text, at) ??
		matchEnd(NUMBER, text, at) ??
		refuse(at, "a value: an object, an array, a string in double quotes, a number, true, false or null")
	);
}

function readObject(text: string, open: number, path: string, depth: number, offsets: Map<string, number>): number {
	const names = new Set<string>();
	let at = skipSpace(text, open + 1);
	if (text[at] === "}") return at + 1;
	for (;;) {
		if (text[at] !== '"') refuse(at, "a name in double quotes");
		const end = readString(text, at);
		const name = JSON.parse(text.slice(at, end)) as string;
		if (names.has(name)) refuse(at, `the name ${JSON.stringify(name)} once in this object`);
		names.add(name);
		at = skipSpace(text, end);
		if (text[at] !== ":") refuse(at, "a colon after the name");
		at = skipSpace(text, readValue(text, skipSpace(text, at + 1), childPath(path, name), depth + 1, offsets));
		if (text[at] === "}") return at + 1;
		if (text[at] !== ",") refuse(at, "a comma or } after the value");
		at = skipSpace(text, at + 1);
	}
}

function readArray(text: string, open: number, path: string, depth: number, offsets: Map<string, number>): number {
	let at = skipSpace(text, open + 1);
	if (text[at] === "]") return at + 1;
	for (let index = 0; ; index++) {
		at = skipSpace(text, readValue(text, at, childPath(path, index), depth + 1, offsets));
		if (text[at] === "]") return at + 1;
		if (text[at] !== ",") refuse(at, "a comma or ] after the value");
		at = skipSpace(text, at + 1);
	}
}

function readString(text: string, open: number): number {
	let at = open + 1;
	while (at < text.length && text[at] !== '"') {
		// RFC 8259 section 7 bars control characters inside strings
		if (text.charCodeAt(at) < 0x20) break;
		at = text[at] === "\\" ? (matchEnd(ESCAPE, text, at) ?? refuse(at, "one of JSON's escapes after the backslash")) : at + 1;
	}
	return text[at] === '"' ? at + 1 : refuse(at, "a double quote that closes the string on its line");
}

function matchEnd(pattern: RegExp, text: string, at: number): number | null {
	pattern.lastIndex = at;
	return pattern.test(text) ? pattern.lastIndex : null;
}
