import { escaped } from "./reachSvg.ts";

export type HtmlAttributes = Readonly<Record<string, string | number>>;

/** Elements that have no end tag. */
const VOID: ReadonlySet<string> = new Set(["meta", "input", "br", "col"]);

/**
 * One element of a page that reads the same as HTML and as XML; `children` are markup already, empty ones are left out.
 * @throws RangeError for children of an element that can have none
 */
export function htmlElement(name: string, attributes: HtmlAttributes, children: readonly string[] = []): string {
	const open = `<${name}${Object.entries(attributes)
		.map(([key, value]) => ` ${key}="${escaped(String(value))}"`)
		.join("")}`;
	if (!VOID.has(name)) return `${open}>${children.join("")}</${name}>`;
	if (children.length > 0) throw new RangeError(`Cannot put anything into <${name}>: expected no children`);
	return `${open}/>`;
}

/** One element that holds text. */
export function htmlWords(name: string, attributes: HtmlAttributes, text: string): string {
	return htmlElement(name, attributes, [escaped(text)]);
}

/** Words that a person gave, set apart so that those of another direction of writing leave their neighbours in order. */
export function given(text: string): string {
	return htmlWords("bdi", {}, text);
}

/** A part that is folded away until somebody wants it; paper shows it. `summary` is markup. */
export function folded(summary: string, children: readonly string[], attributes: HtmlAttributes = {}): string {
	return htmlElement("details", attributes, [htmlElement("summary", {}, [summary]), ...children]);
}
