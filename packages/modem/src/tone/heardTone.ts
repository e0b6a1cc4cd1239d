import type { HeardBase } from "../receiver.ts";

/** A steady tone, or one that comes and goes at one frequency. A long one comes in parts of a minute, each an item. */
export interface HeardTone extends HeardBase {
	readonly kind: "tone";
	/** Part of the time from start to end in which it was on, 0 to 1: below about 0.9 it is keyed. */
	readonly onRatio: number;
	/** The same in a sentence. */
	readonly summary: string;
}

/** Share of its time on below which a tone counts as keyed. */
const STEADY = 0.9;

export function toneSummary({ audioHz, startS, endS, onRatio }: Omit<HeardTone, "summary">): string {
	const keyed = onRatio < STEADY ? `, on ${Math.round(100 * onRatio)} % of the time` : "";
	return `Tone of ${audioHz.toFixed(2)} Hz for ${(endS - startS).toFixed(1)} s${keyed}.`;
}
