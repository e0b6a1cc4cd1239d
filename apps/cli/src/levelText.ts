import type { Plan, Swayed } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { formatKhz } from "@skipwright/units";

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

/** The selective calling watch of the set: a table, not places. */
export function watchLines({ watch: { tableHz, problems, off } }: Plan): readonly string[] {
	if (tableHz === null) return [];
	const table = `${tableHz.map(formatKhz).join(", ")} kHz, in a table of the set's own, beside the places`;
	if (off === null) return [table, ...problems];
	const hours = off.map(({ leg, minutes }) => `${leg} ${(minutes / 60).toFixed(1)}`);
	return [
		table,
		...problems,
		"one receiver: while it scans, or takes a chart, a text or a spoken forecast, it keeps no watch;",
		`  hours a day without a watch if all that the use plan names first is taken: ${hours.join(", ")} (times: plan.json, plan.html)`,
	];
}
