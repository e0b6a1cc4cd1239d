import type { IsoDate } from "@skipwright/units";
import { earliestDay } from "./asOf.ts";
import type { Confidence, Listing } from "./types.ts";

export interface Freshness {
	readonly grade: "fresh" | "ageing" | "stale";
	/** Whole months from the date that counts to the day asked for; null when no date is given. */
	readonly months: number | null;
	/** One sentence: which date counts and why. */
	readonly why: string;
}

/** Months after which a listing ages and is stale. Definition of this project, not from a standard. */
const LIMITS: Readonly<Record<Exclude<Confidence, "memory">, { readonly ageing: number; readonly stale: number }>> = {
	official: { ageing: 12, stale: 36 },
	secondary: { ageing: 6, stale: 18 },
};

/**
 * How old a listing is on a day: official is ageing over 12 and stale over 36 months, secondary over 6 and 18, memory always stale.
 *
 * The date that counts: the newest month in which somebody is recorded to have heard it, where the list gives one, even when that is older
 * than the list (a list goes on printing what nobody has heard for years); else the date of the publication. A year counts from its first
 * January, a month from its first day, so that a listing looks no fresher than it may be. Where a list that keeps such records has none for
 * the listing ("no log date given") it is stale: it must not look fresher than one that was heard.
 */
export function freshness(listing: Listing, on: IsoDate): Freshness {
	const { asOf, confidence } = listing;
	const heard = lastHeard(listing);
	const text = heard ?? asOf;
	const day = text === "" ? null : earliestDay(text);
	const months = day === null ? null : Math.max(0, age(day, on).months);
	if (confidence === "memory") return { grade: "stale", months, why: "The frequency is from memory, which never counts as fresh." };
	if (day === null) return { grade: "stale", months, why: "No date is given." };
	if (heard === null && listing.source.includes("no log date given")) {
		return { grade: "stale", months, why: `The list of ${asOf} has no record that anybody heard it.` };
	}
	const { ageing, stale } = LIMITS[confidence];
	const grade = isOver(day, on, stale) ? "stale" : isOver(day, on, ageing) ? "ageing" : "fresh";
	const what = heard === null ? `Published as of ${asOf}` : `Last recorded as heard ${heard}`;
	return {
		grade,
		months,
		why: `${what}: ${months} months; ${confidence} sources age after ${ageing} and are stale after ${stale} months.`,
	};
}

/** Newest month in which somebody is recorded to have heard it (`YYYY-MM`), or null. */
export function lastHeard(listing: Listing): string | null {
	return /(?:^|; )last logged (\d{4}-(?:0[1-9]|1[0-2]))(?:;|$)/.exec(listing.source)?.[1] ?? null;
}

/** Short words for wherever a listing is shown. @example `"secondary source, as of 2025, last heard 2021-09: stale"` */
export function confidenceText(listing: Listing, on: IsoDate): string {
	const date = listing.asOf === "" ? "no date" : `as of ${listing.asOf}`;
	if (listing.confidence === "memory") return `from memory, ${date}: confirm before use`;
	const heard = lastHeard(listing);
	const log = heard !== null ? `, last heard ${heard}` : listing.source.includes("no log date given") ? ", not recorded as heard" : "";
	return `${listing.confidence} source, ${date}${log}: ${freshness(listing, on).grade}`;
}

/** Whole months from one day to another, and the days over. */
function age(from: IsoDate, to: IsoDate): { readonly months: number; readonly days: number } {
	const [fromMonth, fromDay] = [monthNumber(from), Number(from.slice(8))];
	const [toMonth, toDay] = [monthNumber(to), Number(to.slice(8))];
	return toDay >= fromDay ? { months: toMonth - fromMonth, days: toDay - fromDay } : { months: toMonth - fromMonth - 1, days: 1 };
}

function monthNumber(day: IsoDate): number {
	return Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7));
}

/** Exactly so many months is not over. */
function isOver(from: IsoDate, to: IsoDate, limit: number): boolean {
	const { months, days } = age(from, to);
	return months > limit || (months === limit && days > 0);
}
