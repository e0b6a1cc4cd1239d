import type { HeardKind } from "@skipwright/modem";
import type { Broadcast } from "./broadcastsOf.ts";
import type { Expectation } from "./expectation.ts";
import { CLOSED_BELOW } from "./fitsHere.ts";

/** A place of the set with what it should sound like. */
export interface PlaceToProve {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly expectations: readonly Expectation[];
}

export interface ListeningQuestion {
	readonly places: readonly PlaceToProve[];
	/** What each listing sends, from `fromMs` to two weeks after the end. */
	readonly broadcasts: (listing: string) => readonly Broadcast[];
	/** Chance from 0 to 1 that the listing is copied at the berth at a moment; null: nothing predicts it. */
	readonly reach: (listing: string, atMs: number) => number | null;
	/** Milliseconds since 1970-01-01T00:00Z. */
	readonly fromMs: number;
	readonly hours: number;
	/** Degrees, east positive: which hours are night for people. */
	readonly lonDeg: number;
}

/** An entry of the agenda: one place, one time. */
export interface Listening {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly expectation: Expectation;
	readonly fromMs: number;
	readonly toMs: number;
	readonly chance: number;
	readonly product: string;
	readonly doubt: string;
	/** One of the few that together bring each kind and each band: they prove the set. */
	readonly isKey: boolean;
}

/** A place that the agenda does not hold. */
export interface NotListened {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly why:
		| "no room"
		| "poor"
		| "later"
		| "silent"
		| "not heard here"
		| "times not known"
		| "reach not known"
		| "by a call"
		| "no listing";
	readonly sentence: string;
	/** When its best or next sending begins; null where there is none. */
	readonly atMs: number | null;
}

export interface ListeningPlan {
	readonly agenda: readonly Listening[];
	readonly rest: readonly NotListened[];
}

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
/** Minutes to listen, so that a whole item is likely to be in it. NAVTEX: one slot; a chart: its first lines; the others: own choice. */
const LISTEN_MIN: Readonly<Record<HeardKind, number>> = { dsc: 10, text: 10, teletype: 10, chart: 12, tone: 3, voice: 5 };
/** Minutes between two entries: to key the place, note what was heard. Own choice. */
const CHANGE_MIN = 3;
/** Chance from which an hour is worth an appointment: the steps of reach call it fair. */
const WORTH_FROM = 0.45;
/** Minutes from one possible start to the next within a long sending. */
const STEP_MIN = 30;
/** Hours by the sun in which nobody is asked to listen but for what is otherwise not heard, and what that costs as a chance. Own choice. */
const NIGHT = { fromHour: 22, toHour: 6, costs: 0.25 } as const;

/** Chance that a measured signal is worth over one that only the ear tells. Own choice. */
const TELLS_TUNING = 0.3;

interface Chance extends Omit<Listening, "isKey"> {
	readonly index: number;
	readonly isNight: boolean;
	readonly score: number;
}

interface Taken {
	readonly chance: Chance;
	readonly isKey: boolean;
}

/**
 * When to listen for what, as one person with one receiver can do it: never two at once. First the surest entries that together bring
 * each kind of signal and each band, then by day as many other places as there is room for; what then finds no room may move others
 * to another of their times.
 */
export function whenToListen(question: ListeningQuestion): ListeningPlan {
	const { places } = question;
	const chances = places.map((place, index) => chancesOf(place, index, question));
	const news = new Set<string>();
	const isNew = (chance: Chance) => newsOf(chance).some((one) => !news.has(one));
	let taken: readonly Taken[] = [];
	const isDone = (index: number) => taken.some(({ chance }) => chance.index === index);
	const take = (chance: Chance, others: readonly Taken[] = taken) => {
		taken = [...others, { chance, isKey: isNew(chance) }];
		for (const one of newsOf(chance)) news.add(one);
	};
	for (;;) {
		const open = chances.flat().filter((chance) => !isDone(chance.index) && isNew(chance) && isFree(chance, taken));
		const best = open.toSorted((a, b) => fresh(b, news) - fresh(a, news) || order(a, b))[0];
		if (best === undefined) break;
		take(best);
	}
	const scarceFirst = [...chances.keys()].sort((a, b) => chances[a]!.length - chances[b]!.length || a - b);
	for (const index of scarceFirst) {
		const best = chances[index]!.filter((chance) => !isDone(index) && !chance.isNight && isFree(chance, taken)).toSorted(order)[0];
		if (best !== undefined) take(best);
	}
	for (const index of scarceFirst.filter((one) => !isDone(one))) {
		for (const chance of chances[index]!.filter((one) => !one.isNight || isNew(one)).toSorted(order)) {
			const others = madeRoom(chance, taken, chances);
			if (others === null) continue;
			take(chance, others);
			break;
		}
	}
	return {
		agenda: taken.map(listeningOf).sort((a, b) => a.fromMs - b.fromMs),
		rest: places.flatMap((place, index) => (isDone(index) ? [] : [notListened(place, chances[index]!, question)])),
	};
}

function listeningOf({ chance: { index: _, isNight: __, score: ___, ...rest }, isKey }: Taken): Listening {
	return { ...rest, isKey };
}

/** With time between two entries to key the next place. */
function isFree({ fromMs, toMs }: Chance, taken: readonly Taken[]): boolean {
	const change = CHANGE_MIN * MINUTE_MS;
	return taken.every(({ chance: other }) => toMs + change <= other.fromMs || fromMs >= other.toMs + change);
}

/** The entries with those that stand in the way moved to another of their times; null where one has none. A key stays what it is a key for, and nobody is got up for another. */
function madeRoom(wanted: Chance, taken: readonly Taken[], chances: readonly (readonly Chance[])[]): readonly Taken[] | null {
	const inTheWay = taken.filter((one) => !isFree(wanted, [one]));
	let others = taken.filter((one) => !inTheWay.includes(one));
	for (const { chance, isKey } of inTheWay) {
		const own = chances[chance.index]!.filter(
			(one) => (!isKey || String(newsOf(one)) === String(newsOf(chance))) && (!one.isNight || chance.isNight),
		);
		const free = own.filter((one) => isFree(one, [...others, { chance: wanted, isKey: false }])).toSorted(order)[0];
		if (free === undefined) return null;
		others = [...others, { chance: free, isKey }];
	}
	return others;
}

/** Whole megahertz of the band that a listing lies in. */
export function bandOf({ hz }: Pick<Expectation, "hz">): number {
	return Math.floor(hz / 1_000_000);
}

/** Best proof first, then earliest; of equals the first place. */
function order(a: Chance, b: Chance): number {
	return proving(b) - proving(a) || a.fromMs - b.fromMs || a.index - b.index;
}

/** What it shows for the first time: a kind and a band; nothing where no receiver can tell that it was heard. */
function newsOf({ expectation }: Chance): readonly string[] {
	if (expectation.kind === "tone" && expectation.tonesHz.length === 0) return [];
	return [expectation.kind, `${bandOf(expectation)} MHz`];
}

/** How much it is worth as a proof: what tells the tuning goes before what only the ear tells. */
function proving({ score, expectation }: Chance): number {
	return score + (expectation.tellsTuning ? TELLS_TUNING : 0);
}

function fresh(chance: Chance, news: ReadonlySet<string>): number {
	return newsOf(chance).filter((one) => !news.has(one)).length;
}

/** Every time within the hours at which the place is worth listening to. */
function chancesOf(place: PlaceToProve, index: number, { broadcasts, reach, fromMs, hours, lonDeg }: ListeningQuestion): readonly Chance[] {
	const endMs = fromMs + hours * HOUR_MS;
	const { bank, place: number, tag, expectations } = place;
	return expectations
		.filter(({ isWatch }) => !isWatch)
		.flatMap((expectation) =>
			windowsOf(broadcasts(expectation.listing), expectation, fromMs, endMs).flatMap((window): Chance[] => {
				const chance = reach(expectation.listing, (window.fromMs + window.toMs) / 2);
				if (chance === null || chance < WORTH_FROM) return [];
				const isNight = isNightAt(window.fromMs, lonDeg);
				return [{ bank, place: number, tag, expectation, ...window, chance, index, isNight, score: chance - (isNight ? NIGHT.costs : 0) }];
			}),
		);
}

/** Times to listen within the sendings: from the start of each, and every half hour of a long one. */
function windowsOf(broadcasts: readonly Broadcast[], { kind }: Expectation, fromMs: number, endMs: number): readonly Broadcast[] {
	const needed = LISTEN_MIN[kind] * MINUTE_MS;
	return broadcasts.flatMap((one) => {
		const [first, last] = [Math.max(one.fromMs, fromMs), Math.min(one.toMs, endMs)];
		const windows: Broadcast[] = [];
		for (let start = first; start < last; start += STEP_MIN * MINUTE_MS) {
			const end = Math.min(start + needed, last);
			const isWhole = end - start >= Math.min(needed, one.toMs - one.fromMs);
			if (isWhole) windows.push({ ...one, fromMs: start, toMs: end });
		}
		return windows;
	});
}

/** By the sun at the berth. */
function isNightAt(ms: number, lonDeg: number): boolean {
	const hour = ms / HOUR_MS + lonDeg / 15;
	const ofDay = hour - 24 * Math.floor(hour / 24);
	return ofDay >= NIGHT.fromHour || ofDay < NIGHT.toHour;
}

function notListened(place: PlaceToProve, chances: readonly Chance[], question: ListeningQuestion): NotListened {
	const { bank, place: number, tag } = place;
	const rest = (why: NotListened["why"], sentence: string, atMs: number | null = null): NotListened => ({
		bank,
		place: number,
		tag,
		why,
		sentence,
		atMs,
	});
	const { expectations } = place;
	const sending = expectations.filter(({ isWatch }) => !isWatch);
	if (expectations.length === 0)
		return rest(
			"no listing",
			"Nothing in the directory is sent there at a stated time: the read-back is its check, and a voice report where one may be made.",
		);
	if (sending.length === 0) return rest("by a call", "The station sends there only when called: it is proved by a call, not by listening.");
	const best = chances.toSorted(order)[0];
	if (best !== undefined)
		return rest("no room", "It can be heard, but the receiver is busy or it is night: take it in place of another.", best.fromMs);
	const endMs = question.fromMs + question.hours * HOUR_MS;
	const tries = sending.flatMap((expectation) =>
		windowsOf(question.broadcasts(expectation.listing), expectation, question.fromMs, endMs + 14 * 24 * HOUR_MS).map(
			({ fromMs, toMs }) => ({
				fromMs,
				chance: question.reach(expectation.listing, (fromMs + toMs) / 2),
			}),
		),
	);
	if (tries.length === 0) {
		const isUnknown = sending.some(({ times }) => times.known === "cannot-tell");
		if (isUnknown) return rest("times not known", "Its times of sending are not published: listen when the band is open.");
		return rest("silent", "It sends nothing within two weeks: closed, or out of season.");
	}
	const told = tries.flatMap(({ fromMs, chance }) => (chance === null ? [] : [{ fromMs, chance }]));
	if (told.length === 0)
		return rest(
			"reach not known",
			"Nothing predicts whether it is heard here: the place of the station is not known. Try it.",
			tries[0]!.fromMs,
		);
	const worth = told.filter(({ chance }) => chance >= WORTH_FROM).toSorted((a, b) => a.fromMs - b.fromMs)[0];
	if (worth !== undefined) return rest("later", "Not before the time shown at this berth.", worth.fromMs);
	const surest = told.toSorted((a, b) => b.chance - a.chance || a.fromMs - b.fromMs)[0]!;
	const percent = Math.round(100 * surest.chance);
	if (surest.chance >= CLOSED_BELOW)
		return rest("poor", `Poor at this berth: ${percent} % at best. Try it, and let silence show nothing.`, surest.fromMs);
	return rest("not heard here", `Cannot be heard here (${percent} % at best): prove it under way.`);
}
