import { type Directory, type Listing, publishedOf, type Station, scheduleKnown, scheduleOf, stationOf } from "@skipwright/directory";
import type { ResolvedJob } from "@skipwright/job";
import {
	type Channel,
	channels,
	dialFor,
	guards,
	guardsAt,
	modesThatReceive,
	msiFrequencies,
	type Published,
	roundToSteps,
	SERVICE_WORDS,
} from "@skipwright/rules";
import { canTune, finestStep } from "@skipwright/set";
import { formatKhz, type Hz } from "@skipwright/units";
import type { Candidate, LeftOut, Naming, ScanKind, Source, Want } from "./candidate.ts";
import { type Content, contentKey } from "./contentKey.ts";
import { listingWant } from "./listingWant.ts";
import { marineBand } from "./marineBand.ts";
import { callingTexts, guardTexts, listingTexts, ownTexts, safetyTexts, shipTexts } from "./tagTexts.ts";
import { type SendingRights, whyNotSend } from "./whyNotSend.ts";

/** Hz. A dial rounded to the set's steps may be off by this much before it counts as out of tune (contracts, `dial`). */
const LARGEST_RESIDUE_HZ = 100;

/**
 * Channels whose ship side is a distress carrier, kept for distress in the Regulations: routine calls go to the carrier given.
 * Source: RR 52.221A (from memory); 47 CFR 80.369. 421 and 606 may be called on.
 */
const ROUTINE_CALLS_ELSEWHERE: Readonly<Record<number, string>> = { 1221: "12359", 1621: "16537" };
/** kHz. Where routine simplex calls belong, so first among the ship carriers of their bands. Source: as above. */
export const SIMPLEX_CALLING_HZ: readonly number[] = [12_359_000, 16_537_000];
/** Hz. Ships should not use these where the fixed service has them (note to RR Appendix 17 C-1, Region 3). */
const SHUNNED_HZ: readonly number[] = [4_000_000, 4_003_000];

export interface Candidates {
	/** One for each content, by id. */
	readonly candidates: readonly Candidate[];
	readonly leftOut: readonly LeftOut[];
}

/**
 * Everything that a place of this set could hold for this job, whatever is wanted of it: guard carriers, safety text, channels for
 * calling, every listing that is not closed. Listings that need the same dial share one candidate, charts and text apart from speech.
 */
export function allCandidates({ job, profile }: ResolvedJob, directory: Directory): Candidates {
	const leftOut: LeftOut[] = [];
	const maker = new Maker(
		{ profile, shipLicence: job.vessel.licences.ship, amateurLicence: job.vessel.licences.amateur, region: job.options.region },
		(listing, why) => leftOut.push({ listing, why }),
	);
	const made = [
		...guardCandidates(maker),
		...safetyCandidates(maker),
		...channelCandidates(maker, new Set(job.pins.map(({ listing }) => listing ?? "")), takenByBroadcasts(directory)),
	];
	const banned = new Set(job.bans);
	for (const listing of directory.listings) {
		if (banned.has(listing.id) || banned.has(listing.stationId)) leftOut.push({ listing: listing.id, why: "banned by the job" });
		else if (listing.status === "closed") leftOut.push({ listing: listing.id, why: "closed" });
		// the watch is a table inside the set, not places
		else if (listing.service !== "dsc-watch") made.push(...listingCandidate(maker, listing, stationOf(directory, listing)));
	}
	const candidates = merge(made.filter(({ id, want }) => !banned.has(id) || isNeverTraded(id, want)));
	return { candidates: candidates.toSorted((a, b) => compareText(a.id, b.id)), leftOut };
}

/** Distress carriers, and the safety frequencies of the Regulations, are held whatever the job bans. */
export function isNeverTraded(id: string, want: Want): boolean {
	return want === "guard" || id.startsWith("safety/");
}

class Maker {
	readonly rights: SendingRights;
	readonly #leaveOut: (listing: string, why: string) => void;

	constructor(rights: SendingRights, leaveOut: (listing: string, why: string) => void) {
		this.rights = rights;
		this.#leaveOut = leaveOut;
	}

	leaveOut(id: string, why: string): readonly Candidate[] {
		this.#leaveOut(id, why);
		return [];
	}

	/** The dial to hear `published`; a sentence where the set cannot be put on it. */
	dial(published: Published): (Pick<Content, "receive" | "mode"> & { readonly notes: readonly string[] }) | string {
		const { profile } = this.rights;
		const dial = dialFor(published, profile.modes);
		if ("cannot" in dial) return dial.cannot;
		const { tunableHz, residueHz } = roundToSteps(dial.dialHz, finestStep(profile));
		if (Math.abs(residueHz) > LARGEST_RESIDUE_HZ || !canTune(profile, tunableHz, "receive")) {
			return `the dial ${formatKhz(dial.dialHz)} kHz ${dial.mode} is not within the set's range and steps`;
		}
		const notes = residueHz === 0 ? [] : [`the dial is ${Math.abs(residueHz)} Hz ${residueHz > 0 ? "below" : "above"} the exact figure`];
		return { receive: tunableHz, mode: dial.mode, notes };
	}

	/** Other modes of the set that receive it as well, with their dials. */
	alternatives(published: Published, { receive, transmit, mode }: Content): readonly Content[] {
		const { profile } = this.rights;
		return modesThatReceive(published.emission, published.sideband).right.flatMap((other) => {
			const dial = other === mode || transmit !== null ? null : dialFor(published, profile.modes, { mode: other });
			if (dial === null || "cannot" in dial) return [];
			const { tunableHz, residueHz } = roundToSteps(dial.dialHz, finestStep(profile));
			const isSame = tunableHz === receive && other === mode;
			return isSame || Math.abs(residueHz) > LARGEST_RESIDUE_HZ ? [] : [{ receive: tunableHz, transmit, mode: other }];
		});
	}

	/** What a place sends on, if it may, and else why it does not. */
	transmit(carrier: Hz, published: Omit<Published, "hz">): { readonly transmit: Hz | null; readonly notes: readonly string[] } {
		const dial = this.dial({ ...published, hz: carrier });
		if (typeof dial === "string") return { transmit: null, notes: [`receive only: ${dial}`] };
		const why = whyNotSend(dial.receive, dial.mode, this.rights);
		return why === null ? { transmit: dial.receive, notes: [] } : { transmit: null, notes: [`receive only: ${why}`] };
	}
}

const VOICE = { means: "carrier", emission: "J3E" } as const;

function guardCandidates(maker: Maker): readonly Candidate[] {
	return guards()
		.filter(({ required }) => required)
		.flatMap(({ hz, label }) => {
			const id = `guard/${formatKhz(hz)}`;
			const dial = maker.dial({ ...VOICE, hz });
			if (typeof dial === "string") return maker.leaveOut(id, dial);
			const transmit = canTune(maker.rights.profile, dial.receive, "transmit") ? dial.receive : null;
			const content = { receive: dial.receive, transmit, mode: dial.mode };
			return candidate({ id, want: "guard", scan: "speech", content, naming: { what: label, tags: guardTexts(hz) }, notes: dial.notes });
		});
}

function safetyCandidates(maker: Maker): readonly Candidate[] {
	return msiFrequencies().flatMap(({ hz, service, label }) => {
		const id = `safety/${formatKhz(hz)}`;
		const published = { hz, means: "assigned", emission: "F1B", service } as const;
		const dial = maker.dial(published);
		if (typeof dial === "string") return maker.leaveOut(id, dial);
		const content = { receive: dial.receive, transmit: null, mode: dial.mode };
		const naming = { what: `${label}, ${formatKhz(hz)} kHz`, tags: safetyTexts(hz, service) };
		const alternatives = maker.alternatives(published, content);
		return candidate({ id, want: "safety-text", scan: "data", content, alternatives, naming, notes: dial.notes });
	});
}

/** Appendix 17: carriers between ships, the pairs on which any coast station may be called, and whatever pairs the job pins by number. */
function channelCandidates(maker: Maker, pinned: ReadonlySet<string>, taken: ReadonlyMap<Hz, BroadcastUse>): readonly Candidate[] {
	const ships = channels().filter((channel) => isBetweenShips(channel));
	const bands = Map.groupBy(
		ships.toSorted((a, b) => byUse(a, b) || Number(taken.has(a.ship!)) - Number(taken.has(b.ship!)) || a.ship! - b.ship!), // between ships: they have a carrier
		({ bandMhz }) => bandMhz,
	);
	const shipCandidates = [...bands.values()].flatMap((band) =>
		band.flatMap((channel, index) => {
			const carrier = channel.ship;
			if (carrier === null) return [];
			if (taken.get(carrier) !== "continuous" || pinned.has(`ap17/${formatKhz(carrier)}`)) return shipCandidate(maker, carrier, index + 1);
			return maker.leaveOut(`ap17/${formatKhz(carrier)}`, "a broadcast is on it without a break: nobody can be called there");
		}),
	);
	const pairs = channels().filter(({ use, number }) => use === "duplex-calling" || (number !== null && pinned.has(`ap17/${number}`)));
	return [...shipCandidates, ...pairs.flatMap((channel) => pairCandidate(maker, channel))];
}

type BroadcastUse = "continuous" | "at times";

/** Carriers that broadcasts by voice use too. Ships leave those for last, and never call where one does not stop. */
function takenByBroadcasts(directory: Directory): ReadonlyMap<Hz, BroadcastUse> {
	const taken = new Map<Hz, BroadcastUse>();
	for (const listing of directory.listings) {
		if (listing.status === "closed" || !listing.receiveOnly || listing.emission !== "J3E") continue;
		if (scheduleKnown(scheduleOf(listing)) === "continuous") taken.set(listing.hz, "continuous");
		else if (!taken.has(listing.hz)) taken.set(listing.hz, "at times");
	}
	return taken;
}

function isBetweenShips({ use, ship }: Channel): boolean {
	if (ship === null || SHUNNED_HZ.includes(ship) || guardsAt(ship).length > 0) return false;
	return use === "simplex" || use === "ship-ship" || use === "ship-ship-cross-band";
}

/** Calling carriers first, then those of sub-section B, then C-1 and C-2, which other services share. */
function byUse(a: Channel, b: Channel): number {
	const order = (channel: Channel) => (SIMPLEX_CALLING_HZ.includes(channel.ship ?? 0) ? 0 : channel.section === "B" ? 1 : 2);
	return order(a) - order(b);
}

function shipCandidate(maker: Maker, carrier: Hz, rank: number): readonly Candidate[] {
	const id = `ap17/${formatKhz(carrier)}`;
	const dial = maker.dial({ ...VOICE, hz: carrier });
	if (typeof dial === "string") return maker.leaveOut(id, dial);
	const { transmit, notes } = maker.transmit(carrier, VOICE);
	const what = `ship to ship, ${formatKhz(carrier)} kHz${SIMPLEX_CALLING_HZ.includes(carrier) ? ", routine calls" : ""}`;
	const content = { receive: dial.receive, transmit, mode: dial.mode };
	return candidate({
		id,
		want: "ship-calling",
		scan: "speech",
		content,
		rank,
		naming: { what, tags: shipTexts(carrier) },
		notes: [...dial.notes, ...notes],
	});
}

function pairCandidate(maker: Maker, { number, ship, coast, use }: Channel): readonly Candidate[] {
	if (number === null || ship === null || coast === null) return [];
	const id = `ap17/${number}`;
	const elsewhere = ROUTINE_CALLS_ELSEWHERE[number];
	if (elsewhere !== undefined) return maker.leaveOut(id, routineCalls(ship, elsewhere));
	const dial = maker.dial({ ...VOICE, hz: coast });
	if (typeof dial === "string") return maker.leaveOut(id, dial);
	// calling on 421 and 606 is lawful though their ship sides are distress carriers, so only range and licence count
	const canSend = maker.rights.shipLicence && canTune(maker.rights.profile, ship, "transmit");
	const content = { receive: dial.receive, transmit: canSend ? ship : null, mode: dial.mode };
	const what = use === "duplex-calling" ? `calling coast stations, channel ${number}` : `coast stations, channel ${number}`;
	return candidate({ id, want: "coast-calling", scan: "speech", content, naming: { what, tags: callingTexts(number) }, notes: dial.notes });
}

function routineCalls(ship: Hz, elsewhere: string): string {
	return `its ship side ${formatKhz(ship)} is a distress carrier: routine calls belong on ${elsewhere} kHz (RR 52.221A, from memory)`;
}

function listingCandidate(maker: Maker, listing: Listing, station: Station): readonly Candidate[] {
	const published = publishedOf(listing);
	const heardAt = listing.receiveOnly || listing.coastTx === null ? published : { ...published, hz: listing.coastTx };
	const dial = maker.dial(heardAt);
	if (typeof dial === "string") return maker.leaveOut(listing.id, dial);
	const elsewhere = listing.receiveOnly ? undefined : ROUTINE_CALLS_ELSEWHERE[listing.channel ?? 0];
	if (elsewhere !== undefined && listing.shipTx !== null) return maker.leaveOut(listing.id, routineCalls(listing.shipTx, elsewhere));
	const isGuard = guardsAt(dial.receive).some(({ required }) => required);
	const sending = sendingSide(maker, listing, published, isGuard);
	const want = listingWant(listing);
	const content = { receive: dial.receive, transmit: sending.transmit, mode: dial.mode };
	return candidate({
		id: listing.id,
		want,
		scan: scanKind(listing, want),
		content,
		alternatives: sending.transmit === null ? maker.alternatives(heardAt, content) : [],
		sources: [{ listing, ...listingNaming(listing, station) }],
		notes: [...dial.notes, ...sending.notes],
	});
}

function listingNaming(listing: Listing, station: Station): Naming {
	if (listing.origin === "owner") return { what: station.name, tags: ownTexts(listing, station) };
	const name = station.callSign === "" ? station.name : `${station.name} (${station.callSign})`;
	const channel = listing.channel === null ? "" : `, channel ${listing.channel}`;
	return { what: `${name}, ${SERVICE_WORDS[listing.service]}${channel}`, tags: listingTexts(listing, station) };
}

function sendingSide(maker: Maker, listing: Listing, published: Published, isGuard: boolean) {
	if (listing.receiveOnly || listing.shipTx === null) return { transmit: null, notes: [] };
	// a station that works on a distress carrier is called there only in distress: the guard's own place serves it
	if (isGuard && canTune(maker.rights.profile, listing.shipTx, "transmit")) return { transmit: listing.shipTx, notes: [] };
	if (listing.channel === 421 || listing.channel === 606) {
		if (!canTune(maker.rights.profile, listing.shipTx, "transmit")) return { transmit: null, notes: [] };
		return maker.rights.shipLicence
			? { transmit: listing.shipTx, notes: [] }
			: { transmit: null, notes: ["receive only: no ship station licence is held"] };
	}
	return maker.transmit(listing.shipTx, published);
}

function scanKind({ emission, receiveOnly }: Listing, want: Want): ScanKind {
	if (emission !== "J3E" && emission !== "R3E" && emission !== "H3E" && emission !== "A3E" && emission !== "A1A") return "data";
	return want === "nets" || want === "coast-calling" ? "speech" : receiveOnly ? "timed" : "speech";
}

type Parts = Pick<Candidate, "id" | "want" | "scan" | "content" | "notes"> &
	Partial<Pick<Candidate, "alternatives" | "naming" | "sources" | "rank">>;

function candidate(parts: Parts): readonly Candidate[] {
	const bandMhz = marineBand(parts.content.receive);
	return [{ aliases: [], alternatives: [], naming: null, sources: [], rank: 1, ...parts, bandMhz }];
}

/** One candidate for each content. A guard carrier, then a net, safety text or a channel gives the place its name; else its listings do. */
function merge(made: readonly Candidate[]): readonly Candidate[] {
	const groups = Map.groupBy(made, ({ content, scan }) => `${contentKey(content)} ${scan === "data"}`);
	return [...groups.values()].map((group) => {
		const ordered = group.toSorted((a, b) => nameRank(a) - nameRank(b) || compareText(a.id, b.id));
		const first = ordered[0]!; // a group is never empty
		const sources = ordered.flatMap((one) => one.sources);
		const isOwn = first.want === "nets";
		return {
			...first,
			// only listened to, it is what it is tuned to for: a broadcast at set times, whoever else may talk there
			scan: first.want !== "guard" && first.content.transmit === null && group.some(({ scan }) => scan === "timed") ? "timed" : first.scan,
			naming: isOwn ? (first.sources[0] ?? null) : first.naming,
			sources: sources.toSorted((a: Source, b: Source) => compareText(a.listing.id, b.listing.id)),
			aliases: ordered.filter((one) => one.sources.length === 0).map(({ id }) => id),
		};
	});
}

function nameRank({ want, sources }: Candidate): number {
	if (want === "guard") return 0;
	if (want === "nets") return 1;
	return sources.length === 0 ? 2 : 3;
}

function compareText(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0;
}
