import { type Directory, occurrencesOf, scheduleKnown, scheduleOf } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { Want } from "./candidate.ts";
import type { HeardPlace, Leg } from "./heardPlaces.ts";
import { listingWant } from "./listingWant.ts";
import type { UseRun } from "./usePlan.ts";

/** A time at which a set with one receiver keeps no watch, as it takes a broadcast. */
export interface OffWatch {
	/** Minutes after 0000 UTC; over 1440 when it runs into the next day. */
	readonly fromMin: number;
	readonly toMin: number;
	readonly want: Want;
	readonly bank: string;
	readonly place: number;
}

/** One leg or stay: when the watch is off on its middle day if every broadcast that the use plan names first is taken. */
export interface LegOffWatch {
	readonly leg: string;
	/** Of the day, overlaps once. */
	readonly minutes: number;
	readonly times: readonly OffWatch[];
}

/** Wants that are taken by broadcasts at set times. */
const TAKEN: readonly Want[] = ["weather-charts", "weather-text", "weather-voice", "safety-text", "nets", "news"];

export interface WatchOffInput {
	readonly directory: Directory;
	readonly samples: readonly VoyageSample[];
	readonly legs: readonly Leg[];
	readonly places: readonly HeardPlace[];
	readonly use: readonly UseRun[];
}

/** For a set with one receiver: watch, scan and taking a broadcast exclude each other (contracts, section 2). */
export function watchOff({ directory, samples, legs, places, use }: WatchOffInput): readonly LegOffWatch[] {
	const at = new Map(places.map((one) => [`${one.bank} ${one.place}`, one]));
	return legs.map(({ name, samples: own }): LegOffWatch => {
		const date = samples[own[Math.floor(own.length / 2)]!]!.date;
		const times = use
			.filter(({ leg, want }) => leg === name && TAKEN.includes(want))
			.flatMap(({ want, fromHour, toHour, first: { bank, place } }) => {
				const listings = at.get(`${bank} ${place}`)?.listings ?? [];
				return listings
					.filter((listing) => listingWant(listing) === want && scheduleKnown(scheduleOf(listing)) === "timed")
					.flatMap((listing) => occurrencesOf(directory, listing, date))
					.filter(({ fromMin }) => fromMin >= fromHour * 60 && fromMin < toHour * 60)
					.map(({ fromMin, toMin }): OffWatch => ({ fromMin, toMin, want, bank, place }));
			})
			.toSorted((a, b) => a.fromMin - b.fromMin || a.toMin - b.toMin || a.place - b.place);
		const once = times.filter(
			(one, i) =>
				times.findIndex(
					({ fromMin, toMin, bank, place }) => fromMin === one.fromMin && toMin === one.toMin && bank === one.bank && place === one.place,
				) === i,
		);
		return { leg: name, minutes: unionOf(once), times: once };
	});
}

function unionOf(times: readonly OffWatch[]): number {
	let minutes = 0;
	let until = 0;
	for (const { fromMin, toMin } of times) {
		minutes += Math.max(0, toMin - Math.max(fromMin, until));
		until = Math.max(until, toMin);
	}
	return Math.min(minutes, 1_440);
}
