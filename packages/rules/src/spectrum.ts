import type { Hz } from "@skipwright/units";
import { type DialOptions, dialOffsetHz, displayOf, sidebandSign, TELETYPE_SHIFT_HZ } from "./dialOffset.ts";
import { publishedOffsetHz } from "./reference.ts";
import { spectrumAround } from "./spectrumAround.ts";
import type { DialConvention, EmissionClass, Mode, Published, ServiceId, Spectrum } from "./types.ts";

/** True when the two share at least a point. */
export function overlaps(a: Spectrum, b: Spectrum): boolean {
	return a.lowHz <= b.highHz && b.lowHz <= a.highHz;
}

/** The spectrum that a published signal occupies. `teletypeShiftHz` default 450; DSC, NBDP and NAVTEX always ±150 Hz. */
export function spectrumOfPublished(published: Published, teletypeShiftHz?: number): Spectrum {
	return spectrumAround(published.hz - publishedOffsetHz(published), published.emission, {
		sideband: published.sideband,
		teletypeShiftHz: published.service === "rtty-weather" ? (teletypeShiftHz ?? TELETYPE_SHIFT_HZ) : undefined,
	});
}

export interface OnTheDial extends DialOptions {
	readonly dialHz: Hz;
	readonly mode: Mode;
	readonly convention: DialConvention;
	/** What is sent; by default speech on USB, LSB and AM, Morse on CW, DSC or NBDP on FSK. */
	readonly emission?: EmissionClass | undefined;
	readonly service?: ServiceId | undefined;
}

const SENT_ON: Readonly<Record<Mode, EmissionClass>> = { USB: "J3E", LSB: "J3E", AM: "A3E", CW: "A1A", FSK: "F1B" };

/** The spectrum occupied when a set sends (or hears a signal) with this dial and mode. Edges may lie below zero for a senseless dial. */
export function occupiedSpectrum(place: OnTheDial): Spectrum {
	const { dialHz, mode, convention, service } = place;
	const signal = { emission: place.emission ?? SENT_ON[mode], service };
	const display = displayOf(mode, convention);
	return spectrumAround(dialHz - dialOffsetHz(mode, convention, signal, place), signal.emission, {
		sideband: sidebandSign(mode, display) === 1 ? "upper" : "lower",
		// the signal's own shift, not the one that the set is switched to
		teletypeShiftHz: service === "rtty-weather" ? (place.shiftHz ?? TELETYPE_SHIFT_HZ) : undefined,
	});
}
