import { keyedBits, type MadeOptions } from "../signal/keyed.ts";
import { type CollectiveOptions, collectiveBits } from "./collective.ts";
import { TEXT_BAUD, TEXT_SHIFT_HZ } from "./textSignal.ts";

/** Hz. Middle between the tones in the audio of a set on upper sideband. Source: ITU-R M.625-4. */
const CENTRE_HZ = 1_700;

export interface MakeTextOptions extends CollectiveOptions, MadeOptions {
	/** Hz. Default 1700. */
	readonly centreHz?: number;
	/** Default false: B is the higher tone. */
	readonly isInverted?: boolean;
	/** Default true: see `keyedBits`. */
	readonly isContinuous?: boolean;
}

/** Audio of a text sent by collective FEC; `navtexText` frames a message for it. */
export function makeText(text: string, { centreHz = CENTRE_HZ, isInverted = false, ...options }: MakeTextOptions = {}): Float64Array {
	const bits = collectiveBits(text, options).map((bit) => (isInverted ? 1 - bit : bit));
	return keyedBits(bits, { baud: TEXT_BAUD, lowHz: centreHz - TEXT_SHIFT_HZ / 2, highHz: centreHz + TEXT_SHIFT_HZ / 2, ...options });
}
