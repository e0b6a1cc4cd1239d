import { elementsOf } from "./tenUnitCode.ts";

// The order in which a call is sent. Source: ITU-R M.493 (from memory, agreeing with third parties' restatements).

/** Phasing symbol of the DX positions, sent six times. */
export const PHASING_DX = 125;
export const PHASING_DX_COUNT = 6;

/** Phasing symbols of the RX positions, in order. */
export const PHASING_RX: readonly number[] = [111, 110, 109, 108, 107, 106, 105, 104];

/** A symbol's second copy (RX) stands five characters after the first (DX). */
export const RX_AFTER_DX = 5;

/** Elements of the dot pattern, alternating B and Y: long where the receiver may be scanning. */
export const LONG_DOTS = 200;
export const SHORT_DOTS = 20;

/** The check: modulo-2 sum of the symbols of a call, format specifier once, end of sequence once. */
export function eccOf(symbols: readonly number[]): number {
	return symbols.reduce((sum, symbol) => sum ^ symbol, 0);
}

/**
 * Characters in the order sent, phasing and both copies included.
 * @param symbols of the call: format specifier once, then to the end of sequence
 */
export function charactersOf(symbols: readonly number[], ecc: number = eccOf(symbols)): readonly number[] {
	const [format, end] = [symbols[0], symbols.at(-1)];
	if (format === undefined || end === undefined || symbols.length < 2) {
		throw new RangeError(`Cannot send a call of ${symbols.length} symbols: expected a format specifier and an end of sequence`);
	}
	const once = [format, ...symbols, ecc];
	const dx = [...new Array<number>(PHASING_DX_COUNT).fill(PHASING_DX), ...once, end, end];
	const rx = [...PHASING_RX, ...once];
	return dx.flatMap((symbol, slot) => [symbol, rx[slot]!]);
}

/** Elements of a whole call, the dot pattern first; 1 is B, the higher tone. */
export function elementsOfCall(symbols: readonly number[], dots: number): readonly number[] {
	const pattern = Array.from({ length: dots }, (_, i) => 1 - (i % 2));
	return [...pattern, ...charactersOf(symbols).flatMap(elementsOf)];
}
