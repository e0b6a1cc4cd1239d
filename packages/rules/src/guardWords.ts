import { formatKhz } from "@skipwright/units";
import type { Guard } from "./types.ts";

/**
 * Words that mark a place as a guard place; a tag must hold one of them, or the carrier figure, before a send on a guard
 * carrier passes. Common practice, no source: what fitters write into six to ten letters. Long words count anywhere in the tag.
 * Short ones count only as a whole run of letters, alone or strung together (DISTCALL), because inside other words they mean
 * nothing: CALLAO and SARDINIA are places, DISTANT is no distress.
 */
export const GUARD_WORDS: readonly string[] = [
	"DISTRESS",
	"EMERGENCY",
	"CALLING",
	"MAYDAY",
	"SAFETY",
	"RESCUE",
	"GMDSS",
	"GUARD",
	"EMERG",
	"DIST",
	"SAFE",
	"CALL",
	"SAR",
	"SOS",
];

/** Letters from which on a word is taken wherever it stands. */
const LONG = 5;
/** Letters that a word cut off by the tag's length must still have, as in DISTRE. */
const LEAST_CUT = 4;
/** What else may stand in a run of letters beside a guard word without making another word of it. */
const BESIDE = ["MHZ", "DSC", "INTL", "INT", "MF", "HF", "M"];

const LONG_WORDS = GUARD_WORDS.filter((word) => word.length >= LONG);
const WHOLE_OR_CUT = GUARD_WORDS.flatMap((word) => [
	word,
	...Array.from({ length: Math.max(word.length - LEAST_CUT, 0) }, (_, i) => word.slice(0, LEAST_CUT + i)),
]).join("|");
const GUARD_RUN = new RegExp(`^(?:${BESIDE.join("|")})*(?:${WHOLE_OR_CUT})(?:${WHOLE_OR_CUT}|${BESIDE.join("|")})*$`);

/** True when the tag holds a guard word, whole or cut off, or the guard's own carrier figure (with or without its point). */
export function isGuardTag(tag: string, guard: Guard): boolean {
	const upper = tag.toUpperCase();
	return (
		LONG_WORDS.some((word) => upper.includes(word)) || letterRuns(upper).some((run) => GUARD_RUN.test(run)) || holdsFigure(upper, guard)
	);
}

function letterRuns(upper: string): readonly string[] {
	return upper.match(/[A-Z]+/g) ?? [];
}

function holdsFigure(upper: string, guard: Guard): boolean {
	const figure = formatKhz(guard.hz);
	const numbers: readonly string[] = upper.match(/\d+(?:\.\d+)?/g) ?? [];
	return numbers.some((number) => number.replace(/\.0+$/, "") === figure || number === figure.replace(".", ""));
}
