import type { Heard } from "@skipwright/modem";
import type { Expectation } from "./expectation.ts";
import { type Predicted, RESULTS, type Verdict, type VerdictOptions, verdict } from "./verdict.ts";

/** A station that the place may have heard, and what was predicted of it. */
export interface PlaceStation {
	readonly expectation: Expectation;
	readonly predicted: Predicted;
}

/** The stations of one place are told apart by their names, and what names none is the one best heard. */
const GRADES = ["identity", "signal", "likely", "none"];

/**
 * Verdict on a place that hears several stations: the best, and of equals that of the station whose name was read, then of the one likeliest
 * to be heard. All NAVTEX stations share a frequency, and a letter belongs to many.
 */
export function placeVerdict(
	stations: readonly PlaceStation[],
	heard: readonly Heard[],
	options: VerdictOptions,
): { readonly expectation: Expectation; readonly verdict: Verdict } | null {
	const judged = stations.map(({ expectation, predicted }) => ({
		expectation,
		chance: predicted.chance ?? 0,
		verdict: verdict(expectation, heard, predicted, options),
	}));
	const rank = ({ verdict: { result, grade } }: (typeof judged)[number]) => RESULTS.indexOf(result) * GRADES.length + GRADES.indexOf(grade);
	const best = judged.toSorted((a, b) => rank(a) - rank(b) || b.chance - a.chance)[0];
	return best === undefined ? null : { expectation: best.expectation, verdict: best.verdict };
}
