import { type Profile, tagFits } from "@skipwright/set";

/**
 * A tag that the set can show and that no other place of the bank has: the first of `texts` that fits, then the same with a letter.
 * @param taken tags of the bank in use, trimmed and in capitals
 */
export function chooseTag(profile: Profile, texts: readonly string[], taken: ReadonlySet<string>): string {
	if (profile.tag.length === 0) return "";
	const isFree = (tag: string) => tag !== "" && tagFits(profile, tag) && !taken.has(tag.toUpperCase());
	const shown = texts.map((text) => showable(profile, text)).filter((text) => text !== "");
	const whole = shown.find(isFree);
	if (whole !== undefined) return whole;
	const cut = shown.map((text) => text.slice(0, profile.tag.length).trim());
	for (const suffix of ["", ..."ABCDEFGHIJKLMNOPQRSTUVWXYZ"]) {
		const tag = cut.map((text) => text.slice(0, profile.tag.length - suffix.length).trim() + suffix).find(isFree);
		if (tag !== undefined) return tag;
	}
	return "";
}

/** In capitals and without what the set cannot show; runs of blanks become one. Nothing where a figure would lose its point. */
function showable({ tag: { characters } }: Profile, text: string): string {
	const known = new Set(characters);
	if (!known.has(".") && /\d\.\d/.test(text)) return "";
	const letters = [...text.normalize("NFKD").replace(/\p{M}/gu, "").toUpperCase()];
	return letters
		.filter((letter) => known.has(letter))
		.join("")
		.replace(/ +/g, " ")
		.trim();
}
