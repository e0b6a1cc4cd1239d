import type { Candidate } from "./candidate.ts";
import type { CandidateIndex } from "./candidateIndex.ts";
import { contentKey } from "./contentKey.ts";
import { entryOfCandidate, entryOfContent } from "./entry.ts";
import type { Layout } from "./layout.ts";
import type { StandingRow, WrongRow } from "./reviewAsFound.ts";
import type { HeldPlace } from "./takenRoom.ts";

/** Rows whose place a pin has taken, and that no pin holds elsewhere in the bank. */
export function displacedBy(layout: Layout, standing: readonly StandingRow[], clears: boolean): readonly StandingRow[] {
	const pinned = new Set(layout.all().map(({ bank, entry }) => `${bank} ${contentKey(entry.content)}`));
	return clears
		? []
		: standing.filter(({ row }) => layout.at(row.bank, row.place) !== null && !pinned.has(`${row.bank} ${contentKey(row)}`));
}

/** What is held before anything is chosen. */
export function heldPlaces(
	layout: Layout,
	staying: readonly StandingRow[],
	meant: ReadonlyMap<WrongRow, Candidate>,
	index: CandidateIndex,
): readonly HeldPlace[] {
	const rows = [
		...layout.all().map(({ bank, place, entry }) => ({ bank, place, entry })),
		...staying.map(({ row }) => {
			const place = layout.at(row.bank, row.place) === null ? row.place : null;
			return { bank: row.bank, place, entry: entryOfContent(row.bank, row, index, { pinned: false, found: row }) };
		}),
		...[...meant].map(([{ row }, candidate]) => ({ bank: row.bank, place: row.place, entry: entryOfCandidate(candidate) })),
	];
	return rows.map((one) => {
		const { bank, place, entry } = one;
		const { scan: kind, want, pinned: isPinned, candidate } = entry;
		const isRepeated =
			candidate !== null &&
			rows.some((other) => other !== one && other.entry.candidate === candidate && layout.takes(other.bank, candidate.scan));
		return { bank, place, kind, isPinned, isMovable: want !== "guard" && want !== "safety-text", isRepeated };
	});
}
