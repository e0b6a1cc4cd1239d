import type { HeardKind } from "@skipwright/modem";

/** What was heard, in a sentence. */
export const KIND_WORDS: Readonly<Record<HeardKind, string>> = {
	dsc: "a selective call",
	text: "text by collective FEC",
	teletype: "teletype",
	chart: "a chart",
	tone: "a tone",
	voice: "speech",
};
