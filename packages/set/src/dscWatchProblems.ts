import { guards } from "@skipwright/rules";
import { formatKhz, type Hz, hz } from "@skipwright/units";

/**
 * DSC distress frequencies that an MF/HF watch always holds; one at least of the others of the guard table goes with them. Source:
 * 47 CFR 80.1123, law for equipped ships and advice for a yacht that is not bound by it.
 */
const ALWAYS_WATCHED: readonly Hz[] = [hz(2_187_500), hz(8_414_500)];

/** Frequencies. More make the round of a scanning watch receiver too long. Source: IMO A.806(19), from memory. */
const MOST_WATCHED = 6;

/** The rule in words, for sheets. */
export const DSC_WATCH_RULE =
	"2187.5, 8414.5 and at least one of 4207.5, 6312, 12577, 16804.5 kHz, six at most: law for equipped ships, advice for a voluntary yacht";

/** What is wrong with a DSC watch table, in sentences' ends; empty where nothing is. */
export function dscWatchProblems(watchHz: readonly number[], tableSize: number): readonly string[] {
	const known = guards().flatMap((guard) => (guard.kind === "dsc" ? [guard.hz] : []));
	const others = known.filter((value) => !ALWAYS_WATCHED.includes(value));
	const text = (values: readonly number[]) => values.map((value) => formatKhz(hz(value))).join(", ");
	const missing = ALWAYS_WATCHED.filter((value) => !watchHz.includes(value));
	const strangers = watchHz.filter((value) => !known.some((guard) => guard === value));
	const most = Math.min(MOST_WATCHED, tableSize);
	return [
		...(missing.length > 0 ? [`${text(missing)} kHz missing`] : []),
		...(others.some((value) => watchHz.includes(value)) ? [] : [`one of ${text(others)} kHz missing`]),
		...(strangers.length > 0 ? [`${text(strangers)} kHz is no DSC distress frequency`] : []),
		...(new Set(watchHz).size < watchHz.length ? ["a frequency stands twice"] : []),
		...(watchHz.length > most ? [`${watchHz.length} frequencies, at most ${most}`] : []),
	];
}

/** The most that the rule lets a table hold: what is always watched, then the others as long as there is room. */
export function fullDscWatch(tableSize: number): readonly Hz[] {
	const others = guards().flatMap((guard) => (guard.kind === "dsc" && !ALWAYS_WATCHED.includes(guard.hz) ? [guard.hz] : []));
	return [...ALWAYS_WATCHED, ...others].slice(0, Math.min(MOST_WATCHED, tableSize)).toSorted((a, b) => a - b);
}
