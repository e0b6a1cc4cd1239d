import { textLines } from "./reachLines.ts";
import { svgElement, svgWords } from "./reachSvg.ts";

/** px */
export const WORDS = { size: 12.5, lineHeight: 15.5 };

/** The words beside a bar or a strip, ready in lines. */
export interface Label {
	/** The first line of the text, as often broken as it needs: set bold. */
	readonly name: readonly string[];
	readonly rest: readonly string[];
	readonly height: number;
}

/** A label in lines no broader than `breadth`; what stands after a line break begins a new one. */
export function labelLines(text: string, breadth: number): Label {
	const [name = [], ...rest] = text.split("\n").map((line) => textLines(line, breadth, WORDS.size));
	return { name, rest: rest.flat(), height: (name.length + rest.flat().length) * WORDS.lineHeight };
}

/** A label whose upper edge is at `y`. */
export function drawnLabel({ name, rest }: Label, x: number, y: number): string {
	const foot = y + WORDS.size - 0.5;
	const style = { class: "reach-label", "font-size": WORDS.size };
	return svgElement("g", style, [
		wordLines(name, x, foot, WORDS.lineHeight, { "font-weight": "bold" }),
		wordLines(rest, x, foot + name.length * WORDS.lineHeight, WORDS.lineHeight, {}),
	]);
}

/** A label as part of a sentence. */
export function labelInWords(text: string): string {
	return text
		.split("\n")
		.filter((line) => line.trim() !== "")
		.join(", ");
}

/** Lines of words under each other: `foot` is where the first one stands. */
export function wordLines(
	lines: readonly string[],
	x: number,
	foot: number,
	lineHeight: number,
	attributes: Readonly<Record<string, string | number>>,
): string {
	const words = lines.map((line, i) => svgWords("text", { x, y: foot + i * lineHeight }, line));
	return words.length === 0 ? "" : svgElement("g", attributes, words);
}
