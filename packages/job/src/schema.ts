import { CONFIDENCES, parseSchedule } from "@skipwright/directory";
import { EMISSION_CLASSES, LISTED_MEANS, MODES, WANT_IDS, type WantId } from "@skipwright/rules";
import { ProfileSchema, profileNamed, SettingsSchema, shippedProfiles } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import * as z from "zod";
import { utcTime } from "./utcTime.ts";

export const JOB_FORMAT = "skipwright-job";
export const JOB_VERSION = 1;

const Hertz = z.int().min(0).max(1_000_000_000).describe("whole hertz");
const Text = z.string().min(1);
const FileName = z
	.string()
	.regex(/^(?!.*\.\.)[^\\/:\0][^\\:\0]*$/, "the name of a file beside the job, without .. or a drive")
	.describe("a file beside the job");

const Degrees = z
	.tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)])
	.describe("[latitude, longitude] in degrees, north and east positive");

const Time = z
	.string()
	.refine((text) => reads(utcTime, text), "a day as YYYY-MM-DD (taken as noon UTC) or a time with its zone as YYYY-MM-DDThh:mmZ")
	.describe("YYYY-MM-DD (taken as noon UTC) or YYYY-MM-DDThh:mmZ");

const Day = z
	.string()
	.refine((text) => reads(isoDate, text), "a day as YYYY-MM-DD")
	.describe("YYYY-MM-DD");

const ProfileId = z
	.string()
	.refine(
		(id) => profileNamed(id) !== null,
		`the id of a shipped profile: ${shippedProfiles()
			.map(({ id }) => id)
			.join(", ")}`,
	)
	.describe("id of a shipped profile");

const Vessel = z.strictObject({
	name: Text,
	callSign: z.string().default(""),
	mmsi: z
		.string()
		.regex(/^\d{9}$/, "nine digits")
		.nullable()
		.default(null),
	licences: z.strictObject({
		ship: z.boolean().describe("a ship station licence that covers MF/HF is held"),
		amateur: z.boolean().describe("an amateur licence valid at sea is held"),
		operator: z.string().describe("the operator's certificate, in words"),
	}),
});

const Antenna = z.strictObject({
	kind: Text.describe("backstay, whip, wire ..."),
	lengthM: z.number().positive().describe("metres from the tuner's terminal to the far end, lead included"),
	tuner: z.string().default(""),
	ground: z.string().default(""),
	notes: z.string().default(""),
});

const Supply = z.strictObject({
	nominalV: z.number().positive(),
	cableM: z.number().positive().describe("metres one way, source to set"),
	conductorMm2: z.number().positive(),
	fuseA: z.number().positive(),
	notes: z.string().default(""),
});

const VoyagePoint = z.strictObject({
	name: Text.exactOptional().describe("a named point ends a leg"),
	at: Degrees,
	from: Time.describe("arrival, or the time of passing"),
	to: Time.exactOptional().describe("departure, where the ship stays"),
});

const Voyage = z
	.strictObject({ points: z.array(VoyagePoint).min(1).exactOptional(), gpx: FileName.exactOptional() })
	.superRefine(exactlyOne("points", "gpx"))
	.superRefine(({ points = [] }, context) => {
		const times = points.flatMap(({ from, to }, index) => [
			{ path: ["points", index, "from"], time: from },
			...(to === undefined ? [] : [{ path: ["points", index, "to"], time: to }]),
		]);
		let last = Number.NEGATIVE_INFINITY;
		for (const { path, time } of times) {
			if (!reads(utcTime, time)) continue; // told by the field itself
			if (utcTime(time) < last) context.addIssue({ code: "custom", path, message: "a time no earlier than the one before it" });
			last = Math.max(last, utcTime(time));
		}
	});

const OwnListing = z.strictObject({
	id: z.string().regex(/^[a-z0-9][a-z0-9-]*$/, "lower-case letters, digits and hyphens"),
	name: Text.describe("what it is: the net, the friend"),
	hz: Hertz,
	means: z.enum(LISTED_MEANS).default("carrier"),
	emission: z.enum(EMISSION_CLASSES).default("J3E"),
	sideband: z.enum(["upper", "lower"]).default("upper"),
	transmitHz: Hertz.nullable().default(null).describe("carrier the ship sends on; left out or null: receive only"),
	schedule: z
		.string()
		.refine((text) => reads(parseSchedule, text), "times in UTC as 0700;1700-1730, or a word such as unknown")
		.default("unknown")
		.describe("UTC, in the directory's notation: 0700;1700-1730"),
	at: Degrees.nullable().default(null).describe("where the other station is, if it is at one place"),
	asOf: Day.describe("the day this was last known to be right"),
	confidence: z.enum(CONFIDENCES).default("secondary"),
	source: z.string().default("the owner"),
	notes: z.string().default(""),
});
export type OwnListing = z.infer<typeof OwnListing>;

const OwnListings = z
	.strictObject({ rows: z.array(OwnListing).exactOptional(), csv: FileName.exactOptional() })
	.superRefine(exactlyOne("rows", "csv"));

const PlaceRef = { bank: Text, place: z.int() };
const Content = {
	tag: z.string(),
	receiveHz: Hertz,
	transmitHz: Hertz.nullable().describe("null: receive only"),
	mode: z.enum(MODES),
};

const Pin = z
	.strictObject({
		...PlaceRef,
		listing: Text.exactOptional().describe("id of a listing, of a channel (ap17/401), of a guard carrier (guard/2182)"),
		content: z.strictObject(Content).exactOptional(),
	})
	.superRefine(exactlyOne("listing", "content"));
export type Pin = z.infer<typeof Pin>;

const AsFound = z
	.strictObject({ rows: z.array(z.strictObject({ ...PlaceRef, ...Content })).exactOptional(), csv: FileName.exactOptional() })
	.superRefine(exactlyOne("rows", "csv"));

const Weight = z.number().min(0).max(100);
const Wants = z
	.strictObject(Object.fromEntries(WANT_IDS.map((id) => [id, Weight.exactOptional()])) as Record<WantId, z.ZodExactOptional<typeof Weight>>)
	.describe("weight by want; guard carriers and safety text are held whatever is wanted");

const Options = z.strictObject({
	reservePlaces: z.record(z.string(), z.int().min(0)).default({}).describe("places to leave free, by bank"),
	region: z.literal([1, 2, 3]).nullable().default(null).describe("ITU Region; null: all three"),
	berth: Degrees.nullable().default(null).describe("where the set is fitted and proved"),
	sheetFrom: z.enum(["as-found", "blank"]).default("as-found").describe("blank: key in every place, for a set that forgets"),
	disturbance: z
		.number()
		.min(0)
		.default(1)
		.describe("0: what stands in the list as found may be moved freely for a clean order of blocks; 1 and more: what is right stays"),
	leastGainPercent: z
		.number()
		.min(0)
		.max(100)
		.default(0.5)
		.describe("per cent of what a want could have at all that a further place must bring to be worth its keys"),
	clearUnplanned: z.boolean().default(false).describe("empty as-found places that the layout does not use"),
});

/** One vessel's work for one voyage. JSON Schema: docs/job.schema.json. */
export const JobSchema = z.strictObject({
	format: z.literal(JOB_FORMAT),
	version: z.literal(JOB_VERSION),
	title: Text,
	notes: z.string().default(""),
	vessel: Vessel,
	set: z
		.strictObject({ profile: ProfileId.exactOptional(), inline: ProfileSchema.exactOptional() })
		.superRefine(exactlyOne("profile", "inline")),
	antenna: Antenna.exactOptional(),
	supply: Supply.exactOptional(),
	voyage: Voyage,
	wants: Wants,
	listings: OwnListings.default({ rows: [] }).describe("the owner's own: nets and friends"),
	pins: z.array(Pin).default([]).describe("places that must hold this"),
	bans: z.array(Text).default([]).describe("ids of listings or stations never to be loaded"),
	together: z.array(z.array(Text).min(2)).default([]).describe("sets of ids of which all are loaded or none"),
	asFound: AsFound.nullable().default(null).describe("what the set holds now; null: nothing"),
	noise: z
		.enum(["city", "residential", "rural", "quiet-rural"])
		.default("residential")
		.describe("man-made noise aboard, as ITU-R P.372 classes it"),
	settings: z
		.strictObject({ asFound: SettingsSchema.default({}), wanted: SettingsSchema.default({}) })
		.prefault({})
		.describe("what the set was set to, and is to be set to, beside its places"),
	options: Options.prefault({}),
});
export type Job = z.infer<typeof JobSchema>;
/** A job as it is written, defaults left out. */
export type JobInput = z.input<typeof JobSchema>;

function exactlyOne(a: string, b: string): (value: object, context: z.RefinementCtx) => void {
	return (value, context) => {
		if (a in value === b in value) context.addIssue({ code: "custom", path: [], message: `either "${a}" or "${b}", one of the two` });
	};
}

function reads(read: (text: string) => unknown, text: string): boolean {
	try {
		read(text);
		return true;
	} catch {
		return false;
	}
}
