import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory } from "@skipwright/directory";
import type { Plan } from "@skipwright/planner";
import { isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { jobGiven, plannerFor } from "./planJob.ts";

const DOCUMENT = readFileSync(join(import.meta.dirname, "..", "..", "..", "docs", "plans.md"), "utf8");
const EXAMPLES = ["south-atlantic", "coastal-month", "ocean-year", "high-latitude-summer"];

function hoursText({ served, legs }: Plan): string {
	const days = new Map(legs.map((leg) => [leg.name, leg.days]));
	const all = legs.reduce((sum, leg) => sum + leg.days, 0);
	return [...Map.groupBy(served, ({ want }) => want)]
		.map(([want, rows]) => {
			const hours = rows.reduce((sum, { leg, hoursPerDay }) => sum + (days.get(leg)! * hoursPerDay.after) / all, 0);
			return `${want} ${hours.toFixed(1)}`;
		})
		.join(", ");
}

describe("docs/plans.md", () => {
	it.each(EXAMPLES)("tells of %s what the plan gives, without a stop or a fix", async (name) => {
		const context = fakeContext();
		const planned = await plannerFor(context, directory(), isoDate("2026-11-24"))(jobGiven(context, `examples/${name}.job.json`));
		const { places, status, gap, layout, findings } = planned;
		expect(findings.filter(({ severity }) => severity !== "mind")).toEqual([]);
		const row = DOCUMENT.split("\n").find((line) => line.startsWith(`| ${name} |`));
		expect(row?.split(" | ").slice(2).join(" | ")).toBe(
			`${places.length} | ${status}, gap ${gap} | ${layout.status} | ${hoursText(planned)} |`,
		);
	});
});
