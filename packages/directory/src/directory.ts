import type { Published } from "@skipwright/rules";
import type { Hz } from "@skipwright/units";
import type { Directory, Listing, Station } from "./types.ts";

/** The shipped directory, parsed on the first call and the same object ever after. */
export function directory(): Directory {
	throw new Error("not built yet");
}

export function listingById(directory: Directory, id: string): Listing | null {
	throw new Error(`not built yet: ${id} ${directory.edition}`);
}

export function stationById(directory: Directory, id: string): Station | null {
	throw new Error(`not built yet: ${id} ${directory.edition}`);
}

/**
 * The station of a listing. An owner's own listing, which belongs to no station, gets one made of its name, without a position.
 * @throws RangeError when the directory holds no such station
 */
export function stationOf(directory: Directory, listing: Listing): Station {
	throw new Error(`not built yet: ${listing.id} ${directory.edition}`);
}

/** The least that the dial needs to know about a listing. */
export function publishedOf(listing: Listing): Published {
	throw new Error(`not built yet: ${listing.id}`);
}

/**
 * Listings within `toleranceHz` of a published figure, nearest first, ties by id. Binary search over an index kept per directory object.
 */
export function listingsNear(directory: Directory, at: Hz, toleranceHz: number): readonly Listing[] {
	throw new Error(`not built yet: ${at} ${toleranceHz} ${directory.edition}`);
}
