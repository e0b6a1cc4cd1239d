import type { Heard } from "@skipwright/modem";
import type { Expectation } from "./expectation.ts";
import { fitsHere } from "./fitsHere.ts";
import { GRADES } from "./proofOf.ts";
import { type Predicted, RESULTS, type Verdict, type VerdictOptions, verdict } from "./verdict.ts";

/** A station that the place may have heard, and what was predicted of it. */
export interface PlaceStation {
	readonly expectation: Expectation;
	readonly predicted: Predicted;
}

/**
 * Verdict on a place that hears several stations: the best, and of equals that of the station whose name was read, then of the one likeliest
 * to be heard. All NAVTEX stations share a frequency, and a letter belongs to many: where several with the letter were due and in reach,
 * none is named.
 */
export function placeVerdict(
	stations: readonly PlaceStation[],
	heard: readonly Heard[],
	options: VerdictOptions,
): { readonly expectation: Expectation; readonly verdict: Verdict } | null {
	const judged = stations.map(({ expectation, predicted }) => ({
		expectation,
		predicted,
		chance: predicted.chance ?? 0,
		verdict: verdict(expectation, heard, predicted, options),
	}));
	const rank = ({ verdict: { result, grade } }: (typeof judged)[number]) => RESULTS.indexOf(result) * GRADES.length + GRADES.indexOf(grade);
	const sorted = judged.toSorted((a, b) => rank(a) - rank(b) || b.chance - a.chance);
	const [first] = sorted;
	if (first === undefined) return null;
	const letter = letterOf(first.verdict.item);
	if (letter === null) return { expectation: first.expectation, verdict: first.verdict };
	const told = (one: typeof first, why: string) => ({
		expectation: one.expectation,
		verdict: { ...one.verdict, isNamed: false, why: [`A message of station ${letter} was read; ${why}`, ...one.verdict.why.slice(1)] },
	});
	const namesakes = sorted.filter(
		({ expectation, verdict: { item } }) => expectation.identity.navtexLetter === letter && letterOf(item) === letter,
	);
	if (first.verdict.grade === "other" && namesakes.length === 0)
		return told(first, "no station of this place has that letter: not the one expected.");
	const fitting = namesakes.filter(({ predicted }) => fitsHere(predicted) === true);
	if (first.verdict.grade === "identity" && fitting.length > 1) {
		const names = fitting.map(({ expectation: { what } }) => what).join("; ");
		return told(first, `several were due and in reach, and which it was cannot be told: ${names}.`);
	}
	const best = first.verdict.grade === "other" ? (namesakes.find(({ verdict: { grade } }) => grade === "unknown") ?? namesakes[0]!) : first;
	return { expectation: best.expectation, verdict: best.verdict };
}

function letterOf(item: Heard | null): string | null {
	return item?.kind === "text" ? (item.identity?.station ?? null) : null;
}
