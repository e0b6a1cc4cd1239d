import type { IsoDate } from "@skipwright/units";
import type { Listing } from "./types.ts";

export interface Freshness {
	readonly grade: "fresh" | "ageing" | "stale";
	/** Whole months from the date that counts to the day asked for; null when no date is given. */
	readonly months: number | null;
	/** One sentence: which date counts and why. */
	readonly why: string;
}

/** How old a listing is on a day (contracts: official ageing over 12, stale over 36 months; secondary 6 and 18; memory always stale). */
export function freshness(listing: Listing, on: IsoDate): Freshness {
	throw new Error(`not built yet: ${listing.id} ${on}`);
}

/** Newest month in which somebody is recorded to have heard it (`YYYY-MM`), or null. */
export function lastHeard(listing: Listing): string | null {
	throw new Error(`not built yet: ${listing.id}`);
}

/** Short words for wherever a listing is shown. @example `"secondary list, as of 2025, last heard 2021-09; stale"` */
export function confidenceText(listing: Listing, on: IsoDate): string {
	throw new Error(`not built yet: ${listing.id} ${on}`);
}
