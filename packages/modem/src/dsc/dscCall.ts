import { keyedBits, type MadeOptions } from "../signal/keyed.ts";
import type { DscCall } from "./call.ts";
import { makeDsc } from "./makeDsc.ts";
import { elementsOfCall, LONG_DOTS, SHORT_DOTS } from "./sequence.ts";

/** Signal of a call on MF and HF. Source: ITU-R M.493 and the sub-carrier of class J2B (both from memory). */
export const DSC_BAUD = 100;
export const DSC_SHIFT_HZ = 170;
export const DSC_CENTRE_HZ = 1_700;

export interface DscCallOptions extends MadeOptions {
	/** Hz. Middle between the tones. Default `DSC_CENTRE_HZ`. */
	readonly centreHz?: number;
	/** Elements of the dot pattern. Default as the call asks: `dotsOf`. */
	readonly dots?: number;
	/** Tones exchanged, as a receiver on the lower sideband hears them. */
	readonly isInverted?: boolean;
}

/**
 * A call as audio, dot pattern and phasing included; B is the higher tone.
 * @throws RangeError as `makeDsc`
 */
export function dscCall(call: DscCall, options: DscCallOptions = {}): Float64Array {
	return dscAudio(makeDsc(call), { dots: dotsOf(call), ...options });
}

/** The same from the call's symbols, format specifier once, to the end of sequence. */
export function dscAudio(
	symbols: readonly number[],
	{ centreHz = DSC_CENTRE_HZ, dots = LONG_DOTS, isInverted = false, ...made }: DscCallOptions = {},
): Float64Array {
	const elements = elementsOfCall(symbols, dots).map((element) => (isInverted ? 1 - element : element));
	const keying = { baud: DSC_BAUD, lowHz: centreHz - DSC_SHIFT_HZ / 2, highHz: centreHz + DSC_SHIFT_HZ / 2 };
	return keyedBits(elements, { ...keying, ...made });
}

/** The long pattern where the station called may be scanning; the short one in answers and towards coast stations (from memory of M.493). */
export function dotsOf({ to, end, distress }: DscCall): number {
	if (distress !== null) return LONG_DOTS;
	return end === "acknowledgement given" || to?.startsWith("00") ? SHORT_DOTS : LONG_DOTS;
}
