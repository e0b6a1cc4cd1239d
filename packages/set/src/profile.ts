import { MODES } from "@skipwright/rules";
import * as z from "zod";

export const PROFILE_FORMAT = "skipwright-set";
export const PROFILE_VERSION = 1;

const HzValue = z.int().min(0).max(1_000_000_000).describe("whole hertz");

const Range = z
	.strictObject({ fromHz: HzValue, toHz: HzValue })
	.refine(({ fromHz, toHz }) => fromHz < toHz, "fromHz must be below toHz")
	.describe("both ends can be tuned");

const ModeDisplay = z.strictObject({
	shows: z.enum(["carrier", "centre", "mark"]).describe("what the display reads in this mode"),
	audioCentreHz: z
		.number()
		.positive()
		.exactOptional()
		.describe("audio at which a data or chart signal's centre comes out, where the set fixes it"),
	shiftHz: z.number().positive().exactOptional().describe("hertz between the two tones; needed where the mode shows the mark tone"),
	sense: z.enum(["normal", "reversed"]).exactOptional().describe("normal: mark is the lower radio frequency"),
	sideband: z.enum(["upper", "lower"]).exactOptional(),
	pitchHz: z.number().nonnegative().exactOptional().describe("CW only: the display shows carrier minus this pitch"),
});

const Bank = z.strictObject({
	id: z.string().regex(/^[a-z][a-z0-9-]*$/, "lower-case letters, digits and hyphens"),
	places: z.int().min(1).max(10_000),
	blockLength: z.int().min(1).max(1_000).describe("consecutive places that the set scans as one"),
	/** What the fitter means the bank for; the layout fills it so. */
	holds: z.enum(["any", "speech", "data"]).default("any"),
});

const Scan = z.strictObject({
	stopsOn: z.enum(["nothing", "squelch", "speech"]),
	dwellMs: z.int().positive(),
	holdMs: z.int().nonnegative().describe("how long it waits on a signal"),
	resumeMs: z.int().nonnegative().describe("how long after the signal it goes on"),
	skipsEmpty: z.boolean(),
	sweptFlag: z.enum(["block", "place"]).describe("place: each place can be left out of the scan"),
	startsFrom: z.enum(["block-edge", "current-place"]),
});

/** One kind of radiotelephone, as its maker's manual tells it. JSON Schema: docs/set-profile.schema.json. */
export const ProfileSchema = z.strictObject({
	format: z.literal(PROFILE_FORMAT),
	version: z.literal(PROFILE_VERSION),
	id: z.string().regex(/^[a-z0-9][a-z0-9-]*$/, "lower-case letters, digits and hyphens"),
	name: z.string().min(1),
	source: z.string().min(1).describe("the manual and edition this was written from, or that it is invented"),
	banks: z.array(Bank).min(1),
	tag: z.strictObject({
		length: z.int().min(0).max(64),
		characters: z.string().min(1).describe("every character the set can show, each once"),
	}),
	receive: z.array(Range).min(1),
	transmit: z.array(Range).describe("empty for a receiver"),
	tuningStepsHz: z
		.array(HzValue.min(1))
		.min(1)
		.describe("the steps one click of the knob makes, finest first; the first is the finest the set stores"),
	stepsCarry: z.boolean().describe("whether turning past 9 carries into the next digit"),
	entry: z.enum(["keypad", "knob", "both"]),
	modes: z.partialRecord(z.enum(MODES), ModeDisplay).refine((modes) => Object.keys(modes).length > 0, "at least one mode"),
	modeNames: z.record(z.string().min(1), z.enum(MODES)).describe("the maker's words for the five modes"),
	receivers: z.union([z.literal(1), z.literal(2)]),
	fineTune: z.strictObject({ rangeHz: HzValue, stepHz: HzValue.min(1) }).nullable(),
	scan: Scan.nullable(),
});
export type Profile = z.infer<typeof ProfileSchema>;
