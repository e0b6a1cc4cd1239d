import type { HeardBase } from "../receiver.ts";

/** A steady tone, or one that comes and goes at one frequency. A long one comes in parts of a minute, each an item. */
export interface HeardTone extends HeardBase {
	readonly kind: "tone";
	/** Part of the time from start to end in which it was on, 0 to 1: below about 0.9 it is keyed. */
	readonly onRatio: number;
	/** The same in a sentence. */
	readonly summary: string;
}
