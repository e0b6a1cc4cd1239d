import type { Listing, Station } from "./types.ts";

/** Reads listings in the directory's own columns. @throws BadInputError; nothing is half-imported */
export function readListingsCsv(source: string, text: string): readonly Listing[] {
	throw new Error(`not built yet: ${source} ${text.length}`);
}

/** Listings as CSV; reading it again gives the same listings. */
export function writeListingsCsv(listings: readonly Listing[]): string {
	throw new Error(`not built yet: ${listings.length}`);
}

/** @throws BadInputError; nothing is half-imported */
export function readStationsCsv(source: string, text: string): readonly Station[] {
	throw new Error(`not built yet: ${source} ${text.length}`);
}

export function writeStationsCsv(stations: readonly Station[]): string {
	throw new Error(`not built yet: ${stations.length}`);
}
