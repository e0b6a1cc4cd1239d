import { printable } from "./typstValue.ts";

/** Text as it may stand in XML: printable, and no character of it markup. */
export function escaped(text: string): string {
	return printable(text)
		.replace(/[\ufffe\uffff]/g, "\ufffd") // no characters of XML
		.replaceAll("&", "&amp;")
		.replaceAll("<", "&lt;")
		.replaceAll(">", "&gt;")
		.replaceAll('"', "&quot;")
		.replaceAll("'", "&#39;");
}

/**
 * A number as pictures write it: three decimals at most, never `-0`.
 * @throws RangeError for a number that is not finite
 */
export function figure(value: number): string {
	if (!Number.isFinite(value)) throw new RangeError(`Cannot draw at ${value}: expected a finite number`);
	return String(Number(value.toFixed(3)) + 0);
}

export type SvgAttributes = Readonly<Record<string, string | number>>;

/** One element; `children` are markup already. */
export function svgElement(name: string, attributes: SvgAttributes, children: readonly string[] = []): string {
	const open = `<${name}${attributesText(attributes)}`;
	const inside = children.filter((child) => child !== "");
	return inside.length === 0 ? `${open}/>` : `${open}>\n${inside.join("\n")}\n</${name}>`;
}

/** One element that holds text. */
export function svgWords(name: string, attributes: SvgAttributes, text: string): string {
	return `<${name}${attributesText(attributes)}>${escaped(text)}</${name}>`;
}

function attributesText(attributes: SvgAttributes): string {
	return Object.entries(attributes)
		.map(([key, value]) => ` ${key}="${typeof value === "number" ? figure(value) : escaped(value)}"`)
		.join("");
}

/** Path data of a rectangle; nothing of it when it has no area. */
export function rectanglePath(x1: number, y1: number, x2: number, y2: number): string {
	return x1 === x2 || y1 === y2 ? "" : `M${figure(x1)} ${figure(y1)}H${figure(x2)}V${figure(y2)}H${figure(x1)}Z`;
}
