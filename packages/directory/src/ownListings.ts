import type { Listing } from "./types.ts";

/**
 * Reads the owner's own listings (nets and friends). Columns: `name,khz,means,schedule`, and `mode` or `emission`;
 * optional `transmit_khz` (empty = receive only), `note`, `as_of`.
 * @throws BadInputError; nothing is half-imported
 */
export function readOwnListingsCsv(source: string, text: string): readonly Listing[] {
	throw new Error(`not built yet: ${source} ${text.length}`);
}
