import type { Plan, PlannedPlace } from "@skipwright/planner";
import { contentText, type Finding, type Row } from "@skipwright/set";
import { writeCsv } from "@skipwright/units";

const COLUMNS = ["bank", "place", "was", "now", "why"] as const;

/**
 * What becomes of every place that changes, as an owner would ask it: what it was, what it is now, why. Places filled anew come too.
 * @param before findings about the list as found
 */
export function changesCsv(asFound: readonly Row[], before: readonly Finding[], plan: Plan): string {
	const key = ({ bank, place }: { readonly bank: string; readonly place: number }) => `${place} ${bank}`;
	const planned = new Map(plan.places.map((place) => [key(place), place]));
	const removed = new Map(plan.removed.map((row) => [`${key(row)} ${row.tag}`, row.why]));
	const faults = new Map<number, string>();
	for (const { line, severity, code, message } of before) {
		if (line !== null && severity !== "mind" && !faults.has(line)) faults.set(line, `${code}: ${message}`);
	}
	const changed = asFound.flatMap((row) => {
		const now = planned.get(key(row));
		if (now !== undefined && !now.changed) return [];
		const why =
			removed.get(`${key(row)} ${row.tag}`) ?? faults.get(row.line) ?? now?.notes[0] ?? "its place is wanted for what stands there now";
		return [[row.bank, String(row.place), contentText(row), now === undefined ? "cleared" : nowText(now), why]];
	});
	const found = new Set(asFound.map(key));
	const added = plan.places.filter((place) => !found.has(key(place)));
	const anew = added.map((place) => [place.bank, String(place.place), "empty", nowText(place), place.what]);
	return writeCsv(COLUMNS, [...changed, ...anew]);
}

function nowText({ tag, receiveHz, transmitHz, mode, what }: PlannedPlace): string {
	return `${contentText({ tag, receive: receiveHz, transmit: transmitHz, mode })} (${what})`;
}
