import type { ServiceId } from "@skipwright/rules";
import type { Hz, Position } from "@skipwright/units";
import type { Directory, Listing, Station, Status } from "./types.ts";

/** Every condition that is given must hold. */
export interface ListingQuery {
	/** A published figure; listings within `toleranceHz` (default 5 kHz) of it, nearest first. */
	readonly hz?: Hz | undefined;
	readonly toleranceHz?: number | undefined;
	/** Station id, name, call sign or MMSI, or part of one; case and accents aside. */
	readonly station?: string | undefined;
	readonly services?: readonly ServiceId[] | undefined;
	/** ISO 3166 two-letter codes. */
	readonly administrations?: readonly string[] | undefined;
	readonly near?: Position | undefined;
	/** Great-circle kilometres; stations without a position are left out when it is given. */
	readonly withinKm?: number | undefined;
	readonly statuses?: readonly Status[] | undefined;
	/** Words that must all occur somewhere in the station or the listing. */
	readonly text?: string | undefined;
	/** Most results, default all. */
	readonly limit?: number | undefined;
}

export interface FoundListing {
	readonly listing: Listing;
	readonly station: Station;
	/** Great-circle kilometres from `near`; null without `near` or without a position. */
	readonly distanceKm: number | null;
}

export interface FoundStation {
	readonly station: Station;
	readonly distanceKm: number | null;
	/** Number of its listings in the directory. */
	readonly listings: number;
}

/** Listings that meet the query, best first: by how well the words match, nearness in frequency, distance, id. */
export function findListings(directory: Directory, query: ListingQuery): readonly FoundListing[] {
	throw new Error(`not built yet: ${directory.edition} ${query.text}`);
}

/** Stations that meet the query; `hz` and `services` are met when one listing of the station meets them. */
export function findStations(directory: Directory, query: ListingQuery): readonly FoundStation[] {
	throw new Error(`not built yet: ${directory.edition} ${query.text}`);
}
