import type { Want } from "./candidate.ts";
import { round } from "./heardPlaces.ts";
import type { Plan, PlannedPlace } from "./planDocument.ts";

/** A place in few words. */
export interface PlaceNamed {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly what: string;
}

/** What another plan has instead. */
export interface PlanDifference {
	readonly status: Plan["status"];
	readonly gap: number | null;
	/** Hours a day over the whole voyage, by want. */
	readonly hours: readonly { readonly want: Want; readonly before: number; readonly after: number }[];
	/** What only the other plan holds, and what only this one. */
	readonly enters: readonly PlaceNamed[];
	readonly leaves: readonly PlaceNamed[];
	/** What both hold, at other places. */
	readonly moves: readonly { readonly from: PlaceNamed; readonly to: PlaceNamed }[];
}

/** From one plan to another of the same set. Places are the same when dial, mode and sending side are. */
export function planDifference(before: Plan, after: Plan): PlanDifference {
	const was = placesByContent(before.places);
	const is = placesByContent(after.places);
	const hoursWere = hoursOver(before);
	const hoursAre = hoursOver(after);
	const wants = [...new Set([...hoursWere.keys(), ...hoursAre.keys()])];
	return {
		status: after.status,
		gap: after.gap,
		hours: wants.map((want) => ({ want, before: hoursWere.get(want) ?? 0, after: hoursAre.get(want) ?? 0 })),
		enters: [...is].flatMap(([content, places]) => (was.has(content) ? [] : places.map(named))),
		leaves: [...was].flatMap(([content, places]) => (is.has(content) ? [] : places.map(named))),
		moves: [...was].flatMap(([content, places]) => {
			const there = is.get(content) ?? [];
			const gone = places.filter((one) => !there.some((other) => isSamePlace(one, other)));
			const come = there.filter((one) => !places.some((other) => isSamePlace(one, other)));
			return gone.flatMap((from, i) => (come[i] === undefined ? [] : [{ from: named(from), to: named(come[i]) }]));
		}),
	};
}

function placesByContent(places: readonly PlannedPlace[]): ReadonlyMap<string, readonly PlannedPlace[]> {
	return Map.groupBy(places, ({ bank, receiveHz, transmitHz, mode }) => `${bank} ${receiveHz} ${transmitHz} ${mode}`);
}

function isSamePlace(a: PlannedPlace, b: PlannedPlace): boolean {
	return a.bank === b.bank && a.place === b.place;
}

function named({ bank, place, tag, what }: PlannedPlace): PlaceNamed {
	return { bank, place, tag, what };
}

/** Hours a day as planned, over all legs. */
function hoursOver({ served, legs }: Plan): ReadonlyMap<Want, number> {
	const days = new Map(legs.map((leg) => [leg.name, leg.days]));
	const all = legs.reduce((sum, leg) => sum + leg.days, 0);
	const byWant = Map.groupBy(served, ({ want }) => want);
	return new Map(
		[...byWant].map(([want, rows]) => {
			const sum = rows.reduce((total, { leg, hoursPerDay }) => total + (days.get(leg) ?? 0) * hoursPerDay.after, 0);
			return [want, round(sum / all, 2)];
		}),
	);
}
