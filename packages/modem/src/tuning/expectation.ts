import type { HeardKind } from "../hear/heard.ts";

/** What should be heard of a listing, and where the set stands for it. */
export interface TuningExpectation {
	readonly kind: HeardKind;
	/** Hz. Where it should lie in the audio: 1700 for calls and texts, 1900 for charts. Of tones, all that are sent. */
	readonly nominalAudioHz: readonly number[];
	readonly toleranceHz: number;
	/** Hz. What the dial shows, and the least by which it can be turned. */
	readonly dialHz: number;
	readonly stepHz: number;
	readonly mode: "USB" | "LSB";
}
