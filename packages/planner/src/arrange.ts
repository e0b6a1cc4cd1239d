import type { ResolvedJob } from "@skipwright/job";
import type { Candidate, LeftOut } from "./candidate.ts";
import type { CandidateIndex } from "./candidateIndex.ts";
import type { ChoiceOptions } from "./choose.ts";
import { contentKey } from "./contentKey.ts";
import { type Entry, entryOfCandidate, entryOfContent, entryOfMeant, leadingWords } from "./entry.ts";
import { fillByBlocks } from "./fillByBlocks.ts";
import { fillStepwise } from "./fillStepwise.ts";
import { isNamed } from "./isNamed.ts";
import type { Layout } from "./layout.ts";
import type { AsFoundReview, StandingRow, WrongRow } from "./reviewAsFound.ts";

export interface ArrangeInput {
	readonly layout: Layout;
	readonly resolved: ResolvedJob;
	readonly review: AsFoundReview;
	readonly index: CandidateIndex;
	/** Wrong rows, and what each was meant to be. */
	readonly meant: ReadonlyMap<WrongRow, Candidate>;
	readonly chosen: readonly Candidate[];
	/** What goes first where room is short, lowest first. */
	readonly worthOf: (candidate: Candidate) => number;
	/** Without a solver the order of the blocks is a good one, and proved only where it is plain that none is better. */
	readonly solving: Pick<ChoiceOptions, "solver" | "timeLimitS" | "signal">;
}

export interface Arranged {
	readonly leftOut: readonly LeftOut[];
	/** What must be held and found no place, in words. */
	readonly conflicts: readonly string[];
	/** Why rows of the list as found gave way, by line. */
	readonly displaced: ReadonlyMap<number, string>;
	/** `optimal`: no order of the blocks is better under `BLOCK_POINTS`. */
	readonly status: "optimal" | "feasible";
	/** How many of the order's points may be too many, as a share of them; null where nothing tells. */
	readonly gap: number | null;
}

/** Fills a layout that holds the pins: first what stands already, then wrong rows put right in their places, then the rest by blocks. */
export async function arrange(input: ArrangeInput): Promise<Arranged> {
	const { layout, resolved, review, index, meant, chosen, worthOf, solving } = input;
	const { solver, timeLimitS, signal } = solving;
	const limits = { ...(timeLimitS === undefined ? {} : { timeLimitS }), ...(signal === undefined ? {} : { signal }) };
	const { disturbance } = resolved.job.options;
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
	const arrivals = withoutRepeats(layout, [...homeless, ...missing.map((candidate) => entryOfCandidate(candidate))], displaced);
	const filled = await fillByBlocks(layout, arrivals, { disturbance, worthOf, solver, limits });
	const gone = filled?.homeless.map((entry) => ({ entry, for: null })) ?? fillStepwise(layout, arrivals);
	const leftOut: LeftOut[] = [];
	const conflicts: string[] = [];
	const came = new Set(arrivals);
	for (const { entry, for: other } of gone) {
		const why = other === null && came.has(entry) ? whyNoPlace(entry) : `gave way to ${other?.what ?? "what must be held"}`;
		if (entry.want === "guard" || entry.want === "safety-text") conflicts.push(`${entry.what}: no place is left for it`);
		else if (entry.found !== null) displaced.set(entry.found.line, why);
		else leftOut.push({ listing: entry.candidate?.id ?? entry.what, why });
	}
	return { leftOut, conflicts, displaced, status: filled?.status ?? "feasible", gap: filled?.gap ?? null };
}

/** What comes, less what another place holds or an earlier one brings; the owner's own rows come first. */
function withoutRepeats(layout: Layout, entries: readonly Entry[], displaced: Map<number, string>): readonly Entry[] {
	const brought = new Set<string>();
	return entries.filter(({ candidate, found }) => {
		if (candidate === null) return true;
		const keys = [candidate.content, ...candidate.alternatives].map((content) => `${candidate.scan === "data"} ${contentKey(content)}`);
		const isRepeat = layout.holds(candidate) || keys.some((key) => brought.has(key));
		if (isRepeat && found !== null) displaced.set(found.line, "held at another place");
		if (!isRepeat) for (const key of keys) brought.add(key);
		return !isRepeat;
	});
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
