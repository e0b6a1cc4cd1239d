import { type Directory, type Interval, type Listing, occurrencesOf, scheduleKnown, scheduleOf } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { WANT_ORDER, type Want } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { anyHeard, bestOf, type HeardPlace, type Leg, meanDay, perDay, round, stationsFor } from "./heardPlaces.ts";
import { listingWant } from "./listingWant.ts";

/** What one place does for one want, over the whole voyage. */
export interface PlaceService {
	readonly want: Want;
	/** Hours a day on the air and heard. */
	readonly hoursPerDay: number;
	/** Hours a day that no other place gives: what would be lost without it. */
	readonly lostPerDay: number;
	/** Among the places that serve the want, by hours; 1 is the best. */
	readonly rank: number;
	readonly of: number;
	/** The leg or stay on which it gives most. */
	readonly bestLeg: string;
}

/** A day of one place: what a ribbon shows. */
export interface PlaceDay {
	/** The leg or stay on which it is heard best; null where it cannot be told. */
	readonly leg: string | null;
	/** Chance by UTC hour on that leg that one of the stations there is copied, the best of them in each hour; null: it cannot be told. */
	readonly chances: readonly number[] | null;
	/** When the one station there sends, on the first day on which it does; null: without a break, several stations, or nobody knows when. */
	readonly broadcasts: readonly Interval[] | null;
}

export interface ExplainInput {
	readonly samples: readonly VoyageSample[];
	readonly legs: readonly Leg[];
	readonly places: readonly HeardPlace[];
	/** By airtime and chance. */
	readonly coverage: Coverage;
}

/** By place, in the order given. A listing that two places hear is lost by neither. */
export function placeServices({ samples, legs, places, coverage }: ExplainInput): readonly (readonly PlaceService[])[] {
	const all = samples.map((_, index) => index);
	const found = places.map((): PlaceService[] => []);
	for (const want of WANT_ORDER) {
		const serving = places.flatMap(({ listings }, index) => {
			const own = listings.filter((listing) => listingWant(listing) === want);
			const cells = own.length === 0 ? null : anyHeard(stationsFor(want, own, coverage).values());
			return cells === null ? [] : [{ index, own, cells, hours: perDay(cells, samples, all) }];
		});
		if (serving.length === 0) continue;
		const holders = new Map<Listing, number>();
		for (const { own } of serving) for (const listing of own) holders.set(listing, (holders.get(listing) ?? 0) + 1);
		const whole = stationsFor(want, [...holders.keys()], coverage);
		const total = perDay(anyHeard(whole.values()), samples, all);
		for (const { index, own, cells, hours } of serving) {
			const only = new Set(own.filter((listing) => holders.get(listing) === 1));
			const rest = new Map(whole);
			for (const station of new Set([...only].map(({ stationId }) => stationId))) {
				const left = [...holders.keys()].filter((listing) => listing.stationId === station && !only.has(listing));
				const best = bestOf(left, coverage);
				if (best === null) rest.delete(station);
				else rest.set(station, best);
			}
			if (round(hours, 2) === 0) continue; // nothing worth a word
			const without = only.size === 0 ? total : perDay(anyHeard(rest.values()), samples, all);
			found[index]!.push({
				want,
				hoursPerDay: round(hours, 2),
				lostPerDay: round(Math.max(0, total - without), 2),
				rank: 1 + serving.filter((other) => other.hours > hours).length,
				of: serving.length,
				bestLeg: bestLegOf(cells, samples, legs),
			});
		}
	}
	return found;
}

function bestLegOf(cells: Float64Array, samples: readonly VoyageSample[], legs: readonly Leg[]): string {
	const hours = legs.map((leg) => perDay(cells, samples, leg.samples));
	return legs[hours.indexOf(Math.max(...hours))]?.name ?? "";
}

export interface DayInput {
	readonly directory: Directory;
	readonly samples: readonly VoyageSample[];
	readonly legs: readonly Leg[];
	/** Chance in every hour, whatever is sent. */
	readonly reach: Coverage;
	/** Of a marine band, chance by sample and hour that a ship near by is reached; null: it cannot be told. */
	readonly ships: (bandMhz: number) => Float64Array | null;
}

/** @param bandMhz of a carrier between ships, whose day is that of ships around whatever else is sent there; null for everything else */
export function placeDay(
	{ directory, samples, legs, reach, ships }: DayInput,
	listings: readonly Listing[],
	bandMhz: number | null,
): PlaceDay {
	const cells = bandMhz === null ? bestOf(listings, reach) : ships(bandMhz);
	const leg = cells === null ? undefined : legs.find(({ name }) => name === bestLegOf(cells, samples, legs));
	if (cells === null || leg === undefined) return { leg: null, chances: null, broadcasts: null };
	const [only, another] = [...new Set(listings.map(({ stationId }) => stationId))];
	const isOne = bandMhz === null && only !== undefined && another === undefined;
	return {
		leg: leg.name,
		chances: Array.from(meanDay(cells, samples, leg.samples), (chance) => round(chance, 3)),
		broadcasts: isOne ? broadcastsOf(directory, listings[0]!, samples) : null,
	};
}

function broadcastsOf(directory: Directory, listing: Listing, samples: readonly VoyageSample[]): readonly Interval[] | null {
	if (scheduleKnown(scheduleOf(listing)) !== "timed") return null;
	for (const { date } of samples) {
		const found = occurrencesOf(directory, listing, date);
		if (found.length > 0) return found.map(({ fromMin, toMin }) => ({ fromMin, toMin }));
	}
	return [];
}
