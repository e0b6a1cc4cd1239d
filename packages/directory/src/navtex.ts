import type { Listing } from "./types.ts";

/** Minutes. Length of a NAVTEX slot and the step from letter to letter. Source: IMO NAVTEX Manual (from memory). */
const SLOT_MIN = 10;
/** Minutes between two slots of one letter: 24 letters of ten minutes. */
const CYCLE_MIN = 240;

/**
 * Minutes after 0000 UTC of the six slots of a B1 letter: letter n (A = 0) starts n x 10 minutes after 0000, 0400, ... 2000.
 * Stations of the United States, and some others, keep other times.
 * @throws RangeError unless `letter` is A to X
 */
export function navtexSlots(letter: string): readonly number[] {
	const index = letter.length === 1 ? "ABCDEFGHIJKLMNOPQRSTUVWX".indexOf(letter) : -1;
	if (index < 0) throw new RangeError(`Cannot take ${JSON.stringify(letter)} as a NAVTEX letter: expected A to X`);
	return Array.from({ length: 6 }, (_, cycle) => cycle * CYCLE_MIN + index * SLOT_MIN);
}

/** The B1 letter of a NAVTEX listing, or null where the data holds none. */
export function navtexLetter(listing: Listing): string | null {
	return listing.service === "navtex" ? (/\bB1=([A-X])\b/.exec(listing.notes)?.[1] ?? null) : null;
}
