/** Reads TypeScript far enough to tell code from text: which modules a file imports, and its code without comments and strings. */

export interface Import {
	/** null where the specifier is computed. */
	readonly specifier: string | null;
	readonly line: number;
}

const IMPORTS = [
	/\b(?:import|export)\b[^;'"`()]*?\bfrom\s*(["'])/g, // import x from "y", export { x } from "y", over several lines
	/\bimport\s*(["'])/g,
	/(?<![.\w$])(?:import|require)\s*\(\s*(["'`]?)/g,
];

/** Every import of a source text, static, for its effect, or dynamic. Types count: they are arrows too. */
export function importsOf(source: string): readonly Import[] {
	const code = codeOnly(source);
	return IMPORTS.flatMap((pattern) =>
		[...code.matchAll(pattern)].map((match) => {
			const quote = match[1] ?? "";
			const from = match.index + match[0].length;
			const specifier = quote === "" ? null : source.slice(from, code.indexOf(quote, from));
			return { specifier, line: lineOf(source, match.index) };
		}),
	).sort((a, b) => a.line - b.line);
}

/** The line, from 1, of an offset. */
export function lineOf(source: string, offset: number): number {
	return source.slice(0, offset).split("\n").length;
}

const BEFORE_REGEX = /(?:^|[=(,:[!&|?{;+\-*%<>~^]|\b(?:return|typeof|case|in|of|delete|void|throw|new|do|else|await|yield))$/;
const LONGEST_BEFORE = 40;

/**
 * The source with comments and the contents of strings, templates and regular expressions blanked, same length and lines. The
 * quotes stay, and so does the code inside a template's `${}`.
 */
export function codeOnly(source: string): string {
	const out = source.split("");
	const blank = (from: number, to: number) => {
		for (let i = from; i < Math.min(to, source.length); i++) if (out[i] !== "\n") out[i] = " ";
	};
	/** One entry for each template being read: how many braces are open in its `${}`. */
	const templates: number[] = [];
	let before = ""; // the code of late, to tell a division from a regular expression
	let at = 0;

	while (at < source.length) {
		const char = source[at] ?? "";
		const pair = source.slice(at, at + 2);
		const depth = templates.at(-1);
		let end = at + 1;
		if (pair === "//") {
			end = orEnd(source, source.indexOf("\n", at));
			blank(at, end);
		} else if (pair === "/*") {
			end = orEnd(source, source.indexOf("*/", at + 2) + 2, 1);
			blank(at, end);
		} else if (char === '"' || char === "'") {
			end = pastClosing(source, at + 1, char);
			blank(at + 1, end - 1);
			before = char;
		} else if (char === "`" || (char === "}" && depth === 0)) {
			if (char === "}") templates.pop();
			end = pastTemplateText(source, at + 1);
			const opens = source.slice(end - 2, end) === "${";
			blank(at + 1, opens ? end - 2 : end - 1);
			if (opens) templates.push(0);
			before = opens ? "{" : "`";
		} else if (char === "/" && BEFORE_REGEX.test(before.trimEnd())) {
			end = pastRegex(source, at + 1);
			blank(at + 1, end - 1);
			before = ")"; // a value, as far as a next slash is concerned
		} else {
			if (depth !== undefined && char === "{") templates[templates.length - 1] = depth + 1;
			if (depth !== undefined && char === "}") templates[templates.length - 1] = depth - 1;
			before = (before + char).slice(-LONGEST_BEFORE);
		}
		at = end;
	}
	return out.join("");
}

function orEnd(source: string, offset: number, least = 0): number {
	return offset < least || offset === -1 ? source.length : offset;
}

function pastClosing(source: string, from: number, quote: string): number {
	let at = from;
	while (at < source.length && source[at] !== quote && source[at] !== "\n") at += source[at] === "\\" ? 2 : 1;
	return at + 1;
}

/** To behind the closing backquote or the next `${`. */
function pastTemplateText(source: string, from: number): number {
	let at = from;
	while (at < source.length && source[at] !== "`" && source.slice(at, at + 2) !== "${") at += source[at] === "\\" ? 2 : 1;
	return source[at] === "`" ? at + 1 : at + 2;
}

function pastRegex(source: string, from: number): number {
	let at = from;
	let inClass = false;
	while (at < source.length && source[at] !== "\n" && (inClass || source[at] !== "/")) {
		if (source[at] === "[") inClass = true;
		if (source[at] === "]") inClass = false;
		at += source[at] === "\\" ? 2 : 1;
	}
	return at + 1;
}
