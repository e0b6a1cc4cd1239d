/**
 * Breadth of characters as a share of the size of type: no less than in Source Sans 3, regular and bold, and about that of the plain
 * sans serif of a screen that has neither.
 */
const BREADTHS: readonly (readonly [pattern: RegExp, breadth: number])[] = [
	[/[ \u00a0]/, 0.28],
	[/[.,:;'|ijl]/, 0.3],
	[/[-()[\]{}/\\frtI!]/, 0.4],
	[/[mwMW@%]/, 0.92],
	[/[GOQ&]/, 0.78],
	[/[A-Z]/, 0.7],
	[/[ -~]/, 0.58],
	[/[\u00a0-\u024f]/, 0.9],
	[/[\u0300-\u036f]/, 0],
	[/[\u0370-\u052f]/, 0.96],
	[/[\u2e3a\u2e3b]/, 3], // dashes of two and three ems
];
/** Anything else: no other character of the family is broader. */
const BROADEST = 1.65;

/** Breadth that a text takes at most, in the unit of `size`. An estimate: a picture made without a screen cannot measure type. */
export function textBreadth(text: string, size: number): number {
	let breadth = 0;
	for (const character of text) breadth += BREADTHS.find(([pattern]) => pattern.test(character))?.[1] ?? BROADEST;
	return breadth * size;
}

/** A text in lines that each fit `breadth`: broken at spaces that may break, and inside a word that is longer than a line. Nothing is left out. */
export function textLines(text: string, breadth: number, size: number): readonly string[] {
	const lines: string[] = [];
	let line = "";
	for (const word of text.split(/[^\S\u00a0]+/).filter((part) => part !== "")) {
		const longer = line === "" ? word : `${line} ${word}`;
		if (textBreadth(longer, size) <= breadth) {
			line = longer;
			continue;
		}
		if (line !== "") lines.push(line);
		line = "";
		for (const character of word) {
			if (line !== "" && textBreadth(line + character, size) > breadth) {
				lines.push(line);
				line = "";
			}
			line += character;
		}
	}
	return line === "" ? lines : [...lines, line];
}
