import { WANT_IDS, type WantId } from "@skipwright/rules";
import type { ResolvedJob } from "./resolveJob.ts";
import type { Job } from "./schema.ts";
import { utcTime } from "./utcTime.ts";
import type { Voyage } from "./voyage.ts";

/** What is tried instead: a job with a change or more made to it, and the sunspot number where one is given. */
export interface ChangedJob {
	readonly resolved: ResolvedJob;
	/** Smoothed, old scale; null: as forecast. */
	readonly sunspots: number | null;
}

/** The changes that can be tried, as they are written. */
export const CHANGES_HELP =
	"weather-charts=9 (or another want), sunspots=20, start=2027-03-01, stay:Horta=14 (days), skip:Ascension, pin:voice 12=ap17/401, unpin:voice 12, ban:ID, unban:ID, reserve:voice=20, noise=city, leastGainPercent=1, disturbance=0";

const MS_PER_DAY = 86_400_000;

/**
 * A job with changes made, written as `CHANGES_HELP` shows, several joined by commas.
 * @throws RangeError for a change that is none, or that the job cannot take
 */
export function changeJob(resolved: ResolvedJob, text: string): ChangedJob {
	return text
		.split(",")
		.map((change) => change.trim())
		.reduce<ChangedJob>((before, change) => changed(before, change), { resolved, sunspots: null });
}

function changed({ resolved, sunspots }: ChangedJob, change: string): ChangedJob {
	const [, verb = "", subject = "", value = ""] = /^([a-zA-Z-]+)(?::([^=]*))?(?:=(.*))?$/.exec(change) ?? [];
	const { job, voyage } = resolved;
	const withJob = (next: Partial<Job>): ChangedJob => ({ resolved: { ...resolved, job: { ...job, ...next } }, sunspots });
	const withVoyage = (next: Voyage): ChangedJob => ({ resolved: { ...resolved, voyage: next }, sunspots });
	const withOptions = (next: Partial<Job["options"]>) => withJob({ options: { ...job.options, ...next } });
	const number = (most: number) => numberGiven(change, value, most);
	if (isWant(verb)) return withJob({ wants: { ...job.wants, [verb]: number(100) } });
	switch (verb) {
		case "sunspots":
			return { resolved, sunspots: number(300) };
		case "start":
			return withVoyage(startingAt(voyage, change, value));
		case "stay":
			return withVoyage(staying(voyage, change, subject, number(3_650)));
		case "skip":
			return withVoyage(skipping(voyage, change, subject));
		case "pin": {
			const at = placeGiven(change, subject);
			if (value === "") throw bad(change, "an id after =, as pin:voice 12=ap17/401");
			return withJob({ pins: [...job.pins.filter((pin) => !isAt(pin, at)), { ...at, listing: value }] });
		}
		case "unpin": {
			const at = placeGiven(change, subject);
			if (!job.pins.some((pin) => isAt(pin, at))) throw bad(change, "a place that the job pins");
			return withJob({ pins: job.pins.filter((pin) => !isAt(pin, at)) });
		}
		case "ban":
			return withJob({ bans: [...job.bans, named(change, subject)] });
		case "unban":
			return withJob({ bans: job.bans.filter((id) => id !== named(change, subject)) });
		case "reserve":
			return withOptions({
				reservePlaces: { ...job.options.reservePlaces, [bankGiven(resolved, change, subject)]: Math.round(number(10_000)) },
			});
		case "leastGainPercent":
			return withOptions({ leastGainPercent: number(100) });
		case "disturbance":
			return withOptions({ disturbance: number(1_000) });
		case "noise":
			if (value === "city" || value === "residential" || value === "rural" || value === "quiet-rural") return withJob({ noise: value });
			throw bad(change, "city, residential, rural or quiet-rural");
		default:
			throw bad(change, `one of ${CHANGES_HELP}`);
	}
}

function isWant(word: string): word is WantId {
	return (WANT_IDS as readonly string[]).includes(word);
}

function bad(change: string, expected: string): RangeError {
	return new RangeError(`cannot try ${JSON.stringify(change)}: expected ${expected}`);
}

function numberGiven(change: string, value: string, most: number): number {
	const number = Number(value);
	if (value.trim() !== "" && number >= 0 && number <= most) return number;
	throw bad(change, `a number from 0 to ${most} after =`);
}

function named(change: string, subject: string): string {
	if (subject.trim() === "") throw bad(change, "an id after the colon");
	return subject.trim();
}

function placeGiven(change: string, subject: string): { readonly bank: string; readonly place: number } {
	const [, bank = "", place = ""] = /^\s*(.+?)[\s/]+(\d+)\s*$/.exec(subject) ?? [];
	if (bank === "") throw bad(change, "a bank and a place after the colon, as pin:voice 12=ap17/401");
	return { bank, place: Number(place) };
}

function isAt(pin: { readonly bank: string; readonly place: number }, at: { readonly bank: string; readonly place: number }): boolean {
	return pin.bank === at.bank && pin.place === at.place;
}

function bankGiven({ profile }: ResolvedJob, change: string, subject: string): string {
	const bank = profile.banks.find(({ id }) => id === subject.trim());
	if (bank === undefined) throw bad(change, `a bank of the set: ${profile.banks.map(({ id }) => id).join(", ")}`);
	return bank.id;
}

function startingAt({ points }: Voyage, change: string, value: string): Voyage {
	const first = points[0]!; // a voyage has a point
	let startMs: number;
	try {
		startMs = utcTime(value);
	} catch {
		throw bad(change, "a day after =, as start=2027-03-01");
	}
	return shifted(points, 0, startMs - first.arriveMs);
}

function pointNamed({ points }: Voyage, change: string, name: string): number {
	const index = points.findIndex((point) => point.name?.toLowerCase() === name.trim().toLowerCase());
	if (index >= 0) return index;
	const names = points.flatMap((point) => point.name ?? []);
	throw bad(change, `a named point of the voyage: ${names.join(", ")}`);
}

/** Everything after it comes sooner or later by as much. */
function staying(voyage: Voyage, change: string, name: string, days: number): Voyage {
	const index = pointNamed(voyage, change, name);
	const { arriveMs, departMs } = voyage.points[index]!;
	const later = arriveMs + days * MS_PER_DAY - departMs;
	const { points } = shifted(voyage.points, index + 1, later);
	return { points: points.map((point, i) => (i === index ? { ...point, departMs: departMs + later } : point)) };
}

/** Dates of the other points stay. */
function skipping(voyage: Voyage, change: string, name: string): Voyage {
	const index = pointNamed(voyage, change, name);
	if (voyage.points.length === 1) throw bad(change, "a voyage with another point");
	return { points: voyage.points.filter((_, i) => i !== index) };
}

function shifted(points: Voyage["points"], from: number, byMs: number): Voyage {
	return {
		points: points.map((point, i) => (i < from ? point : { ...point, arriveMs: point.arriveMs + byMs, departMs: point.departMs + byMs })),
	};
}
