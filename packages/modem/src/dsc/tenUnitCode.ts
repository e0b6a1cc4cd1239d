/** Symbols of the ten-unit code, 0 to 127. */
export const SYMBOLS = 128;

/** Elements of a symbol as sent. */
export const SYMBOL_ELEMENTS = 10;

/**
 * Ten elements of each symbol, one after the other; 1 is B (the higher tone, binary 0), 0 is Y (the lower tone, binary 1).
 * Seven carry the symbol, least significant first; three the number of B among them, most significant first.
 * Source: ITU-R M.493, table of the ten-unit code (from memory, agreeing with third parties' restatements).
 */
const CODE: Uint8Array = Uint8Array.from({ length: SYMBOLS * SYMBOL_ELEMENTS }, (_, at) =>
	elementIsB(Math.floor(at / SYMBOL_ELEMENTS), at % SYMBOL_ELEMENTS) ? 1 : 0,
);

function elementIsB(symbol: number, place: number): boolean {
	if (place < 7) return ((symbol >> place) & 1) === 0;
	let countOfB = 7;
	for (let bit = 0; bit < 7; bit++) countOfB -= (symbol >> bit) & 1;
	return ((countOfB >> (9 - place)) & 1) === 0;
}

/** @throws RangeError for a symbol outside 0 to 127 */
export function elementsOf(symbol: number): readonly number[] {
	if (!Number.isInteger(symbol) || symbol < 0 || symbol >= SYMBOLS) {
		throw new RangeError(`Cannot send ${symbol} as a symbol: expected a whole number from 0 to ${SYMBOLS - 1}`);
	}
	return [...CODE.subarray(symbol * SYMBOL_ELEMENTS, (symbol + 1) * SYMBOL_ELEMENTS)];
}

/** The symbol that ten elements stand for, or null where the count of B does not fit: then at least one element is wrong. */
export function symbolOf(elements: readonly number[]): number | null {
	let symbol = 0;
	for (let place = 0; place < 7; place++) symbol |= elements[place] === 1 ? 0 : 1 << place;
	return elementsOf(symbol).every((element, place) => element === elements[place]) ? symbol : null;
}
