import type { PlaceService, PlannedPlace } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { hoursLong } from "./hoursLong.ts";
import { spanWords } from "./reachSpans.ts";

/** A day of chances in words: `hoursInWords` of sky. */
export type DayInWords = (chances: ArrayLike<number>) => string;

/** More broadcasts a day than this are counted, not told one by one. */
const MOST_TIMES = 8;

/**
 * Why a place is in the layout, in sentences: what it is for, what it gives and where most, how it ranks, what would be lost without it,
 * when it is heard and when it is sent. Of one line; no name of the place in it.
 */
export function placeReason(place: PlannedPlace, words: DayInWords): string {
	const { serves, day, notes, pinned } = place;
	const { leg, chances, broadcasts } = day;
	return [
		pinned ? "Pinned by the job." : "",
		purpose(place),
		...serves.map(serviceSentence),
		chances === null ? "" : `Chance by the hour${leg === null ? "" : ` ${onLeg(leg)}`}, UTC: ${words(chances)}.`,
		broadcasts === null || broadcasts.length === 0 ? "" : `Sent ${sendingTimes(broadcasts.map(spanWords))}.`,
		...notes.map(sentence),
	]
		.filter((part) => part !== "")
		.join(" ");
}

function purpose({ want, serves, changed, pinned, notes }: PlannedPlace): string {
	if (want === "guard") return "Always held: a carrier for distress, safety and calling.";
	if (want === "safety-text") return "Always held: safety text is never traded for other wants.";
	if (want === "ship-calling") return "For calling other vessels.";
	if (serves.length > 0) return "";
	if (want !== null) return `For ${WANT_WORDS[want]}; nobody can tell what is heard here.`;
	if (!changed) return "Kept as found: no list tells what it gives on this voyage, and nothing else needed the place.";
	return pinned || notes.length > 0 ? "" : "No list tells what it gives on this voyage.";
}

function serviceSentence({ want, hoursPerDay, lostPerDay, rank, of, bestLeg }: PlaceService): string {
	const name = capital(WANT_WORDS[want]);
	if (hoursPerDay === 0) return `${name}: hardly anything on this voyage.`;
	const ranked = of === 1 ? "the only place for it" : `${rank === 1 ? "" : `${ordinal(rank)} `}best of ${of} places`;
	const lost =
		of === 1
			? "all of it would be lost without it"
			: lostPerDay === 0
				? "other places would make up for it"
				: `${hoursLong(lostPerDay)} a day would be lost without it`;
	return `${name}: ${hoursLong(hoursPerDay)} a day, ${ranked}${bestLeg === "" ? "" : `, most ${onLeg(bestLeg)}`}; ${lost}.`;
}

/** Stays are named "at Horta", legs "Horta to Falmouth". */
function onLeg(name: string): string {
	return name.startsWith("at ") ? name : `from ${name}`;
}

function sendingTimes(times: readonly string[]): string {
	return times.length > MOST_TIMES ? `${times.length} times a day, first at ${times[0]} UTC` : `${times.join(", ")} UTC`;
}

/** @example `ordinal(3)` is `"third"`, `ordinal(22)` `"22nd"` */
function ordinal(rank: number): string {
	const word = ["", "first", "second", "third"][rank];
	if (word !== undefined) return word;
	const isTeen = rank % 100 >= 11 && rank % 100 <= 13;
	return `${rank}${isTeen ? "th" : (["th", "st", "nd", "rd"][rank % 10] ?? "th")}`;
}

function sentence(text: string): string {
	const trimmed = text.trim();
	return trimmed === "" ? "" : `${capital(trimmed)}${/[.!?]$/.test(trimmed) ? "" : "."}`;
}

function capital(text: string): string {
	return text.slice(0, 1).toUpperCase() + text.slice(1);
}
