import type { Published } from "@skipwright/rules";
import type { Hz } from "@skipwright/units";
import { EDITION_JSON, LISTINGS_CSV, STATIONS_CSV } from "./data.gen.ts";
import { readListingsCsv } from "./listingsCsv.ts";
import { readStationsCsv } from "./stationsCsv.ts";
import type { Directory, Listing, Station } from "./types.ts";

let shipped: Directory | null = null;

/** The shipped directory, parsed on the first call and the same object ever after. */
export function directory(): Directory {
	shipped ??= {
		stations: readStationsCsv("stations.csv", STATIONS_CSV),
		listings: readListingsCsv("listings.csv", LISTINGS_CSV),
		edition: (JSON.parse(EDITION_JSON) as { edition: string }).edition,
	};
	return shipped;
}

interface Index {
	readonly listings: ReadonlyMap<string, Listing>;
	readonly stations: ReadonlyMap<string, Station>;
	/** Ascending by frequency, then by id. */
	readonly byHz: readonly Listing[];
}

const indexes = new WeakMap<Directory, Index>();

function indexOf(directory: Directory): Index {
	const known = indexes.get(directory);
	if (known !== undefined) return known;
	const index: Index = {
		listings: new Map(directory.listings.map((listing) => [listing.id, listing])),
		stations: new Map(directory.stations.map((station) => [station.id, station])),
		byHz: [...directory.listings].sort((a, b) => a.hz - b.hz || compareText(a.id, b.id)),
	};
	indexes.set(directory, index);
	return index;
}

export function listingById(directory: Directory, id: string): Listing | null {
	return indexOf(directory).listings.get(id) ?? null;
}

export function stationById(directory: Directory, id: string): Station | null {
	return indexOf(directory).stations.get(id) ?? null;
}

/**
 * The station of a listing. A listing of the owner or the shop whose station the directory does not hold gets one made of what the listing
 * says, without a position.
 * @throws RangeError when a shipped listing names no station
 */
export function stationOf(directory: Directory, listing: Listing): Station {
	const station = stationById(directory, listing.stationId);
	if (station !== null) return station;
	if (listing.origin === "shipped") throw new RangeError(`Cannot find the station ${listing.stationId} of ${listing.id} in the directory`);
	const { stationId, coverage, source, asOf, confidence, status } = listing;
	const name = listing.origin === "owner" && coverage !== "" ? coverage : stationId;
	return {
		id: stationId,
		name,
		callSign: "",
		administration: "",
		mmsi: null,
		position: null,
		powerKw: null,
		source,
		asOf,
		confidence,
		status,
		notes: "",
	};
}

/** The least that the dial needs to know about a listing. */
export function publishedOf({ hz, means, emission, service, sideband }: Listing): Published {
	return { hz, means, emission, service, sideband };
}

/**
 * Listings within `toleranceHz` (inclusive) of a published figure, nearest first, ties by id. Binary search over an index kept per directory object.
 */
export function listingsNear(directory: Directory, at: Hz, toleranceHz: number): readonly Listing[] {
	const { byHz } = indexOf(directory);
	const found: Listing[] = [];
	for (let i = firstAtOrAbove(byHz, at - toleranceHz); i < byHz.length; i++) {
		const listing = byHz[i]!;
		if (listing.hz > at + toleranceHz) break;
		found.push(listing);
	}
	return found.sort((a, b) => Math.abs(a.hz - at) - Math.abs(b.hz - at) || compareText(a.id, b.id));
}

function firstAtOrAbove(byHz: readonly Listing[], hz: number): number {
	let low = 0;
	let high = byHz.length;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (byHz[middle]!.hz < hz) low = middle + 1;
		else high = middle;
	}
	return low;
}

/** By code unit, the same in every locale. */
export function compareText(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0;
}
