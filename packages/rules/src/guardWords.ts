import type { Guard } from "./types.ts";

/** Pieces of a tag that mark a place as a guard place. */
export const GUARD_WORDS: readonly string[] = ["DIST", "MAYDAY", "SAFE", "SAR", "GMDSS", "EMERG", "CALL"];

/** True when the tag holds a guard word or the guard's own carrier figure. */
export function isGuardTag(_tag: string, _guard: Guard): boolean {
	throw new Error("not built yet");
}
