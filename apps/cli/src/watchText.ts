import type { Plan } from "@skipwright/planner";
import { formatKhz } from "@skipwright/units";

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
