import type { ResolvedJob } from "@skipwright/job";
import type { Candidate, LeftOut } from "./candidate.ts";
import type { CandidateIndex } from "./candidateIndex.ts";
import { contentKey } from "./contentKey.ts";
import { type Entry, entryOfCandidate, entryOfContent, entryOfMeant, leadingWords } from "./entry.ts";
import { isNamed } from "./isNamed.ts";
import { inLayoutOrder, type Layout } from "./layout.ts";
import type { AsFoundReview, StandingRow, WrongRow } from "./reviewAsFound.ts";

export interface ArrangeInput {
	readonly layout: Layout;
	readonly resolved: ResolvedJob;
	readonly review: AsFoundReview;
	readonly index: CandidateIndex;
	/** Wrong rows, and what each was meant to be. */
	readonly meant: ReadonlyMap<WrongRow, Candidate>;
	readonly chosen: readonly Candidate[];
}

export interface Arranged {
	readonly leftOut: readonly LeftOut[];
	/** What must be held and found no place, in words. */
	readonly conflicts: readonly string[];
	/** Why rows of the list as found gave way, by line. */
	readonly displaced: ReadonlyMap<number, string>;
}

/** Fills a layout that holds the pins: first what stands already, then wrong rows put right in their places, then the rest by want and band. */
export function arrange({ layout, resolved, review, index, meant, chosen }: ArrangeInput): Arranged {
	const displaced = new Map<number, string>();
	const standing = staying(review.standing, resolved, index, chosen, displaced);
	const homeless = [...putStanding(layout, standing, index, displaced), ...layout.liftOdd()];
	const isHomeless = new Set(homeless.map(({ candidate }) => candidate));
	for (const [one, candidate] of meant) {
		const { row } = one;
		const entry = entryOfMeant(one, candidate);
		if (!layout.holds(candidate) && layout.suits(row.bank, row.place, entry)) layout.put(row.bank, row.place, entry);
	}
	const missing = chosen.filter((candidate) => !layout.holds(candidate) && !isHomeless.has(candidate));
	const leftOut: LeftOut[] = [];
	const conflicts: string[] = [];
	const ordered = inLayoutOrder([...missing.map((candidate) => entryOfCandidate(candidate)), ...homeless]);
	// what the owner has had finds its new place before what is new to him, guard carriers apart
	const isNew = ({ found, want }: Entry) => found === null && want !== "guard";
	for (const entry of ordered.toSorted((a, b) => Number(isNew(a)) - Number(isNew(b)))) {
		if (entry.candidate !== null && layout.holds(entry.candidate)) {
			if (entry.found !== null) displaced.set(entry.found.line, "held at another place");
			continue;
		}
		if (layout.place(entry)) continue;
		const isTraded = entry.want !== "guard" && entry.want !== "safety-text";
		const gone = isTraded ? entry : layout.placeInstead(entry);
		if (gone === null) {
			conflicts.push(`${entry.what}: no place is left for it`);
			continue;
		}
		const why = gone === entry ? whyNoPlace(entry) : `gave way to ${entry.what}`;
		if (gone.found !== null) displaced.set(gone.found.line, why);
		else leftOut.push({ listing: gone.candidate?.id ?? gone.what, why });
	}
	return { leftOut, conflicts, displaced };
}

function whyNoPlace({ found }: Entry): string {
	const noBlock = "no block with a free place that it can be scanned with";
	return found === null ? noBlock : `would be scanned with another kind at its place, and there is ${noBlock}`;
}

/** Standing rows less those that the job clears. */
function staying(
	standing: readonly StandingRow[],
	{ job }: ResolvedJob,
	index: CandidateIndex,
	chosen: readonly Candidate[],
	displaced: Map<number, string>,
): readonly StandingRow[] {
	if (!job.options.clearUnplanned) return standing;
	return standing.filter(({ row }) => {
		const stays = index.held(row.bank, row).some((candidate) => chosen.includes(candidate));
		if (!stays) displaced.set(row.line, "not in the plan, and the job clears what is not");
		return stays;
	});
}

/** Puts standing rows at their places; returns those whose place a pin has taken. */
function putStanding(
	layout: Layout,
	standing: readonly StandingRow[],
	index: CandidateIndex,
	displaced: Map<number, string>,
): readonly Entry[] {
	const pins = new Map(layout.all().map(({ bank, place, entry }) => [`${bank} ${contentKey(entry.content)}`, `${bank} ${place}`]));
	const homeless: Entry[] = [];
	for (const { row, tag, mended } of standing) {
		const made = entryOfContent(row.bank, row, index, { pinned: false, found: row });
		const renamed = tag === "keep" ? [] : [`was tagged ${JSON.stringify(row.tag)}`];
		const notes = [...made.notes, ...(mended === "" ? [] : [`mended, ${mended}`]), ...renamed];
		const tagTexts = tag === "cut" && mayBeCut(row.tag, made) ? [...leadingWords(row.tag), ...made.tagTexts] : made.tagTexts;
		const entry = { ...made, tag: tag === "keep" ? made.tag : null, tagTexts, notes };
		const pin = pins.get(`${row.bank} ${contentKey(row)}`);
		if (pin !== undefined && pin !== `${row.bank} ${row.place}`) displaced.set(row.line, `pinned at ${pin} instead`);
		else if (layout.at(row.bank, row.place) === null) layout.put(row.bank, row.place, entry);
		else if (pin === undefined) homeless.push(entry);
	}
	return homeless;
}

/** A part of a tag may stand for what it names, and for what nothing else here names; on another's carrier it would mislead. */
function mayBeCut(tag: string, { candidate }: Entry): boolean {
	return candidate === null || candidate.sources.some((source) => isNamed(tag, source));
}
