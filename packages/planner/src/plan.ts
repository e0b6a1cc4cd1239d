import type { Directory, Listing } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, voyageSamples } from "@skipwright/job";
import type { Mode, WantId } from "@skipwright/rules";
import type { CheckOptions, Finding, Row } from "@skipwright/set";
import type { Hz, IsoDate } from "@skipwright/units";
import { arrange } from "./arrange.ts";
import type { Candidate, LeftOut, Want } from "./candidate.ts";
import { indexCandidates } from "./candidateIndex.ts";
import { allCandidates } from "./candidates.ts";
import { choose } from "./choose.ts";
import { chooseTag } from "./chooseTag.ts";
import { type Content, contentKey } from "./contentKey.ts";
import { coverageOf } from "./coverage.ts";
import type { Entry } from "./entry.ts";
import type { Hearing } from "./hearing.ts";
import { Layout } from "./layout.ts";
import { meantBy } from "./meantBy.ts";
import { placePins } from "./pins.ts";
import { plannedRows } from "./plannedRows.ts";
import { reviewAsFound, type WrongRow } from "./reviewAsFound.ts";
import { type Served, served } from "./served.ts";

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
	/** `feasible`: everything that must be held is, and the rest is a good choice, not proved best; `optimal`: proved, which the simple chooser never claims. */
	readonly status: "optimal" | "feasible" | "infeasible";
	/** How far from the best it can be at most, as a share of `worth`; null where nothing tells. */
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

export interface PlanOptions {
	/** The day the checks are made for. */
	readonly on: IsoDate;
	readonly checkList: (rows: readonly Row[], options: CheckOptions) => readonly Finding[];
	readonly hearing: Hearing;
}

/** Days between the dated positions that the choice looks at: a hearing worked out beforehand takes the same. */
export const STEP_DAYS = 2;

/** From a job and the directory to a checked layout. The same input gives the same plan, to the bit, in every engine. */
export function plan(resolved: ResolvedJob, shipped: Directory, { on, checkList, hearing }: PlanOptions): Plan {
	const { job, profile, asFound } = resolved;
	const directory = directoryFor(resolved, shipped);
	const { region } = job.options;
	const amateurLicence = job.vessel.licences.amateur;
	const check = (rows: readonly Row[]) => checkList(rows, { profile, directory, on, region, amateurLicence });
	const samples = voyageSamples(resolved.voyage, STEP_DAYS);
	const coverage = remembered((listing) => coverageOf(directory, listing, samples, hearing));

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
	const filled = [...staying.map(({ row }) => row.bank), ...[...meant.keys()].map(({ row }) => row.bank)];
	const free = new Map(profile.banks.map((bank) => [bank.id, layout.free(bank) - filled.filter((id) => id === bank.id).length]));
	const room = { profile, free };
	const choice = choose({ candidates, samples, coverage, weights: job.wants, present, standing: new Set(standingIds), room });
	const arranged = arrange({ layout, resolved, review, index, meant, chosen: choice.chosen });

	const tags = tagged(layout, profile);
	const places = tags.map(({ bank, place, tag, entry }) => plannedPlace(bank, place, tag, entry, asFound));
	const allConflicts = [...conflicts, ...arranged.conflicts];
	const whys = new Map([...review.wrong.map(({ row, why }) => [row.line, why] as const), ...arranged.displaced]);
	return {
		format: PLAN_FORMAT,
		version: PLAN_VERSION,
		status: allConflicts.length === 0 ? "feasible" : "infeasible",
		gap: null,
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
