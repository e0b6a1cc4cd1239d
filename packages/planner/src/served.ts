import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { WANT_ORDER, type Want } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { anyHeard, type Leg, perDay, round, stationsFor } from "./heardPlaces.ts";
import { listingWant } from "./listingWant.ts";

interface BeforeAndAfter {
	readonly before: number;
	readonly after: number;
}

/** What the set gives for a want on one stage of the voyage, as found and as planned, by the hearing in use. */
export interface Served {
	readonly want: Want;
	/** Name of the leg or stay. */
	readonly leg: string;
	/** Hours a day in which at least one place hears something for it. */
	readonly hoursPerDay: BeforeAndAfter;
	/** Broadcasts a day that are heard, one of a station on several frequencies at once counted once; null for what is no broadcast. */
	readonly broadcastsPerDay: BeforeAndAfter | null;
}

export interface ServedInput {
	readonly samples: readonly VoyageSample[];
	readonly legs: readonly Leg[];
	/** By airtime and chance. */
	readonly coverage: Coverage;
	/** By broadcasts and chance. */
	readonly broadcasts: Coverage;
	/** Wants to tell of; those that nothing serves are left out. */
	readonly wants: readonly Want[];
	/** What the places hear, as found and as planned. */
	readonly before: readonly Listing[];
	readonly after: readonly Listing[];
	/** Chance by sample and hour that a ship near by is reached on the best of the carriers between ships; null: no such carrier, or no telling. */
	readonly ships: { readonly before: Float64Array | null; readonly after: Float64Array | null };
}

/** Wants that are served by calls or without a break: there hours tell what broadcasts would not. */
const NO_BROADCASTS: ReadonlySet<Want> = new Set(["coast-calling", "ship-calling", "time", "guard"]);

/** By want and stage. Stations in the same hour are taken as independent: 1 - product of (1 - chance). */
export function served({ samples, legs, coverage, broadcasts, wants, before, after, ships }: ServedInput): readonly Served[] {
	const sides = { before, after };
	return WANT_ORDER.filter((want) => wants.includes(want)).flatMap((want) => {
		const isShips = want === "ship-calling";
		if (!isShips && ![...before, ...after].some((listing) => listingWant(listing) === want)) return [];
		const heard = isShips ? ships : mapSides(sides, (listings) => anyHeard(stationsFor(want, listings, coverage).values()));
		if (heard.before === null && heard.after === null) return [];
		const counts = NO_BROADCASTS.has(want) ? null : mapSides(sides, (listings) => summed(stationsFor(want, listings, broadcasts).values()));
		return legs.map(({ name, samples: which }): Served => {
			const mean = (cells: Float64Array | null) => round(perDay(cells, samples, which), 2);
			return {
				want,
				leg: name,
				hoursPerDay: mapSides(heard, mean),
				broadcastsPerDay: counts === null ? null : mapSides(counts, mean),
			};
		});
	});
}

function mapSides<From, To>(
	{ before, after }: { readonly before: From; readonly after: From },
	of: (one: From) => To,
): { readonly before: To; readonly after: To } {
	return { before: of(before), after: of(after) };
}

function summed(all: Iterable<Float64Array>): Float64Array | null {
	let sum: Float64Array | null = null;
	for (const cells of all) sum = sum === null ? cells : sum.map((cell, i) => cell + cells[i]!);
	return sum;
}
