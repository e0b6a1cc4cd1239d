import type { HeardBase } from "../receiver.ts";

/**
 * What is likely speech. It is not decoded, and its pitch tells no offset: `audioHz` is the middle of its power, `uncertaintyHz`
 * half its width.
 */
export interface HeardVoice extends HeardBase {
	readonly kind: "voice";
	/** Hz. Between these lies all but a hundredth of its power on either side. */
	readonly lowHz: number;
	readonly highHz: number;
	/** Part of its power below 1000 Hz: over a half in speech that is tuned right, little on the wrong sideband or far off tune. */
	readonly lowPart: number;
	/** Its power lies where that of speech does not: wrong sideband, or far off tune. */
	readonly isOutOfPlace: boolean;
	/** The same in a sentence. */
	readonly summary: string;
}
