import type { Hz } from "@skipwright/units";
import type { Dial, DialConvention, Mode, Published } from "./types.ts";

export interface DialOptions {
	/** Hz. Audio at which the decoder wants the centre of a data or chart signal; wins over the set's and the usual figure. */
	readonly audioCentreHz?: number | undefined;
	/** Hz. Note wanted of a Morse carrier, where the set's CW display does not say. */
	readonly pitchHz?: number | undefined;
	/** Hz between the two tones of a teletype; default 450, always 170 for DSC, NBDP and NAVTEX. */
	readonly shiftHz?: number | undefined;
}

/** What the dial must read for a published frequency, exact to the hertz, or why no dial does it. */
export function dialFor(
	_published: Published,
	_convention: DialConvention,
	_options: DialOptions & { readonly mode?: Mode | undefined } = {},
): Dial | { readonly cannot: string } {
	throw new Error("not built yet");
}

/** The published figure that a dial stands for: the inverse of `dialFor`, for every mode. */
export function publishedFor(
	_dialHz: Hz,
	_mode: Mode,
	_published: Omit<Published, "hz">,
	_convention: DialConvention,
	_options: DialOptions = {},
): Hz {
	throw new Error("not built yet");
}
