import type { Evidence } from "./bitEvidence.ts";
import { PHASING_DX, PHASING_DX_COUNT, PHASING_RX } from "./sequence.ts";
import { elementsOf, SYMBOL_ELEMENTS } from "./tenUnitCode.ts";

/** Characters from the first of the phasing sequence to its last; two of them, where DX already carries the format, are none of it. */
export const PHASING_CHARACTERS = 2 * PHASING_RX.length;
export const PHASING_BITS = PHASING_CHARACTERS * SYMBOL_ELEMENTS;

/** Bits of the phasing sequence by place, and whether each is B. */
const PLACES: readonly { readonly at: number; readonly isB: boolean }[] = Array.from({ length: PHASING_CHARACTERS }, (_, character) => {
	const slot = character >> 1;
	if (character % 2 === 0 && slot >= PHASING_DX_COUNT) return [];
	const elements = elementsOf(character % 2 === 0 ? PHASING_DX : PHASING_RX[slot]!);
	return elements.map((element, i) => ({ at: character * SYMBOL_ELEMENTS + i, isB: element === 1 }));
}).flat();
const AT = Int16Array.from(PLACES, ({ at }) => at);
const IS_B = Uint8Array.from(PLACES, ({ isB }) => (isB ? 1 : 0));

/**
 * How much likelier (natural logarithm) the bits from `start` on are as a phasing sequence than as chance: all of DX and RX that was
 * heard counts, so that either alone, or its last part, is enough. About 7 for each clean symbol.
 */
export function phasingEvidence({ high, low }: Evidence, start: number): number {
	let sum = 0;
	for (let i = 0; i < AT.length; i++) {
		const at = start + AT[i]!;
		sum += IS_B[i] === 1 ? high[at]! : low[at]!;
	}
	return sum;
}
