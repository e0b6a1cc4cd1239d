import type { Heard, HeardVoice } from "@skipwright/modem";

/** One item heard, as the receivers give it. */
export type HeardItem = Heard | HeardVoice;

/** What can be heard, in words that receivers, expectations and evidence share. */
export type SoundKind = HeardItem["kind"];
export const SOUND_KINDS = ["dsc", "text", "teletype", "chart", "tone", "voice"] as const satisfies readonly SoundKind[];

export const KIND_WORDS: Readonly<Record<SoundKind, string>> = {
	dsc: "a selective call",
	text: "text by collective FEC",
	teletype: "teletype",
	chart: "a chart",
	tone: "a tone",
	voice: "speech",
};
