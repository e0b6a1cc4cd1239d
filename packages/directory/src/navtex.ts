import type { Listing } from "./types.ts";

/** Minutes after 0000 UTC of the six slots of a B1 letter A to X. @throws RangeError for another letter */
export function navtexSlots(letter: string): readonly number[] {
	throw new Error(`not built yet: ${letter}`);
}

/** The B1 letter of a NAVTEX listing, or null where the data holds none. */
export function navtexLetter(listing: Listing): string | null {
	throw new Error(`not built yet: ${listing.id}`);
}
