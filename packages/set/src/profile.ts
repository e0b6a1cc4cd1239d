import { type DialConvention, MODES, type Mode } from "@skipwright/rules";
import * as z from "zod";
import { profileContradictions } from "./profileContradictions.ts";

export const PROFILE_FORMAT = "skipwright-set";
export const PROFILE_VERSION = 1;

const HzValue = z.int().min(0).max(1_000_000_000).describe("whole hertz");

const Range = z.strictObject({ fromHz: HzValue, toHz: HzValue }).describe("both ends can be tuned");

const ModeDisplay = z
	.strictObject({
		shows: z
			.enum(["carrier", "centre", "mark"])
			.describe("what the display reads in this mode: the carrier, the middle of the two tones, or the mark tone itself"),
		audioCentreHz: z
			.number()
			.positive()
			.max(10_000)
			.exactOptional()
			.describe("hertz of audio at which a data or chart signal's centre comes out, where the set fixes it"),
		shiftHz: z
			.number()
			.positive()
			.max(10_000)
			.exactOptional()
			.describe("hertz between the two tones; needed where the mode shows the mark"),
		sense: z.enum(["normal", "reversed"]).exactOptional().describe("normal: mark is the lower radio frequency"),
		sideband: z
			.enum(["upper", "lower"])
			.exactOptional()
			.describe("sideband whose audio is used for data, where the mode's name does not say it"),
		pitchHz: z
			.number()
			.nonnegative()
			.max(10_000)
			.exactOptional()
			.describe("CW only: the display shows the carrier less this pitch; absent or 0 where it shows the carrier"),
	})
	.describe("one mode of the set");

const Bank = z.strictObject({
	id: z
		.string()
		.regex(/^[a-z][a-z0-9-]*$/, "a name of lower-case letters, digits and hyphens that begins with a letter")
		.describe("as the list of places writes it"),
	places: z.int().min(1).max(10_000).describe("places are numbered from 1 to this"),
	blockLength: z.int().min(1).max(10_000).describe("consecutive places that the set scans as one, counted from place 1"),
	holds: z.enum(["any", "speech", "data"]).default("any").describe("what the bank is meant for; the layout fills it so"),
});

const Scan = z
	.strictObject({
		stopsOn: z.enum(["nothing", "squelch", "speech"]).describe("what makes the scan wait on a place"),
		dwellMs: z.int().min(1).max(600_000).describe("milliseconds on each place while nothing stops it"),
		holdMs: z.int().min(0).max(600_000).describe("longest wait on a signal, milliseconds; 0 where it waits as long as the signal lasts"),
		resumeMs: z.int().min(0).max(600_000).describe("milliseconds from the end of the signal to the next place"),
		skipsEmpty: z.boolean().describe("whether empty places are passed over"),
		sweptFlag: z.enum(["block", "place"]).describe("place: each place can be left out of the scan; block: a block is swept whole"),
		startsFrom: z.enum(["block-edge", "current-place"]),
	})
	.describe("how the set scans; null where it does not");

/** One kind of radiotelephone, as its maker's manual tells it. JSON Schema: docs/set-profile.schema.json. */
export const ProfileSchema = z
	.strictObject({
		format: z.literal(PROFILE_FORMAT),
		version: z.literal(PROFILE_VERSION),
		id: z
			.string()
			.regex(/^[a-z0-9][a-z0-9-]*$/, "lower-case letters, digits and hyphens")
			.describe("name by which jobs call this profile"),
		name: z.string().min(1).max(200).describe("for people"),
		source: z.string().min(1).describe("the manual, edition and pages that this was written from, or that it is invented"),
		banks: z.array(Bank).min(1).max(100),
		tag: z.strictObject({
			length: z.int().min(0).max(64).describe("characters shown at a place; 0 where the set shows none"),
			characters: z.string().describe("every character that the set can show, each once"),
		}),
		receive: z.array(Range).min(1).max(100).describe("ranges in rising order"),
		transmit: z.array(Range).max(100).describe("ranges in rising order; empty for a receiver"),
		tuningStepsHz: z
			.array(HzValue.min(1))
			.min(1)
			.max(8)
			.describe(
				"hertz of one click of the knob at each of its steps, rising; the first is the finest that the set stores, also on a keypad",
			),
		stepsCarry: z.boolean().describe("whether a click past 9 carries into the next digit; false where each digit turns by itself"),
		entry: z.enum(["keypad", "knob", "both"]),
		modes: z
			.strictObject({
				USB: ModeDisplay.exactOptional(),
				LSB: ModeDisplay.exactOptional(),
				AM: ModeDisplay.exactOptional(),
				CW: ModeDisplay.exactOptional(),
				FSK: ModeDisplay.exactOptional(),
			} satisfies Record<Mode, unknown>)
			.describe("the modes that the set has, and what each one's display shows"),
		modeNames: z.record(z.string().min(1), z.enum(MODES)).describe("the maker's words for the five modes, in any case of letters"),
		receivers: z
			.literal([1, 2])
			.describe("with one receiver, watch, scan and chart-taking exclude each other; 2 where a second one keeps the DSC watch"),
		fineTune: z
			.strictObject({
				rangeHz: HzValue.describe("hertz either way"),
				stepHz: HzValue.min(1),
			})
			.nullable()
			.describe("receive clarifier; null where there is none"),
		scan: Scan.nullable(),
		dscWatch: z
			.strictObject({ size: z.int().min(1).max(100).describe("frequencies that the DSC watch table holds") })
			.nullable()
			.default(null)
			.describe("the set's own table of DSC watch frequencies; null where it has none"),
	})
	.superRefine((profile, context) => {
		for (const { path, expected } of profileContradictions(profile)) {
			context.addIssue({ code: "custom", path: [...path], message: expected, input: profile });
		}
	});

export type Profile = z.infer<typeof ProfileSchema>;

/** What each mode of the set shows, as the rules' `dialFor` takes it. */
export function convention(profile: Profile): DialConvention {
	return profile.modes;
}

/** A receiver has no transmit range; its list holds receive-only places alone. */
export function isReceiver(profile: Profile): boolean {
	return profile.transmit.length === 0;
}
