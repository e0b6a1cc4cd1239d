import { SERVICE_WORDS, type ServiceId } from "@skipwright/rules";
import { distanceKm } from "@skipwright/sphere";
import { formatKhz, type Hz, type Position } from "@skipwright/units";
import { compareText, stationOf } from "./directory.ts";
import type { Directory, Listing, Station, Status } from "./types.ts";

/** Every condition that is given must hold. */
export interface ListingQuery {
	/** A published figure; listings within `toleranceHz` of it, nearest first. */
	readonly hz?: Hz | undefined;
	/** Hz, default `DEFAULT_TOLERANCE_HZ`. */
	readonly toleranceHz?: number | undefined;
	/** Station id, name, call sign or MMSI, or part of one; case and accents aside. */
	readonly station?: string | undefined;
	readonly services?: readonly ServiceId[] | undefined;
	/** ISO 3166 two-letter codes. */
	readonly administrations?: readonly string[] | undefined;
	readonly near?: Position | undefined;
	/** Great-circle kilometres from `near`; stations without a position are left out when it is given. */
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

/** Hz. How far from a typed figure a listing may lie: covers carrier, centre, assigned and dial forms of one signal (1.4, 1.7, 1.9 kHz). */
export const DEFAULT_TOLERANCE_HZ = 2_000;

interface Ranked extends FoundListing {
	/** 0 is best: how well the station was named. */
	readonly nameRank: number;
	readonly offsetHz: number;
}

/** Listings that meet the query, best first: by how well the station is named, nearness in frequency, distance, id. */
export function findListings(directory: Directory, query: ListingQuery): readonly FoundListing[] {
	return ranked(directory, query)
		.slice(0, query.limit)
		.map(({ listing, station, distanceKm }) => ({ listing, station, distanceKm }));
}

/**
 * Stations that meet the query, best first: by how well they are named, distance, id. `hz`, `services`, `statuses` and words of a listing are
 * met when one listing of the station meets them all; a station without listings is found by what it is itself.
 */
export function findStations(directory: Directory, query: ListingQuery): readonly FoundStation[] {
	const counts = Map.groupBy(directory.listings, ({ stationId }) => stationId);
	const asksForListing = query.hz !== undefined || query.services !== undefined || query.statuses !== undefined;
	const bare = asksForListing
		? []
		: directory.stations.filter(({ id }) => !counts.has(id)).flatMap((station) => rankStation(station, query) ?? []);
	const best = new Map<string, RankedStation>();
	for (const found of [...ranked(directory, query), ...bare]) if (!best.has(found.station.id)) best.set(found.station.id, found);
	return [...best.values()]
		.sort((a, b) => a.nameRank - b.nameRank || compareKm(a.distanceKm, b.distanceKm) || compareText(a.station.id, b.station.id))
		.slice(0, query.limit)
		.map(({ station, distanceKm }) => ({ station, distanceKm, listings: counts.get(station.id)?.length ?? 0 }));
}

interface RankedStation {
	readonly station: Station;
	readonly distanceKm: number | null;
	readonly nameRank: number;
}

function ranked(directory: Directory, query: ListingQuery): readonly Ranked[] {
	const tolerance = query.toleranceHz ?? DEFAULT_TOLERANCE_HZ;
	const words = foldWords(query.text ?? "");
	const stations = new Map<string, RankedStation | null>();
	const found: Ranked[] = [];
	for (const listing of directory.listings) {
		const offsetHz = query.hz === undefined ? 0 : Math.abs(listing.hz - query.hz);
		if (offsetHz > tolerance || !includes(query.services, listing.service) || !includes(query.statuses, listing.status)) continue;
		const station = stationOf(directory, listing);
		const known = stations.get(station.id);
		const rank = known === undefined ? rankStation(station, { ...query, text: undefined }) : known;
		stations.set(station.id, rank);
		if (rank === null || !holdsAll(words, `${stationText(station)} ${listingText(listing)}`)) continue;
		found.push({ ...rank, listing, offsetHz });
	}
	return found.sort(
		(a, b) =>
			a.nameRank - b.nameRank ||
			a.offsetHz - b.offsetHz ||
			compareKm(a.distanceKm, b.distanceKm) ||
			compareText(a.listing.id, b.listing.id),
	);
}

/** Null when the station does not meet the conditions about stations. */
function rankStation(station: Station, query: ListingQuery): RankedStation | null {
	if (!includes(query.administrations, station.administration)) return null;
	if (!holdsAll(foldWords(query.text ?? ""), stationText(station))) return null;
	const nameRank = query.station === undefined ? 0 : rankName(station, fold(query.station.trim()));
	if (nameRank === null) return null;
	const distance = query.near === undefined || station.position === null ? null : distanceKm(query.near, station.position);
	if (query.withinKm !== undefined && (distance === null || distance > query.withinKm)) return null;
	return { station, distanceKm: distance, nameRank };
}

/** 0 for an id, a call sign or an MMSI as a whole, 1 for the start of the name, 2 for a part of anything, null for nothing. */
function rankName({ id, name, callSign, mmsi }: Station, wanted: string): number | null {
	const keys = [id, mmsi ?? "", ...callSign.split("/"), callSign].map(fold);
	if (keys.includes(wanted)) return 0;
	if (fold(name).startsWith(wanted)) return 1;
	return [...keys, fold(name)].some((key) => key.includes(wanted)) ? 2 : null;
}

function stationText({ id, name, callSign, administration, mmsi, notes }: Station): string {
	return fold(`${id} ${name} ${callSign} ${administration} ${mmsi ?? ""} ${notes}`);
}

function listingText({ id, service, hz, emission, coverage, notes }: Listing): string {
	return fold(`${id} ${SERVICE_WORDS[service]} ${formatKhz(hz)} ${emission} ${coverage} ${notes}`);
}

function foldWords(text: string): readonly string[] {
	return fold(text).split(/\s+/).filter(Boolean);
}

/** Lower case, accents aside. */
function fold(text: string): string {
	return text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
}

function holdsAll(words: readonly string[], text: string): boolean {
	return words.every((word) => text.includes(word));
}

function includes<T>(wanted: readonly T[] | undefined, value: T): boolean {
	return wanted === undefined || wanted.includes(value);
}

/** Unknown distances come last. */
function compareKm(a: number | null, b: number | null): number {
	if (a === null || b === null) return Number(a === null) - Number(b === null);
	return a - b;
}
