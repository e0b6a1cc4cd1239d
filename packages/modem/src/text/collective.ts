import { codesOfText } from "./codesOfText.ts";
import { ALPHA, RPT, SEVEN_UNIT } from "./sevenUnit.ts";

/**
 * Places between a signal's first copy (DX) and its second (RX): four others lie between, 280 ms; start to start 350 ms.
 * Source: ITU-R M.476-5 and M.625-4 (from memory).
 */
export const COPY_PLACES = 5;

/** 16 pairs are the least (M.625-4 4.4.2); NAVTEX phases for 10 s at least (M.540-2, both from memory), which is 72 pairs of 140 ms. */
const PHASING_PAIRS = 16;
export const NAVTEX_PHASING_PAIRS = 72;
/** 2 s of idle signals after the last second copy end an emission (M.625-4 4.6.7.1, from memory): 15 pairs, and 2 till that copy. */
const CLOSING_PAIRS = 17;

export interface CollectiveOptions {
	/** Pairs of phasing signals before the text. Default 16. */
	readonly phasingPairs?: number;
	/** Pairs after the text, whose first copies are idle. Default 17: 2.1 s. */
	readonly closingPairs?: number;
}

/** The bits of a text by collective FEC (mode B) at 100 baud, 1 for the higher tone (B): phasing, both copies interleaved, idle signals. */
export function collectiveBits(text: string, options: CollectiveOptions = {}): Uint8Array {
	return Uint8Array.from(
		interleaved(codesOfText(text), options)
			.map((code) => SEVEN_UNIT[code]!.sent)
			.join(""),
		(element) => (element === "B" ? 1 : 0),
	);
}

/** Signals in the order of sending: DX and RX in turn. Phasing fills DX with RPT and RX with ALPHA; after the text DX is ALPHA. */
function interleaved(
	codes: readonly number[],
	{ phasingPairs = PHASING_PAIRS, closingPairs = CLOSING_PAIRS }: CollectiveOptions,
): number[] {
	const pairs = phasingPairs + codes.length + closingPairs;
	const pairsBetween = (COPY_PLACES - 1) / 2;
	return Array.from({ length: pairs }, (_, pair) => {
		const first = pair - phasingPairs;
		const second = first - pairsBetween;
		return [first < 0 ? RPT : (codes[first] ?? ALPHA), codes[second] ?? ALPHA];
	}).flat();
}
