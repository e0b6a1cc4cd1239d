/** Symbols of the ten-unit code, 0 to 127. */
export const SYMBOLS = 128;

/** Elements of a symbol as sent. */
export const SYMBOL_ELEMENTS = 10;

const INFORMATION = 7;

/**
 * Ten elements of a symbol as sent: 1 is B (the higher tone, binary 0), 0 is Y (the lower tone, binary 1). Seven carry the symbol,
 * least significant first; three the number of B among them, most significant first, so that one wrong element always shows.
 * Source: ITU-R M.493, table of the ten-unit code (from memory, agreeing with third parties' restatements).
 * @throws RangeError for a symbol outside 0 to 127
 */
export function elementsOf(symbol: number): readonly number[] {
	if (!Number.isInteger(symbol) || symbol < 0 || symbol >= SYMBOLS) {
		throw new RangeError(`Cannot send ${symbol} as a symbol: expected a whole number from 0 to ${SYMBOLS - 1}`);
	}
	const isB = (value: number, bit: number) => 1 - ((value >> bit) & 1);
	const information = Array.from({ length: INFORMATION }, (_, bit) => isB(symbol, bit));
	const countOfB = information.reduce((sum, element) => sum + element, 0);
	return [...information, isB(countOfB, 2), isB(countOfB, 1), isB(countOfB, 0)];
}
