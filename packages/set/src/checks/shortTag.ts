import type { Profile } from "../profile.ts";

/** A figure with the letter that may follow it, at the end of a tag or in it: "12290", "8A", "4209.5". */
const FIGURE = /\d[\d.]*(?:\p{L}(?!\p{L}))?/gu;

/**
 * An example of a tag that the set can show, from one that it cannot. Characters that it lacks become capitals, lose their
 * accents, or go. What is too long loses spaces, then what follows its last figure, then what stands before it: vowels first,
 * the first letter excepted, then letters, from the end. The figure stays, without decimals where it is too long itself.
 * Empty where the set shows none of it.
 * @example `"D12290"` for `"DIST 12290"` on a set that shows 6
 */
export function shortTag({ tag: { length, characters } }: Profile, tag: string): string {
	const known = new Set(characters);
	const shown = [...tag]
		.flatMap((character) => {
			const [plain = ""] = character.toUpperCase().normalize("NFD");
			return [character, character.toUpperCase(), plain].find((one) => known.has(one)) ?? [];
		})
		.join("")
		.trim();
	if ([...shown].length <= length) return shown;
	const figure = [...shown.matchAll(FIGURE)].at(-1);
	const whole = figure?.[0] ?? "";
	const from = figure?.index ?? shown.length;
	const kept = [...(whole.length > length ? (whole.split(".")[0] ?? whole) : whole)];
	const before = [...shown.slice(0, from).replaceAll(" ", "")];
	const after = [...shown.slice(from + whole.length).replaceAll(" ", "")];
	const excess = () => before.length + after.length + kept.length - length;
	for (const part of [after, before]) {
		dropLast(part, excess, (letter, i) => /[AEIOU]/i.test(letter) && (part === after || i > 0));
		dropLast(part, excess, () => true);
	}
	return [...before, ...kept, ...after].slice(-length).join("");
}

/** Takes letters away from the end while there are too many. */
function dropLast(letters: string[], excess: () => number, mayGo: (letter: string, i: number) => boolean): void {
	for (let i = letters.length - 1; i >= 0 && excess() > 0; i--) {
		if (mayGo(letters[i] ?? "", i)) letters.splice(i, 1);
	}
}
