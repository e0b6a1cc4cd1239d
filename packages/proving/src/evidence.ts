import { HEARD_KINDS, type Heard } from "@skipwright/modem";
import { MODES } from "@skipwright/rules";
import { readJson } from "@skipwright/set";
import { isoDate, type Position } from "@skipwright/units";
import * as z from "zod";
import type { Expectation } from "./expectation.ts";
import type { DialOfPlace } from "./expectationOf.ts";
import { mayKeep } from "./mayKeep.ts";
import { namedAs } from "./namedAs.ts";
import { RESULTS, type Verdict } from "./verdict.ts";

const EVIDENCE_FORMAT = "skipwright-evidence";
const EVIDENCE_VERSION = 1;

const Hertz = z.int().min(0).max(1_000_000_000).describe("whole hertz");
const Text = z.string().min(1);
const Seconds = z.number().min(0).max(1e7);

/** Something heard that shows how a place of a set stands. JSON Schema: docs/evidence.schema.json. */
export const EvidenceSchema = z
	.strictObject({
		format: z.literal(EVIDENCE_FORMAT),
		version: z.literal(EVIDENCE_VERSION),
		place: z
			.strictObject({ bank: Text, place: z.int().nullable(), tag: z.string(), receiveHz: Hertz, mode: z.enum(MODES) })
			.describe('as the set stood; bank "dialled" and place null where it was dialled and not recalled'),
		listing: Text.nullable().describe(
			"id of the listing that was expected and identified; null where another station, or one not known, was heard",
		),
		what: Text.describe("the same for a person"),
		heard: z
			.strictObject({ kind: z.enum(HEARD_KINDS), summary: Text })
			.nullable()
			.describe("null where nothing was heard of what was listened for: not proved, or cannot tell"),
		offsetHz: z
			.number()
			.min(-10_000)
			.max(10_000)
			.nullable()
			.describe("heard less nominal; positive where the dial reads high; null where it cannot be measured"),
		uncertaintyHz: z.number().min(0).max(10_000).nullable().describe("one sigma"),
		snrDb: z.number().min(-200).max(200).nullable().describe("signal over noise in 2700 Hz; null where nothing was heard"),
		time: z
			.string()
			.refine(isUtcTime, "a time as YYYY-MM-DDThh:mm:ssZ")
			.describe("UTC at the start of what was heard, or of the recording"),
		position: z
			.tuple([z.number().min(-90).max(90), z.number().min(-180).max(180)])
			.describe("[latitude, longitude] of the set in degrees, north and east positive"),
		tolerance: z.strictObject({ hz: z.number().min(0).max(10_000), source: Text }),
		verdict: z.enum(RESULTS),
		why: z.array(Text).min(1),
		audio: z
			.strictObject({
				file: Text,
				sha256: z.string().regex(/^[0-9a-f]{64}$/, "64 hexadecimal digits in lower case"),
				startS: Seconds.describe("where in the file it begins"),
				endS: Seconds,
				rateHz: z.number().min(1).max(10_000_000),
			})
			.nullable()
			.describe("the recording; null where other traffic is in it and nothing of what was listened for"),
	})
	.superRefine(({ audio, heard, snrDb, offsetHz, uncertaintyHz, verdict: result }, context) => {
		const isSilent = heard === null;
		if (isSilent && result !== "not proved" && result !== "cannot tell") {
			context.addIssue({ code: "custom", path: ["heard"], message: `something with the verdict "${result}"` });
		}
		if ((snrDb === null) !== isSilent)
			context.addIssue({ code: "custom", path: ["snrDb"], message: "null together with heard, or neither" });
		if (isSilent && offsetHz !== null) context.addIssue({ code: "custom", path: ["offsetHz"], message: "null where nothing was heard" });
		if (!isSilent && audio === null) context.addIssue({ code: "custom", path: ["audio"], message: "the recording of what was heard" });
		if (audio !== null && audio.endS < audio.startS)
			context.addIssue({ code: "custom", path: ["audio", "endS"], message: "no earlier than startS" });
		if ((offsetHz === null) !== (uncertaintyHz === null)) {
			context.addIssue({ code: "custom", path: ["uncertaintyHz"], message: "null together with offsetHz, or neither" });
		}
	});
export type Evidence = z.infer<typeof EvidenceSchema>;

export interface EvidenceInput {
	readonly place: DialOfPlace & { readonly bank: string; readonly place: number | null; readonly tag: string };
	readonly expectation: Expectation;
	readonly verdict: Verdict;
	/** All that was heard in the recording: where it is other traffic, no word of the recording is kept. */
	readonly items: readonly Heard[];
	readonly ownMmsi: string | null;
	/** Milliseconds since 1970-01-01T00:00Z at the start of the recording. */
	readonly recordedMs: number;
	readonly position: Position;
	/** `sha256` of the whole file, worked out by the caller; `seconds`: its length. */
	readonly audio: { readonly file: string; readonly sha256: string; readonly rateHz: number; readonly seconds: number };
}

/** The record of a verdict, or why none may be kept. Silence is recorded too: what was listened for, when and where. */
export function evidence({
	place,
	expectation,
	verdict,
	items,
	ownMmsi,
	recordedMs,
	position,
	audio,
}: EvidenceInput): Evidence | { readonly refused: string } {
	const { item } = verdict;
	const keeping = item === null ? null : mayKeep(expectation, item, ownMmsi);
	if (keeping?.may === false) return { refused: keeping.why };
	const { seconds, ...recording } = audio;
	const isClean = items.every((one) => mayKeep(expectation, one, ownMmsi).may);
	return {
		format: EVIDENCE_FORMAT,
		version: EVIDENCE_VERSION,
		place: { bank: place.bank, place: place.place, tag: place.tag, receiveHz: place.receiveHz, mode: place.mode },
		...namedAs(expectation, verdict),
		heard: item === null ? null : { kind: item.kind, summary: summaryOf(item) },
		offsetHz: rounded(verdict.offsetHz),
		uncertaintyHz: rounded(verdict.uncertaintyHz),
		snrDb: item === null ? null : Math.round(10 * item.snrDb) / 10,
		time: utcText(recordedMs + 1_000 * (item?.startS ?? 0)),
		position: [position.latDeg, position.lonDeg],
		tolerance: { ...expectation.tolerance },
		verdict: verdict.result,
		why: item === null && verdict.words !== verdict.result ? [`${capital(verdict.words)}.`, ...verdict.why] : [...verdict.why],
		audio: item === null && !isClean ? null : { ...recording, startS: item?.startS ?? 0, endS: item?.endS ?? seconds },
	};
}

/**
 * Evidence from a file.
 * @param source name of the file, for messages
 * @throws BadJsonError (a BadInputError) with line, path, value and expectation; another format and a newer version by name
 */
export function readEvidence(source: string, jsonText: string): Evidence {
	return readJson(source, jsonText, { format: EVIDENCE_FORMAT, version: EVIDENCE_VERSION, what: "evidence", schema: EvidenceSchema });
}

/** What was heard in a sentence. A text is told by its head alone: the recording holds the rest. */
export function summaryOf(item: Heard): string {
	switch (item.kind) {
		case "chart":
			return `Chart, ${item.image.height} lines at ${item.linesPerMinute} a minute, index of cooperation ${item.ioc}; ${item.began}, ended by ${item.ended}.`;
		default:
			return item.summary;
	}
}

function capital(text: string): string {
	return text.charAt(0).toUpperCase() + text.slice(1);
}

function rounded(hz: number | null): number | null {
	return hz === null ? null : Math.round(100 * hz) / 100;
}

/** To the second. */
function utcText(ms: number): string {
	return `${new Date(Math.round(ms / 1_000) * 1_000).toISOString().slice(0, 19)}Z`;
}

function isUtcTime(text: string): boolean {
	if (!/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\dZ$/.test(text)) return false;
	try {
		isoDate(text.slice(0, 10));
		return true;
	} catch {
		return false;
	}
}
