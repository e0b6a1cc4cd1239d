/** Plain data that can be written as a Typst literal. */
export type TypstData = string | number | boolean | null | readonly TypstData[] | { readonly [key: string]: TypstData };

/**
 * Plain data as a Typst code literal. Text always ends up inside a quoted Typst string, so nothing that a
 * person typed is ever read as markup or code. null becomes `none`.
 * @throws RangeError for a number that is not finite
 * @example `typstValue({ tag: "A\"#b" })` is `("tag": "A\"#b")` with the quote escaped
 */
export function typstValue(data: TypstData): string {
	if (data === null) return "none";
	if (typeof data === "string") return typstString(data);
	if (typeof data === "boolean") return String(data);
	if (typeof data === "number") {
		if (!Number.isFinite(data)) throw new RangeError(`Cannot write ${data} into a Typst document: expected a finite number`);
		return data < 0 ? `(${data})` : String(data);
	}
	if (isArray(data)) return `(${data.map((item) => `${typstValue(item)},`).join("")})`;
	const entries = Object.entries(data).map(([key, value]) => `${typstString(key)}: ${typstValue(value)},`);
	// `()` is an empty array in Typst, `(:)` an empty dictionary
	return entries.length === 0 ? "(:)" : `(\n${entries.join("\n")}\n)`;
}

function isArray(data: TypstData): data is readonly TypstData[] {
	return Array.isArray(data);
}

/** C0 and C1 controls, the marks that reorder text, line and paragraph separators, and characters that stand for nothing. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is taken out
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffb]/g;

/**
 * Text as it can stand on paper: tabs and line breaks become spaces; controls, lone surrogates and marks that
 * would print characters in another order become U+FFFD, which prints as a visible sign.
 */
export function printable(text: string): string {
	return text
		.toWellFormed()
		.replace(/[\t\r\n]+/g, " ")
		.replace(UNPRINTABLE, "\ufffd");
}

function typstString(text: string): string {
	return `"${printable(text).replace(/["\\]/g, "\\$&")}"`;
}
