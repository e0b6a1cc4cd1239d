import type { BankRoom } from "./bankRoom.ts";
import type { ScanKind } from "./candidate.ts";

/** Parts into which an hour is cut: 2.5 minutes each. */
export const HOUR_PARTS = 24;
/**
 * What the first, second, third and fourth station heard in the same hour counts, in eighths: 1, a half, a quarter, an eighth. One station's
 * frequencies are not independent of each other, so only the best of them counts. Own choice.
 */
export const STATION_EIGHTHS = [8, 4, 2, 1] as const;

/** Something that may be chosen. */
export interface CoverItem {
	readonly id: string;
	readonly kind: ScanKind;
	/** Held whatever is chosen, and takes no room of what is free. */
	readonly isPresent: boolean;
	/** Never traded: chosen whatever it costs. */
	readonly isMust: boolean;
	/** Stands at a place where it may stay: takes no room of what is free and no keys. */
	readonly isStanding: boolean;
	/** Between choices of the same worth one with it is taken as no change. Default false. */
	readonly isPreferred?: boolean;
	/** Worth beside what it hears. */
	readonly bonus: number;
	/** Worth that it must bring to be keyed in; not asked of what is present, must be held, or stands already. */
	readonly price: number;
}

/** One hour at one place for one want. */
export interface CoverCell {
	/** Worth of one part of the hour from one station, in eighths: what the first station adds is 8 times this for each part. */
	readonly worth: number;
	/** The frequencies of each station: item number, and the parts of the hour that it is heard. */
	readonly stations: readonly (readonly { readonly item: number; readonly parts: number }[])[];
}

/**
 * What to choose, in whole numbers, so that an answer can be proved. Worth of a choice: over cells, of the sum over stations of the most
 * parts that a chosen frequency of the station brings, falling by `STATION_EIGHTHS` at each full hour; plus bonuses, less prices.
 */
export interface CoverProblem {
	readonly items: readonly CoverItem[];
	readonly cells: readonly CoverCell[];
	/** As `cells`, for a sky with few sunspots: decides between choices of the same worth. null: not looked at. */
	readonly lowCells: readonly CoverCell[] | null;
	readonly room: readonly BankRoom[];
	/** Numbers of items of which all are chosen or none, none of them present or a must, each in one group at most. Default: none. */
	readonly together?: readonly (readonly number[])[];
}

/** Worth of so many parts in one hour, in eighths: 8 each up to a full hour, then 4, 2 and 1, then nothing. */
export function eighthsOf(parts: number): number {
	let worth = 0;
	for (const [rank, eighths] of STATION_EIGHTHS.entries()) {
		worth += eighths * Math.min(HOUR_PARTS, Math.max(0, parts - rank * HOUR_PARTS));
	}
	return worth;
}

/** What it costs to choose an item, in worth. */
export function priceOf({ isPresent, isMust, isStanding, price }: CoverItem): number {
	return isPresent || isMust || isStanding ? 0 : price;
}

/** Whether choosing it takes a free place. */
export function takesRoom({ isPresent, isStanding }: CoverItem): boolean {
	return !isPresent && !isStanding;
}
