import type { Directory, Listing } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, stagesOf } from "@skipwright/job";
import type { WantId } from "@skipwright/rules";
import type { CheckOptions, Finding, Row } from "@skipwright/set";
import { dateOfMs, type Hz, type IsoDate } from "@skipwright/units";
import { type Arranged, arrange } from "./arrange.ts";
import type { Candidate, LeftOut, Want } from "./candidate.ts";
import { type CandidateIndex, indexCandidates } from "./candidateIndex.ts";
import { allCandidates } from "./candidates.ts";
import { type Choice, type ChoiceInput, type ChoiceOptions, choose } from "./choose.ts";
import type { Content } from "./contentKey.ts";
import { graded } from "./coverage.ts";
import { type Coverages, coveragesBy, remembered } from "./coverages.ts";
import { doubts } from "./doubts.ts";
import type { Entry } from "./entry.ts";
import { placeDay, placeServices } from "./explain.ts";
import { legsOf, round } from "./heardPlaces.ts";
import type { Hearing } from "./hearing.ts";
import { displacedBy, heldPlaces } from "./heldPlaces.ts";
import { Layout } from "./layout.ts";
import { layoutWorth } from "./layoutWorth.ts";
import { listingWant } from "./listingWant.ts";
import { meantBy } from "./meantBy.ts";
import { placePins } from "./pins.ts";
import { PLAN_FORMAT, PLAN_VERSION, type Plan, type PlanLevel, type PlannedPlace } from "./planDocument.ts";
import { hoursBy, swayed } from "./planLevel.ts";
import { plannedPlace, removedRows, type TaggedEntry, tagged } from "./plannedPlaces.ts";
import { plannedRows } from "./plannedRows.ts";
import { lowSkySamples, planSamples } from "./planSamples.ts";
import { type AsFoundReview, reviewAsFound, type WrongRow } from "./reviewAsFound.ts";
import { scanBlocks } from "./scanBlocks.ts";
import { served } from "./served.ts";
import { takenRoom } from "./takenRoom.ts";
import { togetherIds } from "./togetherIds.ts";
import { usePlan } from "./usePlan.ts";
import { watchOff } from "./watchOff.ts";
import { watchTable } from "./watchTable.ts";

/** What is heard, and what may be heard instead. */
export interface PlanHearings {
	readonly hearing: Hearing;
	/** The same with few sunspots, at the samples of `lowSkySamples`: decides between choices that are worth the same. */
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
	const { on, hearing, lowHearing, levels, choice: choiceOptions = {} } = options;
	const { job, profile, asFound } = resolved;
	const directory = directoryFor(resolved, shipped);
	const { region } = job.options;
	const amateurLicence = job.vessel.licences.amateur;
	const check = (rows: readonly Row[]) => options.checkList(rows, { profile, directory, on, region, amateurLicence });
	const samples = planSamples(resolved.voyage);
	const low = lowSkySamples(samples);
	const coverages = coveragesBy(hearing, directory, samples);

	const { candidates: unordered, leftOut } = allCandidates(resolved, directory);
	const candidates = unordered.map((candidate) => bestHeardFirst(candidate, coverages.heard));
	const index = indexCandidates(profile, candidates);
	const review = reviewAsFound(asFound, check);
	const layout = new Layout(profile, job.options.reservePlaces);
	const pinConflicts = placePins(job, layout, index);
	const held = heldAlready(resolved, layout, review, candidates, index);
	const question: ChoiceInput = {
		...held.ids,
		candidates,
		samples,
		coverage: coverages.heard,
		graded: coverages.graded,
		low: lowHearing === undefined ? null : { samples: low, graded: coveragesBy(lowHearing, directory, low).graded },
		weights: job.wants,
		preferred: new Set(),
		together: togetherIds(resolved, index),
		leastGainPercent: job.options.leastGainPercent,
		hears: remembered((candidate) => heardBeside(candidate, index)),
		bandUse: remembered((bandMhz) => bandUse(bandMhz, coverages)),
		room: takenRoom(profile, job.options.reservePlaces, held.places),
	};
	const choice = await choose(question, choiceOptions);
	const arranged = await arrange({
		layout,
		resolved,
		review,
		index,
		meant: held.meant,
		chosen: choice.chosen,
		worthOf: (candidate) => layoutWorth(candidate, job.wants, coverages.heard),
		solving: choiceOptions,
	});

	const entries = tagged(layout, profile);
	const told = tellPlaces(resolved, directory, samples, entries, index, coverages);
	const { legs, places, heard, use, wants } = told;
	const after = heard.flatMap(({ listings }) => listings);
	const levelOf = async (db: number, other: Hearing): Promise<PlanLevel> => {
		const { airtime, graded } = coveragesBy(other, directory, samples);
		const preferred = new Set(choice.chosen.map(({ id }) => id)); // what is worth the same either way is no sway
		const { chosen } = await choose({ ...question, preferred, graded, low: null }, choiceOptions);
		return { db, hours: hoursBy(wants, after, airtime, samples), ...swayed(choice.chosen, chosen) };
	};
	const conflicts = [...pinConflicts, ...choice.conflicts, ...arranged.conflicts];
	const whys = new Map([...review.wrong.map(({ row, why }) => [row.line, why] as const), ...arranged.displaced]);
	return {
		format: PLAN_FORMAT,
		version: PLAN_VERSION,
		...qualityOf(choice, arranged, conflicts),
		on,
		basis: hearing.basis,
		places,
		blocks: scanBlocks(
			profile,
			entries.map(({ bank, place, entry }) => ({ bank, place, kind: entry.scan })),
		),
		legs: legs.map(({ name, days }) => ({ name, days: round(days, 2), from: beginningOf(name, resolved.voyage) })),
		served: served({
			samples,
			legs,
			coverage: coverages.airtime,
			broadcasts: coverages.broadcasts,
			wants,
			before: review.standing.filter(({ mended }) => mended === "").flatMap(({ row }) => listingsOf(index.heard(row), row.transmit)),
			after,
			ships: {
				before: bestShips(
					review.standing.flatMap(({ row }) => shipBands(index.held(row.bank, row))),
					coverages,
				),
				after: bestShips(
					entries.flatMap(({ entry }) => (entry.candidate === null ? [] : shipBands([entry.candidate]))),
					coverages,
				),
			},
		}),
		use,
		watch: {
			...watchTable(resolved),
			off: profile.receivers === 1 ? watchOff({ directory, samples, legs, places: heard, use }) : null,
		},
		levels: levels === undefined ? [] : await Promise.all([levelOf(-levels.byDb, levels.weaker), levelOf(levels.byDb, levels.stronger)]),
		leftOut: [...leftOut, ...choice.leftOut, ...arranged.leftOut].map((one) => heldElsewhere(one, places) ?? one).toSorted(byListing),
		removed: removedRows(asFound, entries, whys),
		doubts: doubts(resolved, directory),
		conflicts,
		findings: check(plannedRows({ places })),
	};
}

/** What is held before anything is chosen, and what wrong rows of the list as found were meant to be. */
function heldAlready({ job }: ResolvedJob, layout: Layout, review: AsFoundReview, candidates: readonly Candidate[], index: CandidateIndex) {
	const idsAt = (bank: string, content: Content) =>
		index.held(bank, content).flatMap(({ id, scan }) => (layout.takes(bank, scan) ? [id] : []));
	const clears = job.options.clearUnplanned;
	const standing = review.standing.filter(({ row }) => layout.at(row.bank, row.place) === null);
	const standingIds = standing.flatMap(({ row }) => idsAt(row.bank, row));
	const staying = clears ? standing.filter(({ row }) => idsAt(row.bank, row).length > 0) : standing;
	const meant = clears ? new Map<WrongRow, Candidate>() : meantBy(review.wrong, candidates);
	const pinnedIds = layout.all().flatMap(({ bank, entry }) => idsAt(bank, entry.content));
	const present = new Set(clears ? pinnedIds : [...pinnedIds, ...standingIds, ...[...meant.values()].map(({ id }) => id)]);
	return {
		meant,
		ids: { present, standing: new Set(standingIds) },
		places: heldPlaces(layout, [...staying, ...displacedBy(layout, review.standing, clears)], meant, index),
	};
}

/** Places of the plan with what they hear and do, and what to use when. */
function tellPlaces(
	{ job, asFound }: ResolvedJob,
	directory: Directory,
	samples: ReturnType<typeof planSamples>,
	entries: readonly TaggedEntry[],
	index: CandidateIndex,
	{ airtime, reach, broadcasts, shipsNear: ships }: Coverages,
) {
	const legs = legsOf(samples);
	const heard = entries.map(({ bank, place, entry }) => ({
		bank,
		place,
		listings: listingsOf(index.heard(entry.content), entry.content.transmit),
	}));
	const services = placeServices({ samples, legs, places: heard, coverage: airtime });
	const places = entries.map((one, i): PlannedPlace => {
		const { listings } = heard[i]!;
		const day = placeDay({ directory, samples, legs, reach, ships }, listings, isForShips(one.entry) ? one.entry.bandMhz : null);
		return { ...plannedPlace(one, asFound), hears: listings.map(({ id }) => id).toSorted(), serves: services[i]!, day };
	});
	const wants: readonly Want[] = [...wantedIds(job.wants), "safety-text"];
	const usable = heard.map((one, i) => {
		const { want, bandMhz } = entries[i]!.entry;
		return { ...one, ships: want === "ship-calling" ? ships(bandMhz) : null };
	});
	return { legs, heard, places, wants, use: usePlan({ samples, legs, places: usable, wants, broadcasts, reach }) };
}

/** How good the choice is known to be, and the order of the places. */
function qualityOf(choice: Choice, arranged: Arranged, conflicts: readonly string[]): Pick<Plan, "status" | "gap" | "worth" | "layout"> {
	const isWhole = arranged.leftOut.length === 0; // else the layout holds less than was chosen
	const isKept = conflicts.length === 0;
	return {
		status: !isKept ? "infeasible" : isWhole ? choice.status : "feasible",
		gap: isKept && isWhole && choice.gap !== null ? Math.ceil(choice.gap * 1_000_000) / 1_000_000 : null,
		worth: Math.round(choice.worth * 1_000_000) / 1_000_000,
		layout: { status: arranged.status, gap: arranged.gap === null ? null : Math.ceil(arranged.gap * 1_000_000) / 1_000_000 },
	};
}

/** A chart is taken at a place for data, speech at one for speech, though the dial may be the same. */
function heardBeside(candidate: Candidate, index: CandidateIndex): readonly Listing[] {
	const isData = candidate.scan === "data";
	return listingsOf(
		index.heard(candidate.content).filter(({ scan }) => (scan === "data") === isData),
		candidate.content.transmit,
	);
}

/** Mean over the voyage of what reaches a ship near and far, by grades; all bands alike where nothing tells. */
function bandUse(bandMhz: number, { shipsNear, shipsFar }: Coverages): number {
	const near = shipsNear(bandMhz);
	const far = shipsFar(bandMhz);
	if (near === null || far === null) return 1;
	return near.reduce((sum, chance, i) => sum + (graded(chance) + graded(far[i]!)) / 2, 0) / near.length;
}

function shipBands(candidates: readonly Candidate[]): readonly number[] {
	return candidates.flatMap(({ want, bandMhz }) => (want === "ship-calling" ? [bandMhz] : []));
}

/** The best of some bands in each sample and hour, between ships near each other: bands are not independent. */
function bestShips(bandsMhz: readonly number[], { shipsNear }: Coverages): Float64Array | null {
	let best: Float64Array | null = null;
	for (const bandMhz of new Set(bandsMhz)) {
		const cells = shipsNear(bandMhz);
		if (cells !== null) best = best === null ? cells : best.map((chance, i) => Math.max(chance, cells[i]!));
	}
	return best;
}

/** UTC day on which a leg or stay of this name first begins. */
function beginningOf(name: string, voyage: ResolvedJob["voyage"]): IsoDate {
	const stage = stagesOf(voyage).find((one) => one.name === name);
	return dateOfMs(stage?.startMs ?? voyage.points[0]?.arriveMs ?? 0);
}

function isForShips({ want, candidate }: Entry): boolean {
	return (want === "ship-calling" || want === "guard") && candidate !== null;
}

/**
 * Nobody makes routine calls on a distress carrier, whoever listens there; and a coast station is called only where its answer and the call
 * both go out.
 * @param transmit what the place sends on; null: receive only
 */
function listingsOf(candidates: readonly Candidate[], transmit: Hz | null): readonly Listing[] {
	const heard = candidates
		.filter(({ want }) => want !== "guard")
		.flatMap(({ content, sources }) => sources.map(({ listing }) => ({ content, listing })));
	const counts = heard.filter(({ content, listing }) => {
		return listingWant(listing) !== "coast-calling" || (transmit !== null && content.transmit === transmit);
	});
	return [...new Set(counts.map(({ listing }) => listing))];
}

function wantedIds(wants: Readonly<Partial<Record<WantId, number>>>): readonly Want[] {
	return (Object.keys(wants) as WantId[]).filter((want) => (wants[want] ?? 0) > 0);
}

/** Its sources by how far they are heard, so that the best gives the place its name; ties by id. */
function bestHeardFirst(candidate: Candidate, coverage: Coverages["heard"]): Candidate {
	if (candidate.sources.length < 2) return candidate;
	const total = (listing: Listing) => coverage(listing)?.reduce((sum, cell) => sum + cell, 0) ?? 0;
	const heard = candidate.sources.map((source) => ({ source, total: total(source.listing) }));
	return { ...candidate, sources: heard.toSorted((a, b) => b.total - a.total).map(({ source }) => source) };
}

/** A listing whose own place is not needed, as another hears it. */
function heldElsewhere({ listing }: LeftOut, places: readonly PlannedPlace[]): LeftOut | null {
	const holder = places.find(({ hears }) => hears.includes(listing));
	return holder === undefined ? null : { listing, why: `needs no place of its own: ${holder.bank} ${holder.place} hears it` };
}

function byListing(a: LeftOut, b: LeftOut): number {
	return a.listing < b.listing ? -1 : a.listing > b.listing ? 1 : 0;
}
