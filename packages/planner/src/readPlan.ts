import { MODES, NEVER_TRADED_IDS, WANT_IDS } from "@skipwright/rules";
import { type FindingCode, readJson } from "@skipwright/set";
import { hz, isoDate } from "@skipwright/units";
import * as z from "zod";
import { PLAN_FORMAT, PLAN_VERSION, type Plan } from "./planDocument.ts";

const Hertz = z.int().min(0).max(1_000_000_000).transform(hz);
const Want = z.enum([...WANT_IDS, ...NEVER_TRADED_IDS]);
const Day = z.string().refine(isDay, "a day as YYYY-MM-DD").transform(isoDate);
const Hours = z.number().min(0).max(24);

const Chance = z.number().min(0).max(1);
const Minutes = { fromMin: z.number().min(0), toMin: z.number().min(0) };

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
	hears: z.array(z.string()),
	serves: z.array(
		z.strictObject({
			want: Want,
			hoursPerDay: Hours,
			lostPerDay: Hours,
			rank: z.int().min(1),
			of: z.int().min(1),
			bestLeg: z.string(),
		}),
	),
	day: z.strictObject({
		leg: z.string().nullable(),
		chances: z.array(Chance).length(24).nullable(),
		broadcasts: z.array(z.strictObject(Minutes)).nullable(),
	}),
});

const Side = z.strictObject({ before: z.number().min(0), after: z.number().min(0) });
const UsePlace = z.strictObject({ bank: z.string(), place: z.int(), chance: Chance });
const Use = z.strictObject({
	want: Want,
	leg: z.string(),
	fromHour: z.int().min(0).max(23),
	toHour: z.int().min(1).max(24),
	first: UsePlace,
	second: UsePlace.nullable(),
});
const Watch = z.strictObject({
	tableHz: z.array(Hertz).nullable(),
	problems: z.array(z.string()),
	off: z
		.array(
			z.strictObject({
				leg: z.string(),
				minutes: z.number().min(0).max(1_440),
				times: z.array(z.strictObject({ ...Minutes, want: Want, bank: z.string(), place: z.int() })),
			}),
		)
		.nullable(),
});
const Block = z.strictObject({
	bank: z.string(),
	first: z.int(),
	last: z.int(),
	filled: z.int().min(0),
	kind: z.enum(["speech", "timed", "data", "mixed", "empty"]),
	isScanned: z.boolean(),
	swept: z.int().min(0),
	revisitS: z.number().min(0).nullable(),
	catches: z.array(z.strictObject({ callS: z.number(), chance: Chance })),
});
const Swayed = z.strictObject({ listing: z.string(), what: z.string() });
const Level = z.strictObject({
	db: z.number(),
	hours: z.array(z.strictObject({ want: Want, hoursPerDay: Hours })),
	enters: z.array(Swayed),
	leaves: z.array(Swayed),
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
	on: Day,
	basis: z.string(),
	layout: z.strictObject({ status: z.enum(["optimal", "feasible"]), gap: z.number().min(0).nullable() }),
	places: z.array(Place),
	blocks: z.array(Block),
	legs: z.array(z.strictObject({ name: z.string(), from: Day, days: z.number().min(0) })),
	served: z.array(
		z.strictObject({
			want: Want,
			leg: z.string(),
			hoursPerDay: z.strictObject({ before: Hours, after: Hours }),
			broadcastsPerDay: Side.nullable(),
		}),
	),
	use: z.array(Use),
	watch: Watch,
	levels: z.array(Level),
	leftOut: z.array(z.strictObject({ listing: z.string(), why: z.string() })),
	removed: z.array(z.strictObject({ bank: z.string(), place: z.int(), tag: z.string(), why: z.string() })),
	doubts: z.array(z.string()),
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
