import type { HeardChart } from "../chart/chartReceiver.ts";
import { DSC_SHIFT_HZ } from "../dsc/dscCall.ts";
import type { HeardDsc } from "../dsc/heardDsc.ts";
import type { HeardBase } from "../receiver.ts";
import type { HeardTeletype } from "../teletype/heardTeletype.ts";
import type { HeardText } from "../text/heardText.ts";
import type { HeardTone } from "../tone/heardTone.ts";
import type { HeardVoice } from "../voice/heardVoice.ts";

type Where = "kind" | "startS" | "endS" | "audioHz";
/** What of a signal tells where in time and in the audio it lies. */
export type Claimant =
	| Pick<HeardDsc | HeardText, Where>
	| Pick<HeardTeletype, Where | "shiftHz">
	| Pick<HeardChart, Where | "whiteHz" | "blackHz">
	| Pick<HeardVoice, Where>
	| KeyedPair;

/** Two tones that are keyed in turn, of a signal that nothing here reads. */
export interface KeyedPair extends Pick<HeardBase, "startS" | "endS" | "audioHz"> {
	readonly kind: "pair";
	readonly shiftHz: number;
}

/** Seconds before and after a keyed signal or chart in which its carrier, phasing or black may stand alone. */
const BESIDE_S = 30;
/** Hz beyond a keyed signal's tones that its keying reaches. */
const KEYING_HZ = 60;
/** Hz beyond black and white of a chart at which the tones of its start and stop still have lines, and seconds in which those are done. */
const CHART_HZ = 1_500,
	STOP_S = 5;

/** Hz within which a tone is one of a keyed pair's. */
const SAME_TONE_HZ = 10;
/** Seconds: a shorter tone within a voice is a vowel. */
const VOWEL_S = 3;
/** Share of its time in which a voice must stand by itself. */
const SHARE_ALONE = 0.5;

/** Whether a tone or a voice is part of what a surer receiver has heard, and so nothing by itself. */
export function isClaimed({ kind, startS, endS, audioHz }: HeardTone | HeardVoice, by: Claimant): boolean {
	if (by.kind === "voice") return kind === "tone" && endS - startS < VOWEL_S && startS >= by.startS && endS <= by.endS;
	if (kind === "voice" && by.kind === "pair") return false;
	if (kind === "voice") return Math.min(endS, by.endS) - Math.max(startS, by.startS) > SHARE_ALONE * (endS - startS);
	const gapS = Math.max(startS - by.endS, by.startS - endS);
	if (gapS > BESIDE_S) return false;
	const awayHz = Math.abs(audioHz - by.audioHz);
	switch (by.kind) {
		case "pair":
			return Math.abs(awayHz - by.shiftHz / 2) < SAME_TONE_HZ;
		case "dsc":
		case "text":
			return awayHz < DSC_SHIFT_HZ / 2 + KEYING_HZ;
		case "teletype":
			return awayHz < by.shiftHz / 2 + KEYING_HZ;
		case "chart": {
			const edgeHz = Math.abs(by.whiteHz - by.blackHz) / 2;
			return gapS < STOP_S ? awayHz < edgeHz + CHART_HZ : Math.abs(awayHz - edgeHz) < KEYING_HZ;
		}
	}
}
