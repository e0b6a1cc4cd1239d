/** The speeds of maritime and amateur teletype; 45.45 stands for elements of 22 ms. */
export type TeletypeBaud = 45.45 | 50 | 75;

/** Elements a second. */
export function exactBaud(baud: TeletypeBaud): number {
	return baud === 45.45 ? 1_000 / 22 : baud;
}
