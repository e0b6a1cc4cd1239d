import type { Row } from "@skipwright/set";
import type { Hz } from "@skipwright/units";
import type { Candidate } from "./candidate.ts";
import { isNamed } from "./isNamed.ts";
import { marineBand } from "./marineBand.ts";
import type { WrongRow } from "./reviewAsFound.ts";

/** Hz. A wrong mode, sideband or offset leaves a row this near to what it was meant to be. */
const REACH_HZ = 4_000;

/**
 * What wrong rows were meant to be: the nearest candidate whose station the tag names, within the reach of a wrong offset or, where the figure
 * is a slip, within the band or by a moved point. Each candidate once, in the order of the rows; a row that names nothing is no guess.
 */
export function meantBy(wrong: readonly WrongRow[], candidates: readonly Candidate[]): ReadonlyMap<WrongRow, Candidate> {
	const meant = new Map<WrongRow, Candidate>();
	const taken = new Set<Candidate>();
	for (const one of wrong.filter(({ freesPlace }) => freesPlace)) {
		const { row, slipped } = one;
		const near = candidates.filter(
			(candidate) => !taken.has(candidate) && isNear(candidate, row, slipped) && isNamedBy(row.tag, candidate),
		);
		const nearest = near.toSorted((a, b) => off(a, row) - off(b, row) || (a.id < b.id ? -1 : 1))[0];
		if (nearest === undefined) continue;
		meant.set(one, nearest);
		taken.add(nearest);
	}
	return meant;
}

function isNear(candidate: Candidate, row: Row, slipped: boolean): boolean {
	if (off(candidate, row) <= REACH_HZ) return true;
	return slipped && (candidate.bandMhz === marineBand(row.receive) || figures(candidate.content.receive) === figures(row.receive));
}

/** The figures of a frequency without regard to its point. */
function figures(frequency: Hz): string {
	return String(frequency).replace(/0+$/, "");
}

function off({ content }: Candidate, row: Row): number {
	return Math.abs(content.receive - row.receive);
}

/** By the name of a station, or by what a tag of the candidate itself begins with (MSI 8416.5). */
function isNamedBy(tag: string, { sources, naming }: Candidate): boolean {
	const start = (text = "") => text.split(" ")[0] ?? "";
	return sources.some((source) => isNamed(tag, source)) || (naming !== null && start(naming.tags[0]) === start(tag));
}
