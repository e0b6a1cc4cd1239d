import { emissionFamily } from "./emissionTable.ts";
import type { DialConvention, EmissionClass, Mode, ModeDisplay, ServiceId } from "./types.ts";

/** Hz. Centre of a weather chart in the audio: black 1500, white 2300. WMO practice (WMO-No. 386, from memory); fax lists. */
export const CHART_AUDIO_CENTRE_HZ = 1_900;
/** Hz. Centre of DSC, NBDP and NAVTEX in the audio. ITU-R M.493, M.625 (from memory); also the usual choice for teletype. */
export const KEYED_AUDIO_CENTRE_HZ = 1_700;
/** Hz between the two tones of DSC, NBDP and NAVTEX. ITU-R M.493, M.625 (from memory). */
export const KEYED_SHIFT_HZ = 170;
/** Hz between the two tones of an HF teletype broadcast; 425 and 850 are met too (practice, from memory). */
export const TELETYPE_SHIFT_HZ = 450;
/** Hz between black and white of a chart. */
export const CHART_SHIFT_HZ = 800;
/** Hz. Assigned frequency of single-sideband speech above its carrier (RR Appendix 17 Part A). */
export const ASSIGNED_ABOVE_CARRIER_HZ = 1_400;

export interface DialOptions {
	/** Hz. Audio at which the decoder wants the centre of a data or chart signal; wins over the set's and the usual figure. */
	readonly audioCentreHz?: number | undefined;
	/** Hz. Note wanted of a Morse carrier; wins over the set's own. */
	readonly pitchHz?: number | undefined;
	/** Hz between the two tones of a teletype; default 450, always 170 for DSC, NBDP and NAVTEX. */
	readonly shiftHz?: number | undefined;
}

/** What of a signal matters for the way from its reference frequency to a dial. */
export interface DialSignal {
	readonly emission: EmissionClass;
	readonly service?: ServiceId | undefined;
}

/** A mode that a profile leaves out is read as most sets show it: FSK the centre, all others the carrier. */
const USUAL_DISPLAY: Readonly<Record<Mode, ModeDisplay>> = {
	USB: { shows: "carrier" },
	LSB: { shows: "carrier" },
	AM: { shows: "carrier" },
	CW: { shows: "carrier" },
	FSK: { shows: "centre" },
};

export function displayOf(mode: Mode, convention: DialConvention): ModeDisplay {
	return convention[mode] ?? USUAL_DISPLAY[mode];
}

/** +1 where audio rises with radio frequency, -1 where it falls. */
export function sidebandSign(mode: Mode, display: ModeDisplay): 1 | -1 {
	return (display.sideband ?? (mode === "LSB" ? "lower" : "upper")) === "lower" ? -1 : 1;
}

export function usualAudioCentreHz({ emission }: DialSignal): number {
	return emissionFamily(emission) === "chart" ? CHART_AUDIO_CENTRE_HZ : KEYED_AUDIO_CENTRE_HZ;
}

/** Whole hertz, so that the way there and the way back are the same. */
export function audioCentreHz(display: ModeDisplay, signal: DialSignal, options: DialOptions): number {
	return Math.round(options.audioCentreHz ?? display.audioCentreHz ?? usualAudioCentreHz(signal));
}

/** Hz between the mark and the far tone by which a mode that shows the mark stands off the centre. */
export function shiftHz(display: ModeDisplay, { emission, service }: DialSignal, options: DialOptions): number {
	if (emissionFamily(emission) === "chart") return CHART_SHIFT_HZ;
	if (service === "dsc-watch" || service === "navtex" || service === "nbdp-msi") return KEYED_SHIFT_HZ;
	return options.shiftHz ?? display.shiftHz ?? (service === "rtty-weather" ? TELETYPE_SHIFT_HZ : KEYED_SHIFT_HZ);
}

/**
 * Dial minus reference, in whole hertz, where the reference is the carrier of speech and Morse and the centre of all else.
 * Defined for every mode, also for one that cannot receive the signal: a list may hold it.
 */
export function dialOffsetHz(mode: Mode, convention: DialConvention, signal: DialSignal, options: DialOptions): number {
	const display = displayOf(mode, convention);
	if (mode === "AM") return 0;
	if (mode === "CW") return -pitchOf(display, options);
	switch (emissionFamily(signal.emission)) {
		case "speech":
		case "carrier":
			return speechOffset(mode, display);
		case "morse":
			return display.shows === "carrier" ? -sidebandSign(mode, display) * Math.round(options.pitchHz ?? 0) : 0;
		case "keyed":
		case "data":
		case "chart":
			return toneOffset(mode, display, signal, options);
	}
}

function pitchOf(display: ModeDisplay, options: DialOptions): number {
	return Math.round(options.pitchHz ?? display.pitchHz ?? 0);
}

/** A display that shows the centre or the mark stands that far from the suppressed carrier, for speech as for tones. */
function speechOffset(mode: Mode, display: ModeDisplay): number {
	const sign = sidebandSign(mode, display);
	switch (display.shows) {
		case "carrier":
			return 0;
		case "centre":
			return sign * Math.round(display.audioCentreHz ?? ASSIGNED_ABOVE_CARRIER_HZ);
		case "mark":
			return sign * Math.round(display.audioCentreHz ?? KEYED_AUDIO_CENTRE_HZ) + markOffset(display, display.shiftHz ?? KEYED_SHIFT_HZ);
	}
}

function toneOffset(mode: Mode, display: ModeDisplay, signal: DialSignal, options: DialOptions): number {
	switch (display.shows) {
		case "carrier":
			return -sidebandSign(mode, display) * audioCentreHz(display, signal, options);
		case "centre":
			return 0; // the set takes the audio centre off by itself: never twice
		case "mark":
			return markOffset(display, shiftHz(display, signal, options));
	}
}

function markOffset({ sense }: ModeDisplay, shift: number): number {
	const half = Math.round(shift / 2);
	return sense === "reversed" ? half : -half;
}
