import type { HeardBase, HeardChart, HeardDsc, HeardTeletype, HeardText } from "@skipwright/modem";

/** What can be heard, in words that receivers, expectations and evidence share. */
export const HEARD_KINDS = ["dsc", "text", "teletype", "chart", "tone", "voice"] as const;
export type HeardKind = (typeof HEARD_KINDS)[number];

/** A tone or speech: no more of it is asked here than where it lies. */
export interface HeardPlain extends HeardBase {
	readonly kind: "tone" | "voice";
}

/** One item heard, as the receivers give it. */
export type HeardItem = HeardDsc | HeardText | HeardTeletype | HeardChart | HeardPlain;

export const KIND_WORDS: Readonly<Record<HeardKind, string>> = {
	dsc: "a selective call",
	text: "text by collective FEC",
	teletype: "teletype",
	chart: "a chart",
	tone: "a tone",
	voice: "speech",
};
