import type { Hz } from "@skipwright/units";
import type { DialOptions } from "./dial.ts";
import type { DialConvention, EmissionClass, Mode, Published, ServiceId, Spectrum } from "./types.ts";

/** True when the two share at least a point. */
export function overlaps(a: Spectrum, b: Spectrum): boolean {
	return a.lowHz <= b.highHz && b.lowHz <= a.highHz;
}

/** The spectrum that a published signal occupies. */
export function spectrumOfPublished(_published: Published, _shiftHz?: number): Spectrum {
	throw new Error("not built yet");
}

export interface OnTheDial extends DialOptions {
	readonly dialHz: Hz;
	readonly mode: Mode;
	readonly convention: DialConvention;
	/** What is sent; by default speech on USB, LSB and AM, Morse on CW, DSC or NBDP on FSK. */
	readonly emission?: EmissionClass | undefined;
	readonly service?: ServiceId | undefined;
}

/** The spectrum occupied when a set sends (or tunes) with this dial and mode. */
export function occupiedSpectrum(_place: OnTheDial): Spectrum {
	throw new Error("not built yet");
}
