import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { Want } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { HOURS_PER_DAY } from "./coverage.ts";
import { listingWant } from "./listingWant.ts";

/** A filled place with the listings that it hears, whatever it sends. */
export interface HeardPlace {
	readonly bank: string;
	readonly place: number;
	readonly listings: readonly Listing[];
}

/** Samples of a voyage, and the hours that belong to each of its legs and stays. */
export interface Leg {
	readonly name: string;
	readonly days: number;
	/** Numbers of its samples. */
	readonly samples: readonly number[];
}

export function legsOf(samples: readonly VoyageSample[]): readonly Leg[] {
	const names = [...new Set(samples.map(({ stage }) => stage))];
	return names.map((name) => {
		const own = samples.flatMap(({ stage }, index) => (stage === name ? [index] : []));
		return { name, days: own.reduce((sum, index) => sum + samples[index]!.days, 0), samples: own };
	});
}

/** Best of some listings in each sample and hour; null where none can be told. */
export function bestOf(listings: readonly Listing[], coverage: Coverage): Float64Array | null {
	let best: Float64Array | null = null;
	for (const listing of listings) {
		const cells = coverage(listing);
		if (cells === null) continue;
		best = best === null ? cells : best.map((cell, i) => Math.max(cell, cells[i]!));
	}
	return best;
}

/** By station, the best of those listings that serve a want: frequencies of one station are not independent. */
export function stationsFor(want: Want, listings: readonly Listing[], coverage: Coverage): ReadonlyMap<string, Float64Array> {
	const own = Map.groupBy(
		[...new Set(listings)].filter((listing) => listingWant(listing) === want),
		({ stationId }) => stationId,
	);
	return new Map(
		[...own].flatMap(([station, ones]) => {
			const best = bestOf(ones, coverage);
			return best === null ? [] : [[station, best] as const];
		}),
	);
}

/** Chance in each sample and hour that one station at least is heard: stations are taken as independent. null: none can be told. */
export function anyHeard(stations: Iterable<Float64Array>): Float64Array | null {
	let missed: Float64Array | null = null;
	for (const cells of stations) {
		missed ??= new Float64Array(cells.length).fill(1);
		for (let i = 0; i < missed.length; i++) missed[i]! *= 1 - Math.min(1, cells[i]!);
	}
	return missed === null ? null : missed.map((chance) => 1 - chance);
}

/** Mean by UTC hour over some samples, each counted by its days. */
export function meanDay(cells: ArrayLike<number>, samples: readonly VoyageSample[], which: Iterable<number>): Float64Array {
	const day = new Float64Array(HOURS_PER_DAY);
	let days = 0;
	for (const index of which) {
		const weight = samples[index]!.days;
		days += weight;
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) day[hour]! += weight * cells[index * HOURS_PER_DAY + hour]!;
	}
	return day.map((sum) => sum / days);
}

/** Sum over the hours of a mean day. */
export function perDay(cells: ArrayLike<number> | null, samples: readonly VoyageSample[], which: Iterable<number>): number {
	return cells === null ? 0 : meanDay(cells, samples, which).reduce((sum, hour) => sum + hour, 0);
}

export function round(value: number, decimals: 2 | 3): number {
	const scale = decimals === 2 ? 100 : 1_000;
	return Math.round(value * scale) / scale;
}
