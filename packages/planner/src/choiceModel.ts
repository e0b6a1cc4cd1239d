import type { Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { WantId } from "@skipwright/rules";
import type { BankRoom } from "./bankRoom.ts";
import { type Candidate, WANT_ORDER, type Want } from "./candidate.ts";
import { HOURS_PER_DAY } from "./coverage.ts";
import { type CoverCell, type CoverItem, type CoverProblem, eighthsOf, HOUR_PARTS } from "./coverProblem.ts";
import { listingWant } from "./listingWant.ts";

/** Share of an hour in which a listing counts, by sample and hour; null where it cannot be told. */
export type Coverage = (listing: Listing) => Float64Array | null;

export interface ChoiceQuestion {
	/** By id. */
	readonly candidates: readonly Candidate[];
	/** Ids of those that are held whatever they are worth. */
	readonly musts: ReadonlySet<string>;
	/** Ids of those that the layout holds whatever is chosen. They count, and take no room. */
	readonly present: ReadonlySet<string>;
	/** Ids of further ones that stand at a place, to stay there if they are chosen. They take no room. */
	readonly standing: ReadonlySet<string>;
	/** Ids of those that are taken rather than others of the same worth. */
	readonly preferred: ReadonlySet<string>;
	readonly samples: readonly VoyageSample[];
	/** Share of each hour on the air and heard well enough. */
	readonly graded: Coverage;
	/** The same for a sky with few sunspots, at some of the samples; null: not looked at. */
	readonly low: LowSky | null;
	readonly weights: Readonly<Partial<Record<WantId, number>>>;
	/** Per cent of what its want could have at all that a place must bring to be worth its keys. */
	readonly leastGainPercent: number;
	/** What is heard at a candidate's place: its own sources, and what others of its kind send on the same dial. */
	readonly hears: (candidate: Candidate) => readonly Listing[];
	/** Of what use a marine band is over such distances, 0 to 1. */
	readonly bandUse: (bandMhz: number) => number;
	readonly room: readonly BankRoom[];
}

/** A sky with few sunspots, which tells choices of the same worth apart. */
export interface LowSky {
	readonly samples: readonly VoyageSample[];
	readonly graded: Coverage;
}

/** What all wants together can be worth: large, so that rounding to whole numbers shifts no choice that matters. */
export const WHOLE_WORTH = 1_000_000_000;
/** Share of the want that one international calling pair counts, beside the stations that are known to be heard on it. Own choice. */
const CALLING_PAIR_SHARE = 0.02;

type Wanted = Exclude<WantId, "nets">;

/**
 * The choice as a cover problem. Each want is worth its weight when everything that serves it is chosen; its hours are worth alike, and
 * nets, carriers between ships and calling pairs, of which no listing tells when they are heard, are worth fixed shares of their want.
 */
export function coverProblem(question: ChoiceQuestion): CoverProblem {
	const { candidates, musts, samples, present, standing, preferred, weights, room, low, leastGainPercent } = question;
	const total = Object.values(weights).reduce((sum, weight) => sum + weight, 0);
	const wholeOf = (want: Want) => (total === 0 ? 0 : (WHOLE_WORTH * (weights[want as WantId] ?? 0)) / total);
	const shares = fixedShares(candidates, question.bandUse);
	const items = candidates.map((candidate, index): CoverItem => {
		const { id, scan, want } = candidate;
		const prices = wantsOf(candidate)
			.map(wholeOf)
			.filter((whole) => whole > 0);
		return {
			id,
			kind: scan,
			isPresent: present.has(id),
			isMust: musts.has(id),
			isStanding: standing.has(id),
			isPreferred: preferred.has(id),
			bonus: Math.round(shares[index]! * wholeOf(want)),
			price: Math.round((leastGainPercent / 100) * Math.min(...prices, WHOLE_WORTH)),
		};
	});
	const cellsOf = (sampled: readonly VoyageSample[], coverage: Coverage) =>
		WANT_ORDER.flatMap((want) => {
			if (want === "guard" || want === "safety-text" || want === "nets" || wholeOf(want) === 0) return [];
			const fixed = candidates.reduce((sum, candidate, index) => sum + (candidate.want === want ? shares[index]! : 0), 0);
			return wantCells(question, want, wholeOf(want) * (1 - Math.min(1, fixed)), coverage, sampled);
		});
	return { items, cells: cellsOf(samples, question.graded), lowCells: low === null ? null : cellsOf(low.samples, low.graded), room };
}

/** The wants that a candidate serves, never-traded ones apart. */
export function wantsOf({ want, sources }: Candidate): readonly WantId[] {
	const all = [want, ...sources.map(({ listing }) => listingWant(listing))];
	return [...new Set(all)].filter((one) => one !== "guard" && one !== "safety-text");
}

function wantCells(
	{ candidates, hears }: ChoiceQuestion,
	want: Wanted,
	whole: number,
	coverage: Coverage,
	samples: readonly VoyageSample[],
): readonly CoverCell[] {
	const stations = samples.flatMap(() => Array.from({ length: HOURS_PER_DAY }, () => new Map<string, Map<number, number>>()));
	for (const [item, candidate] of candidates.entries()) {
		if (candidate.want === "guard") continue; // nobody makes routine calls on a distress carrier
		for (const listing of hears(candidate)) {
			const shares = listingWant(listing) === want ? coverage(listing) : null;
			for (const [cell, share] of (shares ?? []).entries()) {
				if (share === 0) continue;
				const own = stations[cell]!.get(listing.stationId) ?? new Map<number, number>();
				own.set(item, Math.max(own.get(item) ?? 0, partsOf(share)));
				stations[cell]!.set(listing.stationId, own);
			}
		}
	}
	const days = (cell: number) => samples[Math.floor(cell / HOURS_PER_DAY)]!.days;
	const attainable = stations.reduce((sum, heard, cell) => {
		const parts = [...heard.values()].reduce((most, members) => most + Math.max(...members.values()), 0);
		return sum + days(cell) * eighthsOf(parts);
	}, 0);
	return stations.flatMap((heard, cell): readonly CoverCell[] => {
		if (heard.size === 0) return [];
		const inOrder = [...heard].toSorted(([a], [b]) => (a < b ? -1 : 1));
		return [
			{
				worth: Math.max(1, Math.round((whole * days(cell)) / attainable)),
				stations: inOrder.map(([, members]) => [...members].map(([item, parts]) => ({ item, parts }))),
			},
		];
	});
}

/** Something heard is at least one part. */
function partsOf(share: number): number {
	return Math.min(HOUR_PARTS, Math.max(1, Math.round(share * HOUR_PARTS)));
}

/** Share of the want for what no listing tells the worth of: nets are all wanted alike; ship carriers by their band, of a band less and less. */
function fixedShares(candidates: readonly Candidate[], bandUse: ChoiceQuestion["bandUse"]): readonly number[] {
	const nets = candidates.filter(({ want }) => want === "nets").length;
	const isShip = ({ want, naming }: Candidate) => want === "ship-calling" && naming !== null;
	const shipWorth = ({ rank, bandMhz }: Candidate) => rankWorth(rank) * bandUse(bandMhz);
	const ships = candidates.filter(isShip).reduce((sum, candidate) => sum + shipWorth(candidate), 0);
	return candidates.map((candidate) => {
		if (candidate.want === "nets") return 1 / nets;
		if (isShip(candidate)) return ships === 0 ? 0 : shipWorth(candidate) / ships;
		return candidate.want === "coast-calling" && candidate.naming !== null ? CALLING_PAIR_SHARE * bandUse(candidate.bandMhz) : 0;
	});
}

/** What the first, second, ... carrier of a band counts among those between ships: each a third of the one before. Own choice. */
function rankWorth(rank: number): number {
	let worth = 1;
	for (let i = 1; i < rank; i++) worth /= 3;
	return worth;
}
