import type { Source } from "./candidate.ts";

/** Letters from which on the start of a word counts for the word: SHANN for Shannon, not SH. */
const LEAST_START = 4;

/** Whether a tag names the station of a source: a word of it is the call sign, or a word of the name or its start. */
export function isNamed(tag: string, { what }: Source): boolean {
	const names = wordsOf(what.split("),")[0] ?? what);
	return wordsOf(tag).some((word) => names.some((name) => name === word || (word.length >= LEAST_START && name.startsWith(word))));
}

/** Words of at least three letters, in capitals and without accents. */
function wordsOf(text: string): readonly string[] {
	const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toUpperCase();
	return plain.match(/[A-Z][A-Z0-9]{2,}/g) ?? [];
}
