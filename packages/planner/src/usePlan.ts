import { scheduleKnown, scheduleOf } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { WANT_ORDER, type Want } from "./candidate.ts";
import type { Coverage } from "./choiceModel.ts";
import { HOURS_PER_DAY } from "./coverage.ts";
import { type HeardPlace, type Leg, meanDay, round } from "./heardPlaces.ts";
import { listingWant } from "./listingWant.ts";

/** A place to use, and the mean chance that it serves in these hours. */
export interface UsePlace {
	readonly bank: string;
	readonly place: number;
	readonly chance: number;
}

/** What to use for one want on one leg or stay in a run of hours. */
export interface UseRun {
	readonly want: Want;
	readonly leg: string;
	/** UTC hours: from `fromHour`, 0 to 23, to the start of `toHour`, 1 to 24. */
	readonly fromHour: number;
	readonly toHour: number;
	readonly first: UsePlace;
	readonly second: UsePlace | null;
}

/** A place of the layout as the use plan sees it. */
export interface UsablePlace extends HeardPlace {
	/** By sample and hour, for a carrier between ships; null for everything else. */
	readonly ships: Float64Array | null;
}

export interface UsePlanInput {
	readonly samples: readonly VoyageSample[];
	readonly legs: readonly Leg[];
	readonly places: readonly UsablePlace[];
	readonly wants: readonly Want[];
	/** By broadcasts and chance; what never stops counts in every hour. */
	readonly broadcasts: Coverage;
	/** Chance in every hour, whatever is sent: for coast stations, which are called when they are needed. */
	readonly reach: Coverage;
}

/** Least chance worth naming: what `graded` counts as better than nothing. */
const WORTH_NAMING = 0.15;
/** A first choice stays so while nothing is better by more than this: nobody turns the dial for less. Own choice. */
const STAYS_WITHIN = 0.05;

/** By want, leg and hour: the best place and the next best, hours with the same two together. Hours in which nothing is worth naming are left out. */
export function usePlan({ samples, legs, places, wants, broadcasts, reach }: UsePlanInput): readonly UseRun[] {
	return WANT_ORDER.filter((want) => wants.includes(want)).flatMap((want) => {
		const serving = places.flatMap((one) => {
			const cells = cellsFor(want, one, broadcasts, reach);
			return cells === null ? [] : [{ bank: one.bank, place: one.place, cells }];
		});
		return legs.flatMap((leg) => {
			const days = serving.map(({ bank, place, cells }) => ({ bank, place, day: meanDay(cells, samples, leg.samples) }));
			return runsOf(want, leg.name, days);
		});
	});
}

function cellsFor(want: Want, { listings, ships }: UsablePlace, broadcasts: Coverage, reach: Coverage): Float64Array | null {
	if (want === "ship-calling") return ships;
	let best: Float64Array | null = null;
	for (const listing of listings) {
		if (listingWant(listing) !== want) continue;
		const isCalled = want === "coast-calling" && scheduleKnown(scheduleOf(listing)) === "cannot-tell";
		const cells = (isCalled ? reach : broadcasts)(listing)?.map((chance) => Math.min(1, chance)) ?? null;
		if (cells !== null) best = best === null ? cells : best.map((chance, i) => Math.max(chance, cells[i]!));
	}
	return best;
}

interface Day {
	readonly bank: string;
	readonly place: number;
	readonly day: Float64Array;
}

function runsOf(want: Want, leg: string, days: readonly Day[]): readonly UseRun[] {
	const runs: { from: number; to: number; first: Day; second: Day | null }[] = [];
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		const open = runs.at(-1)?.to === hour ? runs.at(-1) : undefined;
		const first = bestAt(hour, days, open?.first ?? null);
		if (first === null) continue;
		const rest = days.filter((one) => one !== first);
		const second = bestAt(hour, rest, open?.second ?? null);
		if (open !== undefined && open.first === first && open.second === second) open.to = hour + 1;
		else runs.push({ from: hour, to: hour + 1, first, second });
	}
	return runs.map(({ from, to, first, second }): UseRun => {
		const told = ({ bank, place, day }: Day): UsePlace => {
			let sum = 0;
			for (let hour = from; hour < to; hour++) sum += day[hour]!;
			return { bank, place, chance: round(sum / (to - from), 2) };
		};
		return { want, leg, fromHour: from, toHour: to, first: told(first), second: second === null ? null : told(second) };
	});
}

/** @param before what was used in the hour before */
function bestAt(hour: number, days: readonly Day[], before: Day | null): Day | null {
	let best: Day | null = null;
	for (const one of days) {
		if (one.day[hour]! >= WORTH_NAMING && (best === null || one.day[hour]! > best.day[hour]!)) best = one;
	}
	if (best === null || before === null || !days.includes(before)) return best;
	return before.day[hour]! >= WORTH_NAMING && before.day[hour]! >= best.day[hour]! - STAYS_WITHIN ? before : best;
}
