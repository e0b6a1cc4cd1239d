import type { HeardChart } from "../chart/chartReceiver.ts";
import { DSC_SHIFT_HZ } from "../dsc/dscCall.ts";
import type { HeardDsc } from "../dsc/heardDsc.ts";
import type { HeardBase } from "../receiver.ts";
import type { HeardTeletype } from "../teletype/heardTeletype.ts";
import type { HeardText } from "../text/heardText.ts";
import { type HeardTone, toneSummary } from "../tone/heardTone.ts";
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

/** Seconds about a signal that are its own, and so many more in which a tone that goes on is still the signal's carrier. */
const MARGIN_S = 1,
	GOES_ON_S = 3;
/** Seconds that the phasing of a text or a chart takes at most, and from its end to the first sign of a text that is read. */
const PHASING_S = 30,
	TEXT_GAP_S = 5;
/** Hz beyond a keyed signal's tones that its keying reaches. */
const KEYING_HZ = 60;
/** Hz beyond black and white of a chart at which the tones of its start and stop still have lines, and seconds in which those are done. */
const CHART_HZ = 1_500,
	STOP_S = 5;
/** Seconds of black that follow on a chart's stop tone. */
const BLACK_S = 10;

/** Hz within which a tone is one of a keyed pair's. */
const SAME_TONE_HZ = 10;
/** Seconds: a shorter tone within a voice is a vowel. */
const VOWEL_S = 3;
/** Share of its time in which a voice must stand by itself. */
const SHARE_ALONE = 0.5;

/**
 * What is left of a tone or a voice beside what a surer receiver has heard: null where it is part of that, and so nothing by itself; of a
 * tone that goes on before or after it, that part.
 */
export function unclaimed<Weak extends HeardTone | HeardVoice>(weak: Weak, by: Claimant): Weak | null {
	const { kind, startS, endS } = weak;
	if (by.kind === "voice") return kind === "tone" && endS - startS < VOWEL_S && startS >= by.startS && endS <= by.endS ? null : weak;
	if (kind === "voice") {
		const isWithin = Math.min(endS, by.endS) - Math.max(startS, by.startS) > SHARE_ALONE * (endS - startS);
		return by.kind !== "pair" && isWithin ? null : weak;
	}
	const span = spanAtPitch(weak, by);
	if (span === null || endS <= span.startS || startS >= span.endS) return weak;
	const [beforeS, afterS] = [span.startS - startS, endS - span.endS];
	if (Math.max(beforeS, afterS) < GOES_ON_S) return null;
	const left = beforeS > afterS ? { startS, endS: span.startS } : { startS: span.endS, endS };
	return { ...weak, ...left, summary: toneSummary({ ...weak, ...left }) };
}

interface Span {
	readonly startS: number;
	readonly endS: number;
}

/** When a tone of that pitch, at about that time, belongs to the signal; null for never. */
function spanAtPitch({ startS, endS, audioHz }: HeardTone | HeardVoice, by: Exclude<Claimant, { readonly kind: "voice" }>): Span | null {
	const awayHz = Math.abs(audioHz - by.audioHz);
	const about = (beforeS: number, afterS: number) => ({ startS: by.startS - beforeS - MARGIN_S, endS: by.endS + afterS + MARGIN_S });
	switch (by.kind) {
		case "pair":
			return Math.abs(awayHz - by.shiftHz / 2) < SAME_TONE_HZ ? about(0, 0) : null;
		case "dsc":
			return awayHz < DSC_SHIFT_HZ / 2 + KEYING_HZ ? about(0, 0) : null;
		case "text":
			return awayHz < DSC_SHIFT_HZ / 2 + KEYING_HZ ? about(endS > by.startS - TEXT_GAP_S ? PHASING_S : 0, 0) : null;
		case "teletype":
			return awayHz < by.shiftHz / 2 + KEYING_HZ ? about(0, 0) : null;
		case "chart": {
			const edgeHz = Math.abs(by.whiteHz - by.blackHz) / 2;
			if (awayHz > edgeHz + CHART_HZ) return null;
			const isEdge = Math.abs(awayHz - edgeHz) < KEYING_HZ;
			const isUpToIt = endS > by.startS - MARGIN_S;
			const followsStop = startS < by.endS + STOP_S + MARGIN_S;
			return about(isUpToIt ? (isEdge ? PHASING_S : STOP_S) : 0, followsStop ? (isEdge ? STOP_S + BLACK_S : STOP_S) : 0);
		}
	}
}
