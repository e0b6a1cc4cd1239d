import type { HeardKind } from "../hear/heard.ts";

/** What should be heard of a listing, and where the set stands for it. */
export interface TuningExpectation {
	readonly kind: HeardKind;
	/** Hz. Where it should lie in the audio with the dial as it stands: 1700 for calls and texts, 1900 for charts. Of tones, all that are sent. */
	readonly nominalAudioHz: readonly number[];
	readonly toleranceHz: number;
	/** Hz. What the dial shows, and the least by which it can be turned. */
	readonly dialHz: number;
	readonly stepHz: number;
	/** Sideband that the audio is of, also in a mode of another name. */
	readonly mode: "USB" | "LSB";
	/** Hz. What the dial must show for it in the mode that the set stands in, where that was looked up and `dialHz` is as someone keyed it. */
	readonly listedDialHz: number | null;
	/** Hz. What the dial must show for it on the upper sideband. */
	readonly usbDialHz: number | null;
}
