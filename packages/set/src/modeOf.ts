import { MODES, type Mode } from "@skipwright/rules";
import type { Profile } from "./profile.ts";

/**
 * One of the five modes from its own word or, where a profile is given, from the maker's; the case of letters does not count.
 * @throws SyntaxError naming the five and the maker's words
 */
export function modeOf(profile: Profile | null, word: string): Mode {
	const key = word.trim().toUpperCase();
	const own = MODES.find((mode) => mode === key);
	if (own !== undefined) return own;
	const names = Object.entries(profile?.modeNames ?? {});
	const named = names.find(([name]) => name.trim().toUpperCase() === key)?.[1];
	if (named !== undefined) return named;
	throw new SyntaxError(`expected ${modesExpected(profile)}, got ${JSON.stringify(word)}`);
}

/** "one of USB, LSB, AM, CW, FSK", with the maker's words where a profile has some. */
export function modesExpected(profile: Profile | null): string {
	const names = Object.keys(profile?.modeNames ?? {});
	const five = `one of ${MODES.join(", ")}`;
	return names.length === 0 ? five : `${five}, or the maker's ${names.join(", ")}`;
}
