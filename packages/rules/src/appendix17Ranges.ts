import type { Spectrum } from "./types.ts";

/** A block of 3 kHz voice slots of Appendix 17. */
export interface VoiceRange extends Spectrum {
	readonly kind: "ship" | "simplex" | "coast" | "C-1" | "C-2";
	/** As in `Channel`. */
	readonly bandMhz: number;
}

export function appendix17VoiceRanges(): readonly VoiceRange[] {
	throw new Error("not built yet");
}

/** True when the whole spectrum lies in voice slots (adjoining blocks count as one). */
export function isInAppendix17Voice(_spectrum: Spectrum): boolean {
	throw new Error("not built yet");
}
