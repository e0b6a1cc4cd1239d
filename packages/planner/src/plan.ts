import type { Directory, Listing } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, voyageSamples } from "@skipwright/job";
import type { Mode, WantId } from "@skipwright/rules";
import type { CheckOptions, Finding, Row } from "@skipwright/set";
import type { Hz, IsoDate } from "@skipwright/units";
import { answered } from "./answered.ts";
import { arrange } from "./arrange.ts";
import type { Candidate, LeftOut, Want } from "./candidate.ts";
import { type CandidateIndex, indexCandidates } from "./candidateIndex.ts";
import { allCandidates } from "./candidates.ts";
import { type ChoiceOptions, choose } from "./choose.ts";
import { chooseTag } from "./chooseTag.ts";
import { type Content, contentKey } from "./contentKey.ts";
import { coverageOf, graded } from "./coverage.ts";
import { type Entry, entryOfCandidate, entryOfContent } from "./entry.ts";
import type { Hearing } from "./hearing.ts";
import { Layout } from "./layout.ts";
import { meantBy } from "./meantBy.ts";
import { placePins } from "./pins.ts";
import { plannedRows } from "./plannedRows.ts";
import { reviewAsFound, type StandingRow, type WrongRow } from "./reviewAsFound.ts";
import { type Served, served } from "./served.ts";
import { type HeldPlace, takenRoom } from "./takenRoom.ts";

export const PLAN_FORMAT = "skipwright-plan";
export const PLAN_VERSION = 1;

/** One filled place of the layout. */
export interface PlannedPlace {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly receiveHz: Hz;
	/** null: receive only. */
	readonly transmitHz: Hz | null;
	readonly mode: Mode;
	/** Best heard of its listings, or a channel (`ap17/401`) or guard carrier (`guard/2182`); null for something in no list. */
	readonly listing: string | null;
	readonly pinned: boolean;
	/** Not what was found there. */
	readonly changed: boolean;
	/** Name for a person. */
	readonly what: string;
	readonly want: Want | null;
	readonly notes: readonly string[];
}

/** A row of the list as found that is not in the layout any more. */
export interface RemovedRow {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly why: string;
}

/** The layout as data: plan.json. */
export interface Plan {
	readonly format: typeof PLAN_FORMAT;
	readonly version: typeof PLAN_VERSION;
	/** `feasible`: everything that must be held is, and the rest is a good choice; `optimal`: proved best under the model of what a place is worth. */
	readonly status: "optimal" | "feasible" | "infeasible";
	/** How much better a choice can be at most, as a share of its worth less the price of its keys; 0 where proved, null where nothing tells. */
	readonly gap: number | null;
	/** Sum over the wants of weight times share of what could be had, by the hearing named in `basis`. */
	readonly worth: number;
	readonly on: IsoDate;
	/** What the hours rest on. */
	readonly basis: string;
	readonly places: readonly PlannedPlace[];
	readonly served: readonly Served[];
	readonly leftOut: readonly LeftOut[];
	readonly removed: readonly RemovedRow[];
	/** Why it is infeasible, in words. */
	readonly conflicts: readonly string[];
	/** What the checks say about the layout. */
	readonly findings: readonly Finding[];
}

/** What is heard, and what may be heard instead. */
export interface PlanHearings {
	readonly hearing: Hearing;
	/** The same with few sunspots: decides between choices that are worth the same. */
	readonly lowHearing?: Hearing;
	/** The same with all signals so many decibels weaker and stronger: shows how far the choice rests on the forecast. */
	readonly levels?: { readonly byDb: number; readonly weaker: Hearing; readonly stronger: Hearing };
}

export interface PlanOptions extends PlanHearings {
	/** The day the checks are made for. */
	readonly on: IsoDate;
	readonly checkList: (rows: readonly Row[], options: CheckOptions) => readonly Finding[];
	/** The solver and its limits; without one the choice is good, but nothing is proved. */
	readonly choice?: ChoiceOptions;
}

/** Days between the dated positions that the choice looks at: a hearing worked out beforehand takes the same. */
export const STEP_DAYS = 2;

/** From a job and the directory to a checked layout. The same input gives the same plan, to the bit, in every engine. */
export async function plan(resolved: ResolvedJob, shipped: Directory, options: PlanOptions): Promise<Plan> {
	const { on, checkList, hearing, lowHearing, choice: choiceOptions = {} } = options;
	const { job, profile, asFound } = resolved;
	const directory = directoryFor(resolved, shipped);
	const { region } = job.options;
	const amateurLicence = job.vessel.licences.amateur;
	const check = (rows: readonly Row[]) => checkList(rows, { profile, directory, on, region, amateurLicence });
	const samples = voyageSamples(resolved.voyage, STEP_DAYS);
	const coverage = remembered((listing) => coverageOf(directory, listing, samples, hearing));
	const gradedBy = (heard: Hearing) => {
		const byGrade = remembered((listing) => coverageOf(directory, listing, samples, heard, { measure: "broadcasts", counting: graded }));
		return remembered(answered(directory, byGrade));
	};

	const { candidates: unordered, leftOut } = allCandidates(resolved, directory);
	const candidates = unordered.map((candidate) => bestHeardFirst(candidate, coverage));
	const index = indexCandidates(profile, candidates);
	const review = reviewAsFound(asFound, check);
	const layout = new Layout(profile, job.options.reservePlaces);
	const conflicts = placePins(job, layout, index);

	const idsAt = (bank: string, content: Content) =>
		index.held(bank, content).flatMap(({ id, scan }) => (layout.takes(bank, scan) ? [id] : []));
	const standing = review.standing.filter(({ row }) => layout.at(row.bank, row.place) === null);
	const standingIds = standing.flatMap(({ row }) => idsAt(row.bank, row));
	const clears = job.options.clearUnplanned;
	const staying = clears ? standing.filter(({ row }) => idsAt(row.bank, row).length > 0) : standing;
	const meant = clears ? new Map<WrongRow, Candidate>() : meantBy(review.wrong, candidates);
	const pinnedIds = layout.all().flatMap(({ bank, entry }) => idsAt(bank, entry.content));
	const present = new Set(clears ? pinnedIds : [...pinnedIds, ...standingIds, ...[...meant.values()].map(({ id }) => id)]);
	const choice = await choose(
		{
			candidates,
			samples,
			coverage,
			graded: gradedBy(hearing),
			gradedLow: lowHearing === undefined ? null : gradedBy(lowHearing),
			weights: job.wants,
			present,
			standing: new Set(standingIds),
			room: takenRoom(
				profile,
				job.options.reservePlaces,
				heldPlaces(layout, [...staying, ...displacedBy(layout, review.standing, clears)], meant, index),
			),
		},
		choiceOptions,
	);
	const arranged = arrange({ layout, resolved, review, index, meant, chosen: choice.chosen });

	const tags = tagged(layout, profile);
	const places = tags.map(({ bank, place, tag, entry }) => plannedPlace(bank, place, tag, entry, asFound));
	const allConflicts = [...conflicts, ...choice.conflicts, ...arranged.conflicts];
	const isWhole = arranged.leftOut.length === 0; // else the layout holds less than was chosen
	const whys = new Map([...review.wrong.map(({ row, why }) => [row.line, why] as const), ...arranged.displaced]);
	return {
		format: PLAN_FORMAT,
		version: PLAN_VERSION,
		status: allConflicts.length > 0 ? "infeasible" : isWhole ? choice.status : "feasible",
		gap: allConflicts.length === 0 && isWhole && choice.gap !== null ? Math.ceil(choice.gap * 1_000_000) / 1_000_000 : null,
		worth: Math.round(choice.worth * 1_000_000) / 1_000_000,
		on,
		basis: hearing.basis,
		places,
		served: served({
			samples,
			coverage,
			wants: [...wantedIds(job.wants), "safety-text"],
			before: review.standing.filter(({ mended }) => mended === "").flatMap(({ row }) => index.heard(row)),
			after: tags.flatMap(({ entry }) => index.heard(entry.content)),
		}),
		leftOut: [...leftOut, ...choice.leftOut, ...arranged.leftOut].toSorted((a, b) =>
			a.listing < b.listing ? -1 : a.listing > b.listing ? 1 : 0,
		),
		removed: removedRows(asFound, tags, whys),
		conflicts: allConflicts,
		findings: check(plannedRows({ places })),
	};
}

/** Rows whose place a pin has taken, and that no pin holds elsewhere in the bank. */
function displacedBy(layout: Layout, standing: readonly StandingRow[], clears: boolean): readonly StandingRow[] {
	const pinned = new Set(layout.all().map(({ bank, entry }) => `${bank} ${contentKey(entry.content)}`));
	return clears
		? []
		: standing.filter(({ row }) => layout.at(row.bank, row.place) !== null && !pinned.has(`${row.bank} ${contentKey(row)}`));
}

/** What is held before anything is chosen. */
function heldPlaces(
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

function wantedIds(wants: Readonly<Partial<Record<WantId, number>>>): readonly Want[] {
	return (Object.keys(wants) as WantId[]).filter((want) => (wants[want] ?? 0) > 0);
}

function remembered<Result>(read: (listing: Listing) => Result): (listing: Listing) => Result {
	const known = new Map<Listing, Result>();
	return (listing) => {
		if (!known.has(listing)) known.set(listing, read(listing));
		return known.get(listing) as Result;
	};
}

/** Every place with a tag that is its own within the bank: tags that stand are kept, the others made. */
function tagged(layout: Layout, profile: ResolvedJob["profile"]) {
	const taken = new Map(profile.banks.map(({ id }) => [id, new Set<string>()]));
	const claim = (bank: string, tag: string) => taken.get(bank)?.add(tag.trim().toUpperCase());
	for (const { bank, entry } of layout.all()) if (entry.tag !== null) claim(bank, entry.tag);
	return layout.all().map(({ bank, place, entry }) => {
		const tag = entry.tag ?? chooseTag(profile, entry.tagTexts, taken.get(bank) ?? new Set());
		claim(bank, tag);
		return { bank, place, tag, entry };
	});
}

function plannedPlace(bank: string, place: number, tag: string, entry: Entry, asFound: readonly Row[]): PlannedPlace {
	const { content, candidate, pinned, want, what, notes } = entry;
	const { receive: receiveHz, transmit: transmitHz, mode } = content;
	const found = asFound.findLast((row) => row.bank === bank && row.place === place);
	const same = found !== undefined && found.tag === tag && contentKey(found) === contentKey(content);
	const source = candidate?.sources.find((one) => one.what === what) ?? candidate?.sources[0];
	const listing = candidate?.want === "guard" ? candidate.id : (source?.listing.id ?? candidate?.id ?? null);
	return { bank, place, tag, receiveHz, transmitHz, mode, listing, pinned, changed: !same, what, want, notes };
}

/** Its sources by how far they are heard, so that the best gives the place its name; ties by id. */
function bestHeardFirst(candidate: Candidate, coverage: (listing: Listing) => Float64Array | null): Candidate {
	if (candidate.sources.length < 2) return candidate;
	const total = (listing: Listing) => coverage(listing)?.reduce((sum, cell) => sum + cell, 0) ?? 0;
	const heard = candidate.sources.map((source) => ({ source, total: total(source.listing) }));
	return { ...candidate, sources: heard.toSorted((a, b) => b.total - a.total).map(({ source }) => source) };
}

/** Rows of the list as found of which nothing stands in the layout. */
function removedRows(
	asFound: readonly Row[],
	filled: readonly { readonly bank: string; readonly entry: Entry }[],
	whys: ReadonlyMap<number, string>,
): readonly RemovedRow[] {
	const lines = new Set(filled.map(({ entry }) => entry.found?.line));
	const contents = new Set(filled.map(({ bank, entry }) => `${bank} ${contentKey(entry.content)}`));
	return asFound
		.filter((row) => !lines.has(row.line) && !contents.has(`${row.bank} ${contentKey(row)}`))
		.map(({ bank, place, tag, line }) => ({ bank, place, tag, why: whys.get(line) ?? "its place is pinned" }));
}
