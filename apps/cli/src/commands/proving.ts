import { createHash } from "node:crypto";
import { basename } from "node:path";
import { type Directory, type Listing, listingById, stationOf } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, utcTime } from "@skipwright/job";
import { HEARD_KINDS } from "@skipwright/modem";
import { type Plan, type PlannedPlace, readPlan } from "@skipwright/planner";
import {
	broadcastsOf,
	dscTests,
	type Evidence,
	type EvidenceInput,
	type Expectation,
	evidence,
	expectationOf,
	expectationsOf,
	isOnAir,
	LATE_MIN,
	mayKeep,
	namedAs,
	type PlaceStation,
	placeVerdict,
	summaryOf,
	type Verdict,
	whenToListen,
} from "@skipwright/proving";
import { finestStep, isReceiver } from "@skipwright/set";
import { sunspots } from "@skipwright/sky";
import { distanceKm, NAUTICAL_MILE_KM } from "@skipwright/sphere";
import { dateOfMs, dayStartMs, formatKhz, type Position, parseKhz, parsePosition, position } from "@skipwright/units";
import { type BerthReach, berthReach } from "../berthReach.ts";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { given } from "../given.ts";
import { hearFile } from "../hearFile.ts";
import { jobGiven, plannerFor } from "../planJob.ts";
import { provingText, verdictText } from "../provingText.ts";
import { readText } from "../readText.ts";
import { directoryGiven } from "../sources.ts";
import { sunspotsGiven } from "../sunspotsGiven.ts";

export interface ProvingFlags {
	readonly at?: string;
	readonly from?: string;
	readonly hours?: string;
	readonly zone?: string;
	readonly plan?: string;
	readonly sunspots?: string;
	readonly place?: string;
	readonly listing?: string;
	readonly heard?: string;
	readonly time?: string;
	readonly out?: string;
	readonly shop?: string;
	readonly json?: boolean;
}

/** Before the kHz of a frequency of selective calls. */
const DSC = "dsc/";
const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;
/** No clock is further from UTC. */
const MOST_ZONE_MIN = 14 * 60;
/** How far ahead a place is looked for that sends nothing within the hours. */
const AHEAD_MS = 14 * DAY_MS;

/** `proving JOB.json --at LAT,LON`: when to listen for what; with `--heard FILE` the verdict on a place, and evidence of it. */
export function provingCommand(context: Context, file: string, flags: ProvingFlags): Promise<Exit> | Exit {
	const resolved = jobGiven(context, file);
	const directory = directoryFor(resolved, directoryGiven(context, flags));
	const at = berthGiven(resolved, flags.at);
	if (flags.heard !== undefined || flags.place !== undefined || flags.listing !== undefined)
		return heardAt(context, resolved, directory, at, flags);
	for (const flag of ["time", "out"] as const) {
		if (flags[flag] !== undefined) throw new UsageError(`--${flag} goes with --heard and --place`);
	}
	return agenda(context, resolved, directory, at, flags);
}

async function agenda(context: Context, resolved: ResolvedJob, directory: Directory, at: Position, flags: ProvingFlags): Promise<Exit> {
	const { job, profile } = resolved;
	const fromMs = flags.from === undefined ? dayStartMs(context.today()) : given("--from", flags.from, startTime);
	const hours = hoursGiven(flags.hours);
	const zoneMin = flags.zone === undefined ? null : given("--zone", flags.zone, zoneGiven);
	const plan = await planGiven(context, resolved, flags, fromMs);
	const expected = plan.places.map((place) => ({ place, expectations: expectedAt(place, directory, resolved) }));
	const watches = watchesOf(directory);
	const listed = expected.flatMap(({ expectations }) => expectations.map(({ listing }) => listingById(directory, listing)!));
	const { reach, basis } = reachAt(resolved, directory, [...new Set([...listed, ...watches])], at, fromMs, flags.sunspots);
	const listening = whenToListen({
		places: expected.map(({ place: { bank, place, tag }, expectations }) => ({ bank, place, tag, expectations })),
		broadcasts: (id) => broadcastsOf(directory, listingById(directory, id)!, fromMs, fromMs + hours * HOUR_MS + AHEAD_MS),
		reach: reach.at,
		fromMs,
		hours,
		lonDeg: at.lonDeg,
	});
	const tests = dscTests({
		watches: watches.flatMap((listing) => {
			const station = directory.stations.find(({ id }) => id === listing.stationId);
			return station === undefined ? [] : [{ listing, station }];
		}),
		chances: reach.hours,
		shipLicence: job.vessel.licences.ship,
		operator: job.vessel.licences.operator,
		ownMmsi: job.vessel.mmsi,
		canSend: !isReceiver(profile),
	});
	const answer = { title: job.title, position: at, fromMs, hours, zoneMin, listening, tests, basis, places: plan.places.length };
	if (flags.json === true) context.out(`${JSON.stringify(agendaJson(answer), null, "\t")}\n`);
	else context.out(provingText(answer));
	return EXIT.ok;
}

function agendaJson({ position: at, fromMs, hours, zoneMin, listening, tests, basis }: Parameters<typeof provingText>[0]) {
	const iso = (ms: number) => new Date(ms).toISOString();
	return {
		at: [at.latDeg, at.lonDeg],
		from: iso(fromMs),
		hours,
		zoneMin,
		basis,
		agenda: listening.agenda.map(({ bank, place, tag, expectation, fromMs: start, toMs, chance, product, doubt, isKey }) => ({
			bank,
			place,
			tag,
			from: iso(start),
			to: iso(toMs),
			listing: expectation.listing,
			what: expectation.what,
			kind: expectation.kind,
			dialHz: expectation.dialHz,
			mode: expectation.mode,
			audioHz: expectation.audioHz,
			tonesHz: expectation.tonesHz,
			chance,
			product,
			doubt,
			isKey,
		})),
		rest: listening.rest.map(({ atMs, ...rest }) => ({ ...rest, from: atMs === null ? null : iso(atMs) })),
		dscTests: tests,
	};
}

function heardAt(context: Context, resolved: ResolvedJob, directory: Directory, at: Position, flags: ProvingFlags): Promise<Exit> | Exit {
	const { heard } = flags;
	const { job, profile } = resolved;
	if (heard === undefined || (flags.place === undefined) === (flags.listing === undefined)) {
		throw new UsageError('--heard FILE.wav and --place "BANK NUMBER" go together, or --place dsc/KHZ, or --listing ID');
	}
	const recordedMs = flags.time === undefined ? null : given("--time", flags.time, momentGiven);
	if (flags.out !== undefined && recordedMs === null) throw new UsageError("-o needs --time: evidence tells when it was recorded");
	const { place, expectations } = tunedTo(context, resolved, directory, flags);
	const { items, rateHz, seconds: lengthS } = hearFile(context, heard, { kinds: HEARD_KINDS, channel: "mean" });
	const stations = stationsAt({ resolved, directory, at, expectations, recordedMs, lengthS, spots: flags.sunspots });
	const { expectation, verdict: found } = placeVerdict(stations, items, {
		ownMmsi: job.vessel.mmsi,
		stepHz: finestStep(profile),
		dialHz: place.receiveHz,
	})!; // there are expectations
	const audio = { file: basename(heard), sha256: hashOf(context, heard), rateHz, seconds: lengthS };
	const record =
		recordedMs === null
			? null
			: evidence({ place, expectation, verdict: found, items, ownMmsi: job.vessel.mmsi, recordedMs, position: at, audio });
	return tell(context, flags, { place, expectation, found, record, ownMmsi: job.vessel.mmsi });
}

interface Tuned {
	readonly place: EvidenceInput["place"];
	/** One at least. */
	readonly expectations: readonly Expectation[];
}

/** A place of the plan, or what was dialled by hand: a frequency of selective calls, a listing. */
function tunedTo(context: Context, resolved: ResolvedJob, directory: Directory, { place: asked, listing, plan }: ProvingFlags): Tuned {
	if (listing !== undefined) return dialled(resolved, directory, [listingNamed(directory, listing)]);
	const place = asked!; // or a listing
	if (place.startsWith(DSC)) {
		const watchedHz = given("--place", place, (text) => parseKhz(text.slice(DSC.length)));
		const watches = watchesOf(directory).filter(({ hz }) => hz === watchedHz);
		if (watches.length === 0)
			throw new UsageError(`cannot take --place ${place}: no coast station is listed to watch ${formatKhz(watchedHz)} kHz`);
		return dialled(resolved, directory, watches);
	}
	if (plan === undefined) throw new UsageError("--heard needs --plan plan.json: what the set was loaded with");
	const planned = placeNamed(readPlan(plan, readText(context, plan)), place);
	const expectations = expectedAt(planned, directory, resolved);
	if (expectations.length === 0) throw new UsageError(`nothing in the directory says what ${place} should sound like (${planned.what})`);
	return { place: planned, expectations };
}

/** The set as it should stand for listings of one frequency. */
function dialled({ profile }: ResolvedJob, directory: Directory, listings: readonly Listing[]): Tuned {
	const expectations = listings.map((listing) => {
		const one = expectationOf(listing, directory, profile);
		if ("cannot" in one) throw new UsageError(one.cannot);
		return one;
	});
	const { dialHz, mode } = expectations[0]!;
	return { place: { bank: "dialled", place: null, tag: `${formatKhz(dialHz)} kHz ${mode}`, receiveHz: dialHz, mode }, expectations };
}

function watchesOf({ listings }: Directory): readonly Listing[] {
	return listings.filter(({ service, status }) => service === "dsc-watch" && status !== "closed");
}

function listingNamed(directory: Directory, id: string): Listing {
	const found = listingById(directory, id);
	if (found !== null) return found;
	throw new UsageError(`cannot take --listing ${id}: the directory has no such listing`);
}

function hashOf(context: Context, file: string): string {
	const hash = createHash("sha256");
	for (const part of context.readParts(file)) hash.update(part);
	return hash.digest("hex");
}

interface Judged {
	readonly place: Tuned["place"];
	readonly expectation: Expectation;
	readonly found: Verdict;
	/** null where the time of recording was not given. */
	readonly record: Evidence | { readonly refused: string } | null;
	readonly ownMmsi: string | null;
}

/** Exit code 1 when the place is off tune or not proved, or evidence was asked for and may not be kept; 0 when nothing can be told. */
function tell(context: Context, { out, json }: ProvingFlags, { place, expectation, found, record, ownMmsi }: Judged): Exit {
	const refused = record !== null && "refused" in record ? record.refused : null;
	const written = out !== undefined && record !== null && refused === null;
	if (written) context.writeFile(out, `${JSON.stringify(record, null, "\t")}\n`);
	const about = namedAs(expectation, found);
	const { item, ...rest } = found;
	const isShown = item !== null && mayKeep(expectation, item, ownMmsi).may;
	const heard =
		item === null
			? null
			: { kind: item.kind, startS: item.startS, endS: item.endS, snrDb: item.snrDb, summary: isShown ? summaryOf(item) : null };
	if (json === true) {
		const { bank, place: number, tag } = place;
		const answer = {
			place: { bank, place: number, tag },
			listing: about.listing,
			...rest,
			heard,
			evidence: written ? out : null,
			refused,
		};
		context.out(`${JSON.stringify(answer, null, "\t")}\n`);
	} else {
		context.out(
			verdictText(`${[place.bank, place.place, place.tag].filter((word) => word !== null && word !== "").join(" ")}, ${about.what}`, found),
		);
		if (heard?.summary != null) context.out(`  heard: ${heard.summary}\n`);
		if (written) context.out(`  evidence: ${out}\n`);
		if (out !== undefined && refused !== null) context.out(`  no evidence written: ${refused}\n`);
	}
	const isFault =
		found.result === "off tune" || found.result === "not proved" || (found.result !== "cannot tell" && out !== undefined && !written);
	return isFault ? EXIT.found : EXIT.ok;
}

interface Recorded {
	readonly resolved: ResolvedJob;
	readonly directory: Directory;
	readonly at: Position;
	readonly expectations: readonly Expectation[];
	/** null: nobody knows when. */
	readonly recordedMs: number | null;
	readonly lengthS: number;
	readonly spots: string | undefined;
}

/** What was predicted of each station of a place while it was recorded. */
function stationsAt({ resolved, directory, at, expectations, recordedMs, lengthS, spots }: Recorded): readonly PlaceStation[] {
	if (recordedMs === null) return expectations.map((expectation) => ({ expectation, predicted: { chance: null, isDue: null } }));
	const endMs = recordedMs + 1_000 * lengthS;
	const listings = expectations.map(({ listing }) => listingById(directory, listing)!);
	const { reach } = reachAt(resolved, directory, listings, at, recordedMs, spots);
	return expectations.map((expectation, i) => {
		const listing = listings[i]!;
		const from = stationOf(directory, listing).position;
		const isDue = (lateMs: number) =>
			isOnAir(broadcastsOf(directory, listing, recordedMs - lateMs, endMs + lateMs), expectation.times.known);
		return {
			expectation,
			predicted: {
				chance: reach.at(expectation.listing, (recordedMs + endMs) / 2),
				isDue: isDue(0),
				isNearDue: isDue(LATE_MIN * MINUTE_MS),
				distanceNm: from === null ? null : distanceKm(from, at) / NAUTICAL_MILE_KM,
			},
		};
	});
}

function reachAt(
	{ job }: ResolvedJob,
	directory: Directory,
	listings: readonly Listing[],
	at: Position,
	atMs: number,
	givenSpots: string | undefined,
): { readonly reach: BerthReach; readonly basis: string } {
	const month = dateOfMs(atMs).slice(0, 7);
	const spots = sunspots(month, givenSpots === undefined ? undefined : sunspotsGiven(givenSpots));
	const basis = `predicted reach for ${month}, sunspot number ${Math.round(spots.r12Old)} (old scale): monthly medians, not promises`;
	return { reach: berthReach(job, directory, listings, { position: at, month, spots }), basis };
}

function expectedAt(place: PlannedPlace, directory: Directory, { profile }: ResolvedJob): readonly Expectation[] {
	return expectationsOf(place, directory, profile, (id) => listingById(directory, id));
}

function planGiven(
	context: Context,
	resolved: ResolvedJob,
	{ plan, sunspots: spots, shop }: ProvingFlags,
	fromMs: number,
): Plan | Promise<Plan> {
	if (plan !== undefined) return readPlan(plan, readText(context, plan));
	context.err(`planning ${resolved.job.title} ...\n`);
	const planner = plannerFor(context, directoryGiven(context, shop === undefined ? {} : { shop }), dateOfMs(fromMs));
	return planner(resolved, { timeLimitS: 10, ...(spots === undefined ? {} : { sunspots: sunspotsGiven(spots) }) });
}

function placeNamed({ places }: Plan, asked: string): PlannedPlace {
	const [, bank, number] = /^(\S+)\s+(\d+)$/.exec(asked.trim()) ?? [];
	const found = places.find((one) => one.bank === bank && one.place === Number(number));
	if (found !== undefined) return found;
	throw new UsageError(
		`cannot take --place ${asked}: expected bank and number of a place that the plan holds, as "${places[0]?.bank ?? "data"} 12"`,
	);
}

function berthGiven({ job }: ResolvedJob, text: string | undefined): Position {
	if (text !== undefined) return given("--at", text, parsePosition);
	if (job.options.berth !== null) return position(...job.options.berth);
	throw new UsageError("--at LAT,LON is needed: the job names no berth");
}

/** A day counts from its start. */
function startTime(text: string): number {
	return /T/.test(text) ? utcTime(text) : dayStartMs(dateOfMs(utcTime(text)));
}

function momentGiven(text: string): number {
	if (!/T/.test(text)) throw new SyntaxError("expected a time as YYYY-MM-DDThh:mmZ");
	return utcTime(text);
}

/** Minutes ahead of UTC. */
function zoneGiven(text: string): number {
	const [, sign, hours, minutes] = /^([+-])(\d{2}):([0-5]\d)$/.exec(text.trim()) ?? [];
	const min = 60 * Number(hours) + Number(minutes);
	if (sign === undefined || min > MOST_ZONE_MIN) throw new SyntaxError("expected hours and minutes ahead of UTC, as +02:00 or -03:30");
	return sign === "-" ? -min : min;
}

function hoursGiven(text: string | undefined): number {
	if (text === undefined) return 48;
	const hours = Number(text);
	if (text.trim() !== "" && hours >= 1 && hours <= 168) return hours;
	throw new UsageError(`cannot take --hours ${text}: expected 1 to 168`);
}
