import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { type Candidate, WANT_ORDER, type Want } from "./candidate.ts";
import { HOURS_PER_DAY } from "./coverage.ts";
import { listingWant } from "./listingWant.ts";

/** Hours a day in which at least one place of the set hears something for a want, on one stage of the voyage, by the hearing in use. */
export interface Served {
	readonly want: Want;
	/** Name of the leg or stay. */
	readonly leg: string;
	readonly hoursPerDay: { readonly before: number; readonly after: number };
}

export interface ServedInput {
	readonly samples: readonly VoyageSample[];
	readonly coverage: (listing: Listing) => Float64Array | null;
	/** Wants to tell of; those that no listing serves (ship to ship) are left out. */
	readonly wants: readonly Want[];
	/** What the places hear, as found and as planned. */
	readonly before: readonly Candidate[];
	readonly after: readonly Candidate[];
}

/** By want and stage. Stations in the same hour are taken as independent: 1 - product of (1 - chance). */
export function served({ samples, coverage, wants, before, after }: ServedInput): readonly Served[] {
	const stages = [...new Set(samples.map(({ stage }) => stage))];
	return WANT_ORDER.filter((want) => wants.includes(want)).flatMap((want) => {
		const listings = (candidates: readonly Candidate[]) =>
			[...new Set(candidates.flatMap(({ sources }) => sources.map(({ listing }) => listing)))].filter((one) => listingWant(one) === want);
		const [was, is] = [listings(before), listings(after)].map((heard) => anyHeard(heard, samples.length, coverage));
		if (was === undefined || is === undefined || (was === null && is === null)) return [];
		return stages.map((leg) => ({ want, leg, hoursPerDay: { before: hoursOn(leg, was, samples), after: hoursOn(leg, is, samples) } }));
	});
}

/** Chance for each sample and hour that one of the stations is heard; null where no listing can tell. */
function anyHeard(listings: readonly Listing[], samples: number, coverage: ServedInput["coverage"]): Float64Array | null {
	const stations = new Map<string, Float64Array>();
	for (const listing of listings) {
		const cells = coverage(listing);
		const best = stations.get(listing.stationId);
		if (cells !== null) stations.set(listing.stationId, best === undefined ? cells : cells.map((cell, i) => Math.max(cell, best[i]!)));
	}
	if (stations.size === 0) return null;
	const missed = new Float64Array(samples * HOURS_PER_DAY).fill(1);
	for (const cells of stations.values()) for (let i = 0; i < missed.length; i++) missed[i]! *= 1 - cells[i]!;
	return missed.map((chance) => 1 - chance);
}

function hoursOn(leg: string, heard: Float64Array | null, samples: readonly VoyageSample[]): number {
	if (heard === null) return 0;
	let hours = 0;
	let days = 0;
	for (const [index, sample] of samples.entries()) {
		if (sample.stage !== leg) continue;
		days += sample.days;
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) hours += sample.days * heard[index * HOURS_PER_DAY + hour]!;
	}
	return Math.round((hours / days) * 100) / 100;
}
