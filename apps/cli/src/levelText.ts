import type { Plan, Swayed } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";

/** Names told before the rest is only counted. */
const MOST_NAMES = 8;

/** How far a plan rests on the strength of signals; none where nobody asked. */
export function levelLines({ levels }: Plan): readonly string[] {
	return levels.flatMap(({ db, hours, enters, leaves }) => [
		`${Math.abs(db)} dB ${db < 0 ? "weaker" : "stronger"}: this layout gives ${hours.map(({ want, hoursPerDay }) => `${WANT_WORDS[want]} ${hoursPerDay.toFixed(1)}`).join(", ")} hours a day`,
		enters.length + leaves.length === 0
			? "  and the choice would be the same"
			: `  the choice would take in ${listed(enters)}, and leave out ${listed(leaves)}`,
	]);
}

function listed(all: readonly Swayed[]): string {
	if (all.length === 0) return "nothing";
	const names = all.slice(0, MOST_NAMES).map(({ listing }) => listing);
	return `${names.join(", ")}${all.length > MOST_NAMES ? ` and ${all.length - MOST_NAMES} more` : ""}`;
}
