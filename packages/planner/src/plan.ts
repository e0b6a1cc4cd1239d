import type { Directory, Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { directoryFor, type ResolvedJob } from "@skipwright/job";
import type { WantId } from "@skipwright/rules";
import type { CheckOptions, Finding, Row } from "@skipwright/set";
import { dscWatchProblems, fullDscWatch } from "@skipwright/set";
import type { IsoDate } from "@skipwright/units";
import { hz } from "@skipwright/units";
import { answered } from "./answered.ts";
import { arrange } from "./arrange.ts";
import type { Candidate, Want } from "./candidate.ts";
import { namingOf, WANT_ORDER } from "./candidate.ts";
import { type CandidateIndex, indexCandidates } from "./candidateIndex.ts";
import { allCandidates } from "./candidates.ts";
import type { Coverage } from "./choiceModel.ts";
import { type ChoiceOptions, choose } from "./choose.ts";
import { chooseTag } from "./chooseTag.ts";
import { type Content, contentKey } from "./contentKey.ts";
import type { Measure } from "./coverage.ts";
import { coverageOf, graded } from "./coverage.ts";
import { doubts } from "./doubts.ts";
import { type Entry, entryOfCandidate, entryOfContent } from "./entry.ts";
import { placeDay, placeServices, shipCells } from "./explain.ts";
import { anyHeard, legsOf, perDay, round, stationsFor } from "./heardPlaces.ts";
import type { Hearing } from "./hearing.ts";
import { Layout } from "./layout.ts";
import { layoutWorth } from "./layoutWorth.ts";
import { meantBy } from "./meantBy.ts";
import { placePins } from "./pins.ts";
import {
	PLAN_FORMAT,
	PLAN_VERSION,
	type Plan,
	type PlanLevel,
	type PlannedPlace,
	type PlannedWatch,
	type RemovedRow,
	type Swayed,
} from "./planDocument.ts";
import { plannedRows } from "./plannedRows.ts";
import { planSamples } from "./planSamples.ts";
import { reviewAsFound, type StandingRow, type WrongRow } from "./reviewAsFound.ts";
import { served } from "./served.ts";
import { type HeldPlace, takenRoom } from "./takenRoom.ts";
import { usePlan } from "./usePlan.ts";
import { watchOff } from "./watchOff.ts";

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

/** From a job and the directory to a checked layout. The same input gives the same plan, to the bit, in every engine. */
export async function plan(resolved: ResolvedJob, shipped: Directory, options: PlanOptions): Promise<Plan> {
	const { on, checkList, hearing, lowHearing, levels, choice: choiceOptions = {} } = options;
	const { job, profile, asFound } = resolved;
	const directory = directoryFor(resolved, shipped);
	const { region } = job.options;
	const amateurLicence = job.vessel.licences.amateur;
	const check = (rows: readonly Row[]) => checkList(rows, { profile, directory, on, region, amateurLicence });
	const samples = planSamples(resolved.voyage);
	const legs = legsOf(samples);
	const coverageBy = (heard: Hearing, measure: Measure) =>
		remembered(
			answered(
				directory,
				remembered((listing: Listing) => coverageOf(directory, listing, samples, heard, { measure })),
			),
		);
	const coverage = remembered((listing: Listing) => coverageOf(directory, listing, samples, hearing));
	const gradedBy = (heard: Hearing) => {
		const byGrade = remembered((listing: Listing) =>
			coverageOf(directory, listing, samples, heard, { measure: "broadcasts", counting: graded }),
		);
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
	const question = {
		candidates,
		samples,
		coverage,
		graded: gradedBy(hearing),
		gradedLow: lowHearing === undefined ? null : gradedBy(lowHearing),
		weights: job.wants,
		present,
		standing: new Set(standingIds),
		preferred: new Set<string>(),
		together: togetherIds(resolved, index),
		leastGainPercent: job.options.leastGainPercent,
		room: takenRoom(
			profile,
			job.options.reservePlaces,
			heldPlaces(layout, [...staying, ...displacedBy(layout, review.standing, clears)], meant, index),
		),
	};
	const choice = await choose(question, choiceOptions);
	const worthOf = (candidate: Candidate) => layoutWorth(candidate, job.wants, coverage);
	const arranged = await arrange({ layout, resolved, review, index, meant, chosen: choice.chosen, worthOf, solving: choiceOptions });

	const tags = tagged(layout, profile);
	const heardPlaces = tags.map(({ bank, place, entry }) => ({ bank, place, listings: listingsOf(index.heard(entry.content)) }));
	const heardBy = coverageBy(hearing, "airtime");
	const reach = coverageBy(hearing, "reach");
	const broadcasts = coverageBy(hearing, "broadcasts");
	const services = placeServices({ samples, legs, places: heardPlaces, coverage: heardBy });
	const shipDays = remembered((bandMhz: number) => shipCells(bandMhz, samples, hearing));
	const isShips = ({ want, candidate }: Entry) => (want === "ship-calling" || want === "guard") && candidate !== null;
	const places = tags.map(({ bank, place, tag, entry }, i): PlannedPlace => {
		const day = placeDay({ directory, samples, reach, hearing }, heardPlaces[i]!.listings, isShips(entry) ? entry.bandMhz : null);
		const hears = heardPlaces[i]!.listings.map(({ id }) => id).toSorted();
		return { ...plannedPlace(bank, place, tag, entry, asFound), hears, serves: services[i]!, day };
	});
	const wants = [...wantedIds(job.wants), "safety-text"] as const;
	const usable = heardPlaces.map((one, i) => {
		const { want, bandMhz } = tags[i]!.entry;
		return { ...one, ships: want === "ship-calling" ? shipDays(bandMhz) : null };
	});
	const use = usePlan({ samples, legs, places: usable, wants, broadcasts, reach });
	const after = heardPlaces.flatMap(({ listings }) => listings);
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
		legs: legs.map(({ name, days, samples: own }) => ({ name, days: round(days, 2), from: samples[own[0]!]!.date })),
		served: served({
			samples,
			legs,
			coverage: heardBy,
			broadcasts,
			wants,
			before: review.standing.filter(({ mended }) => mended === "").flatMap(({ row }) => listingsOf(index.heard(row))),
			after,
		}),
		use,
		watch: {
			...watchTable(resolved),
			off: profile.receivers === 1 ? watchOff({ directory, samples, legs, places: heardPlaces, use }) : null,
		},
		levels: await Promise.all(
			levels === undefined
				? []
				: [
						{ db: -levels.byDb, heard: levels.weaker },
						{ db: levels.byDb, heard: levels.stronger },
					].map(async ({ db, heard }): Promise<PlanLevel> => {
						const preferred = new Set(choice.chosen.map(({ id }) => id)); // what is worth the same either way is no sway
						const other = await choose({ ...question, preferred, graded: gradedBy(heard), gradedLow: null }, choiceOptions);
						return { db, hours: hoursBy(wants, after, coverageBy(heard, "airtime"), samples), ...swayed(choice.chosen, other.chosen) };
					}),
		),
		leftOut: [...leftOut, ...choice.leftOut, ...arranged.leftOut].toSorted((a, b) =>
			a.listing < b.listing ? -1 : a.listing > b.listing ? 1 : 0,
		),
		removed: removedRows(asFound, tags, whys),
		doubts: doubts(resolved, directory),
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

/** As the job says, and the frequencies of one net: it moves between them. */
function togetherIds({ job, ownListings }: ResolvedJob, { byId }: CandidateIndex): readonly (readonly string[])[] {
	const nets = [...Map.groupBy(ownListings, ({ coverage }) => coverage).values()].map((ones) => ones.map(({ id }) => id));
	const asked = [...job.together, ...nets];
	const groups = asked.map((ids) => [...new Set(ids.flatMap((id) => byId(id)?.id ?? []))]).filter((ids) => ids.length > 1);
	const taken = new Set<string>();
	return groups.flatMap((ids) => {
		if (ids.some((id) => taken.has(id))) return []; // the job's own come first
		for (const id of ids) taken.add(id);
		return [ids];
	});
}

/** Nobody makes routine calls on a distress carrier, whoever listens there. */
function listingsOf(candidates: readonly Candidate[]): readonly Listing[] {
	return [...new Set(candidates.flatMap(({ want, sources }) => (want === "guard" ? [] : sources.map(({ listing }) => listing))))];
}

/** Hours a day over the whole voyage. */
function hoursBy(
	wants: readonly Want[],
	listings: readonly Listing[],
	coverage: Coverage,
	samples: readonly VoyageSample[],
): PlanLevel["hours"] {
	const all = samples.map((_, index) => index);
	return WANT_ORDER.filter((want) => wants.includes(want)).flatMap((want) => {
		const heard = anyHeard(stationsFor(want, listings, coverage).values());
		return heard === null ? [] : [{ want, hoursPerDay: round(perDay(heard, samples, all), 2) }];
	});
}

function swayed(chosen: readonly Candidate[], other: readonly Candidate[]): Pick<PlanLevel, "enters" | "leaves"> {
	const only = (these: readonly Candidate[], those: readonly Candidate[]) =>
		these.filter((one) => !those.includes(one)).map((one): Swayed => ({ listing: one.id, what: namingOf(one).what }));
	return { enters: only(other, chosen), leaves: only(chosen, other) };
}

/** As the job wants it, else the most that the rule lets the set hold. */
function watchTable({ job, profile }: ResolvedJob): Omit<PlannedWatch, "off"> {
	const size = profile.dscWatch?.size ?? 0;
	if (size === 0) return { tableHz: null, problems: [] };
	const wanted = job.settings.wanted?.dscWatchHz;
	if (wanted !== undefined) return { tableHz: wanted.map(hz), problems: dscWatchProblems(wanted, size) };
	return { tableHz: fullDscWatch(size), problems: [] };
}

function wantedIds(wants: Readonly<Partial<Record<WantId, number>>>): readonly Want[] {
	return (Object.keys(wants) as WantId[]).filter((want) => (wants[want] ?? 0) > 0);
}

function remembered<Key, Result>(read: (key: Key) => Result): (key: Key) => Result {
	const known = new Map<Key, Result>();
	return (key) => {
		if (!known.has(key)) known.set(key, read(key));
		return known.get(key) as Result;
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

function plannedPlace(bank: string, place: number, tag: string, entry: Entry, asFound: readonly Row[]) {
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
