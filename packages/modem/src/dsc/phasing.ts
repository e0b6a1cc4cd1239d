import type { Evidence } from "./bitEvidence.ts";
import { PHASING_DX, PHASING_DX_COUNT, PHASING_RX } from "./sequence.ts";
import { elementsOf, SYMBOL_ELEMENTS } from "./tenUnitCode.ts";

/** Characters from the first of the phasing sequence to its last; two of them, where DX already carries the format, are none of it. */
const PHASING_CHARACTERS = 2 * PHASING_RX.length;
export const PHASING_BITS = PHASING_CHARACTERS * SYMBOL_ELEMENTS;

/** Of each bit whether the phasing sequence has B there (1), Y (-1) or neither (0). */
const PATTERN = Int8Array.from(
	Array.from({ length: PHASING_CHARACTERS }, (_, character) => {
		const slot = character >> 1;
		if (character % 2 === 0 && slot >= PHASING_DX_COUNT) return new Array<number>(SYMBOL_ELEMENTS).fill(0);
		return elementsOf(character % 2 === 0 ? PHASING_DX : PHASING_RX[slot]!).map((element) => 2 * element - 1);
	}).flat(),
);

/**
 * How much likelier (natural logarithm) the bits from `start` on are as a phasing sequence than as chance, upright and with tones
 * exchanged: all of DX and RX that was heard counts, so that either alone, or its last part, is enough. About 7 for each clean symbol.
 */
export function phasingEvidence({ high, low }: Evidence, start: number): { readonly upright: number; readonly inverted: number } {
	let upright = 0;
	let inverted = 0;
	for (let i = 0; i < PHASING_BITS; i++) {
		const element = PATTERN[i]!;
		if (element === 0) continue;
		const h = high[start + i]!;
		const l = low[start + i]!;
		upright += element > 0 ? h : l;
		inverted += element > 0 ? l : h;
	}
	return { upright, inverted };
}
