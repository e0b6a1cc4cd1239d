import { cheapestAssignment } from "./assignment.ts";

/** Something that is to stand in a block. */
export interface BlockEntry {
	/** Place at which it stands in this block; null where it comes new. */
	readonly at: number | null;
	/** It stays where it stands. */
	readonly isFixed: boolean;
}

/** Entries up to which what stands may be moved by the exact method, whose work grows with their cube; in longer blocks it stays. */
const MOST_EXACT = 200;
/** Makes points of a move whole. */
const SCALE = 1_000;

/**
 * Places of a block for what is to stand in it. Of n entries the first counts n, the next n - 1, and so on, times the places that it stands
 * behind the block's first; a place left costs `disturbance` times the square of the block's length, as much as one move can gain. The
 * least of all that is taken, exactly: so new ones fill the gaps in order, and what stands is moved where that brings order cheaply.
 * @param first, last numbers of the block's first and last place
 * @param entries in the order of use
 * @param disturbance 0: what stands may be anywhere; 1 or more: it stays
 * @returns place of each entry
 */
export function placesInBlock(first: number, last: number, entries: readonly BlockEntry[], disturbance: number): readonly number[] {
	const length = last - first + 1;
	const stays = ({ at, isFixed }: BlockEntry) =>
		at !== null && (isFixed || disturbance >= 1 || (disturbance > 0 && entries.length > MOST_EXACT));
	const taken = new Set(entries.filter(stays).map(({ at }) => at));
	const free = Array.from({ length }, (_, i) => first + i).filter((place) => !taken.has(place));
	const open = entries.flatMap((entry, index) => (stays(entry) ? [] : [{ ...entry, weight: entries.length - index }]));
	if (open.length > free.length) throw new RangeError(`Cannot place ${open.length} in a block as it has ${free.length} free places`);
	const movePoints = Math.round(SCALE * disturbance * length * length);
	// the larger weight at the lower place is best where only places count (Hardy, Littlewood and Polya on rearrangements)
	const isPlain = movePoints === 0 || open.every(({ at }) => at === null);
	const chosen = isPlain
		? open.map((_, i) => i)
		: cheapestAssignment(
				open.map(({ at, weight }) =>
					free.map((place) => SCALE * weight * (place - first) + (at !== null && at !== place ? movePoints : 0)),
				),
			);
	let next = 0;
	return entries.map((entry) => (stays(entry) ? entry.at! : free[chosen[next++]!]!));
}
