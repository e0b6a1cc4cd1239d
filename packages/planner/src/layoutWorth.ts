import type { Listing } from "@skipwright/directory";
import type { WantId } from "@skipwright/rules";
import type { Candidate } from "./candidate.ts";
import { type Coverage, wantsOf } from "./choiceModel.ts";
import { listingWant } from "./listingWant.ts";

/** What the second, third ... carrier of a band between ships is worth beside the one before. As the choice has it. */
const RANK_SHARE = 1 / 3;

/**
 * What goes first where room is short, lowest first: the most, over the wants that a candidate serves, of the want's weight times the share of
 * the voyage's hours in which one of its listings is heard. Where no listing tells, the weight, and among carriers between ships a third for
 * each place in the order of its band.
 */
export function layoutWorth(candidate: Candidate, weights: Readonly<Partial<Record<WantId, number>>>, coverage: Coverage): number {
	const shares = wantsOf(candidate).map((want) => {
		const own = candidate.sources.filter(({ listing }) => listingWant(listing) === want).map(({ listing }) => shareOf(listing, coverage));
		return (weights[want] ?? 0) * (want === "nets" || own.length === 0 ? rankShare(candidate.rank) : Math.max(...own));
	});
	return Math.max(0, ...shares);
}

function shareOf(listing: Listing, coverage: Coverage): number {
	const cells = coverage(listing);
	return cells === null || cells.length === 0 ? 0 : cells.reduce((sum, cell) => sum + cell, 0) / cells.length;
}

function rankShare(rank: number): number {
	let share = 1;
	for (let i = 1; i < rank; i++) share *= RANK_SHARE;
	return share;
}
