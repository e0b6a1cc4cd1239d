import type { Profile } from "./profile.ts";

/** Why the set cannot show a tag, as the end of a sentence; null where it can. */
export function tagProblem(profile: Profile, tag: string): string | null {
	const { length, characters } = profile.tag;
	const shown = [...tag];
	if (shown.length > length) return `${shown.length} characters, the set shows ${length}`;
	const known = new Set(characters);
	const unknown = [...new Set(shown.filter((character) => !known.has(character)))];
	return unknown.length === 0 ? null : `the set has no ${unknown.map((character) => JSON.stringify(character)).join(", ")}`;
}

/** Whether the set can show a tag as it stands: not too long, and of its own characters alone. */
export function tagFits(profile: Profile, tag: string): boolean {
	return tagProblem(profile, tag) === null;
}
