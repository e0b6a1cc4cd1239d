import {
	airtimeOf,
	type Directory,
	type Listing,
	occurrencesOf,
	type ScheduleKnown,
	scheduleKnown,
	scheduleOf,
	stationOf,
} from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { Hearing } from "./hearing.ts";
import { isRelevant } from "./relevance.ts";

export const HOURS_PER_DAY = 24;

/** Share of each hour taken where a station is known to send but not when. Own choice: about an hour a day in all. */
const UNKNOWN_TIMES_SHARE = 1 / HOURS_PER_DAY;
/** Share of a listing's worth that counts where nobody knows whether it still sends. Own choice. */
const UNKNOWN_STATUS_SHARE = 0.5;

/** What a chance counts: itself, or by grades. */
export type Counting = (chance: number) => number;

/** The least chance that counts as heard, and the least that is better than nothing, with what it counts. Own choice. */
const FAIR = { from: 0.45, counts: 1 } as const;
const POOR = { from: 0.15, counts: 0.25 } as const;

/** By grades: from a fair chance on a station serves, a poor one counts a quarter, less is nothing. For the choice, which wants few levels. */
export function graded(chance: number): number {
	return chance >= FAIR.from ? FAIR.counts : chance >= POOR.from ? POOR.counts : 0;
}

/**
 * What is counted of a listing in each hour: `airtime`, the share of it in which it is on the air; `broadcasts`, how many begin in it, however
 * long they are. A broadcast or watch that goes on counts once more in each further hour that it fills; one that never stops, in every hour.
 * `reach`: 1 in every hour, whatever is sent.
 */
export type Measure = "airtime" | "broadcasts" | "reach";

export interface CoverageOptions {
	/** Default "airtime". */
	readonly measure?: Measure;
	/** What a chance counts. Default: itself. */
	readonly counting?: Counting;
}

/**
 * How far a listing is heard along a voyage: for each sample and UTC hour, in that order, what is sent in that hour times the chance that it
 * is heard; nothing where it speaks of other waters. Null where it cannot be told.
 */
export function coverageOf(
	directory: Directory,
	listing: Listing,
	samples: readonly VoyageSample[],
	hearing: Hearing,
	{ measure = "airtime", counting = (chance) => chance }: CoverageOptions = {},
): Float64Array | null {
	const from = { listing, station: stationOf(directory, listing) };
	const known = scheduleKnown(scheduleOf(listing));
	const cells = new Float64Array(samples.length * HOURS_PER_DAY);
	if (known === "off") return cells;
	const share = listing.status === "unknown" ? UNKNOWN_STATUS_SHARE : 1;
	for (const [index, sample] of samples.entries()) {
		if (!isRelevant(listing, from.station, sample)) continue;
		const heard = new Float64Array(HOURS_PER_DAY);
		let any = false;
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			const chance = hearing.heard(from, sample, hour * 60 + 30);
			if (chance === null) return null;
			const counts = counting(chance);
			heard[hour] = counts;
			any ||= counts > 0;
		}
		if (!any) continue;
		const sent = sentBy(directory, listing, sample, known, measure);
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) cells[index * HOURS_PER_DAY + hour] = heard[hour]! * share * sent[hour]!;
	}
	return cells;
}

function sentBy(directory: Directory, listing: Listing, { date }: VoyageSample, known: ScheduleKnown, measure: Measure): Float64Array {
	const sent = new Float64Array(HOURS_PER_DAY);
	if (known === "continuous" || measure === "reach") return sent.fill(1);
	if (known === "cannot-tell") return sent.fill(UNKNOWN_TIMES_SHARE);
	if (measure === "broadcasts") {
		for (const { fromMin, toMin } of occurrencesOf(directory, listing, date)) {
			const first = Math.floor(fromMin / 60);
			sent[first]! += 1;
			for (let hour = first + 1; hour < Math.floor(toMin / 60); hour++) sent[hour % HOURS_PER_DAY]! += 1; // the day closes on itself
		}
		return sent;
	}
	for (const { fromMin, toMin } of airtimeOf(directory, listing, date)) {
		for (let hour = Math.floor(fromMin / 60); hour < Math.ceil(toMin / 60); hour++) {
			sent[hour]! += (Math.min(toMin, hour * 60 + 60) - Math.max(fromMin, hour * 60)) / 60;
		}
	}
	return sent;
}
