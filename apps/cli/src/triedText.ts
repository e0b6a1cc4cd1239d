import type { PlaceNamed, PlanDifference } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";

/** What another plan would have, and what was changed for it. */
export type Tried = { readonly change: string } & PlanDifference;

/** Places told before the rest is only counted. */
const MOST_PLACES = 12;

export function triedText({ change, status, gap, hours, enters, leaves, moves }: Tried): string {
	const other = hours.filter(({ before, after }) => before !== after);
	const proved =
		status === "optimal"
			? "proved best"
			: status === "infeasible"
				? "cannot be kept"
				: `not proved${gap === null ? "" : `, gap ${(gap * 100).toFixed(2)} %`}`;
	const lines = [
		`What if ${change}: ${proved}`,
		...(other.length === 0
			? ["hours a day: the same"]
			: other.map(({ want, before, after }) => `${WANT_WORDS[want].padEnd(24)} ${hourText(before)} -> ${hourText(after)} hours a day`)),
		...placeLines("comes in", enters),
		...placeLines("goes out", leaves),
		...(moves.length === 0
			? []
			: [
					`moves: ${moves
						.slice(0, MOST_PLACES)
						.map(({ from, to }) => `${from.bank} ${from.place} to ${to.bank} ${to.place}`)
						.join(", ")}${more(moves.length)}`,
				]),
		...(enters.length + leaves.length + moves.length === 0 ? ["places: the same"] : []),
	];
	return `\n${lines.join("\n  ")}\n`;
}

function placeLines(verb: string, places: readonly PlaceNamed[]): readonly string[] {
	if (places.length === 0) return [];
	const named = places.slice(0, MOST_PLACES).map(({ bank, place, what }) => `${bank} ${place} ${what}`);
	return [`${verb}: ${named.join("; ")}${more(places.length)}`];
}

function more(count: number): string {
	return count > MOST_PLACES ? ` and ${count - MOST_PLACES} more` : "";
}

function hourText(hours: number): string {
	return hours.toFixed(1).padStart(4);
}
