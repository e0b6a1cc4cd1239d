import type { HeardKind } from "@skipwright/modem";

/** How each kind sounds to an ear. */
export const SOUND_WORDS: Readonly<Record<HeardKind, string>> = {
	dsc: "a warble of two close tones for about seven seconds",
	text: "an even chirping of two close tones, without a pause",
	teletype: "an uneven warble of two tones well apart",
	chart: "a scratching that repeats twice a second, with a buzz at start and end",
	tone: "a steady note, with ticks each second",
	voice: "speech",
};

/** A time station of which no steady tone is known. */
export const PULSES_WORDS = "short pulses each second";
