import { MODES, NEVER_TRADED_IDS, WANT_IDS } from "@skipwright/rules";
import { type FindingCode, readJson } from "@skipwright/set";
import { hz, isoDate } from "@skipwright/units";
import * as z from "zod";
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from "./plan.ts";

const Hertz = z.int().min(0).max(1_000_000_000).transform(hz);
const Want = z.enum([...WANT_IDS, ...NEVER_TRADED_IDS]);
const Hours = z.number().min(0).max(24);

const Place = z.strictObject({
	bank: z.string(),
	place: z.int(),
	tag: z.string(),
	receiveHz: Hertz,
	transmitHz: Hertz.nullable(),
	mode: z.enum(MODES),
	listing: z.string().nullable(),
	pinned: z.boolean(),
	changed: z.boolean(),
	what: z.string(),
	want: Want.nullable(),
	notes: z.array(z.string()),
});

const Finding = z.strictObject({
	code: z.custom<FindingCode>((value) => typeof value === "string", "a code of a finding"),
	severity: z.enum(["stop", "fix", "mind"]),
	bank: z.string().nullable(),
	place: z.int().nullable(),
	line: z.int().nullable(),
	message: z.string(),
	source: z.string(),
	remedy: z.string(),
});

const PlanSchema = z.strictObject({
	format: z.literal(PLAN_FORMAT),
	version: z.literal(PLAN_VERSION),
	status: z.enum(["optimal", "feasible", "infeasible"]),
	gap: z.number().min(0).nullable(),
	worth: z.number().min(0),
	on: z.string().refine(isDay, "a day as YYYY-MM-DD").transform(isoDate),
	basis: z.string(),
	places: z.array(Place),
	served: z.array(z.strictObject({ want: Want, leg: z.string(), hoursPerDay: z.strictObject({ before: Hours, after: Hours }) })),
	leftOut: z.array(z.strictObject({ listing: z.string(), why: z.string() })),
	removed: z.array(z.strictObject({ bank: z.string(), place: z.int(), tag: z.string(), why: z.string() })),
	conflicts: z.array(z.string()),
	findings: z.array(Finding),
});

/**
 * A plan from plan.json.
 * @param source name of the file, for messages
 * @throws BadJsonError (a BadInputError) with line, path, value and expectation; another format and a newer version by name
 */
export function readPlan(source: string, jsonText: string): Plan {
	return readJson(source, jsonText, { format: PLAN_FORMAT, version: PLAN_VERSION, what: "a plan", schema: PlanSchema });
}

function isDay(text: string): boolean {
	try {
		isoDate(text);
		return true;
	} catch {
		return false;
	}
}
