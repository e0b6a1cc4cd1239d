import { HEARD_KINDS, type HeardItem, type HeardKind, type HeardTone, measureTuning, type Tuning } from "@skipwright/modem";
import { BadInputError } from "@skipwright/units";
import { encode } from "fast-png";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { type Expected, type ExpectedFlags, expectedGiven } from "../hearExpected.ts";
import { type HeardFile, hearFile } from "../hearFile.ts";
import { heardJson, loggedJson } from "../hearJson.ts";
import { type Clock, clockFrom, fileLine, loggedText, logText, type Told } from "../hearText.ts";
import { isSecret, SECRECY } from "../secrecy.ts";

export interface HearFlags extends ExpectedFlags {
	readonly kind?: string;
	readonly channel?: string;
	readonly image?: string;
	readonly started?: string;
	readonly json?: boolean;
}

/** `hear FILE...`: what is in recordings, in order of time, as an operator would log it. */
export function hearCommand(context: Context, files: readonly string[], flags: HearFlags): Exit {
	const kinds = kindsGiven(flags.kind);
	const channel = channelGiven(flags.channel);
	const startedMs = startedGiven(flags.started);
	const expected = expectedGiven(context, flags);
	const clock = clockFrom(startedMs);
	const pictures = createPictures(context, flags.image);
	const records: object[] = [];
	let exit: Exit = EXIT.ok;
	let holdsSecret = false;
	for (const file of files) {
		try {
			const heard = hearFile(context, file, { kinds, channel, keep: pictures.keep });
			if (heard.isLog) {
				const calls = kinds.includes("dsc") ? heard.calls : [];
				holdsSecret ||= calls.some(({ call }) => isSecret(call));
				records.push(...calls.map((call) => loggedJson(file, call)));
				if (flags.json !== true) context.out(pageText(`${file}: a set's log of selective calls`, loggedText(calls)));
				continue;
			}
			const told = withTuning(heard.items, expected).map((one) => ({ ...one, image: pictures.nameOf(one.item) }));
			holdsSecret ||= heard.items.some((item) => isSecret(item, expected.kindToAll));
			records.push(...told.map((one) => heardJson(file, one, { startedMs, isJudged: expected.hasDial, kindToAll: expected.kindToAll })));
			if (flags.json !== true) context.out(fileText(heard, told, expected, clock));
		} catch (error) {
			if (!(error instanceof UsageError || error instanceof BadInputError)) throw error;
			context.err(`skipwright: ${error.message}\n`);
			exit = EXIT.badInput;
		}
	}
	if (flags.json === true) context.out(`${JSON.stringify({ heard: records }, null, "\t")}\n`);
	if (holdsSecret) (flags.json === true ? context.err : context.out)(`${SECRECY}\n`);
	return exit;
}

function fileText(heard: HeardFile, told: readonly Told[], expected: Expected, clock: Clock): string {
	const where = expected.what === null ? [] : [`expected: ${expected.what}`];
	const ofTones = tuningOfTones(heard.items, expected);
	return pageText([fileLine(heard), ...where].join("\n"), [
		...logText(told, clock),
		...(ofTones === null ? [] : [`By its tones: ${ofTones.words}`]),
		...(expected.tonesHint !== null && heard.items.some(({ kind }) => kind === "tone") ? [`By its tones: ${expected.tonesHint}`] : []),
	]);
}

function pageText(head: string, lines: readonly string[]): string {
	return `${[head, ...(lines.length === 0 ? ["Nothing heard."] : lines)].join("\n")}\n\n`;
}

/** Each item with the dial's error, where something nominal is known for it. */
function withTuning(items: readonly HeardItem[], expected: Expected): readonly Omit<Told, "image">[] {
	const ofTones = tuningOfTones(items, expected);
	return items.map((item) => {
		if (item.kind === "tone") return { item, tuning: ofTones !== null && isOneOf(item, ofTones, expected) ? ofTones : null };
		const expectation = expected.of(item.kind);
		return { item, tuning: expectation === null ? null : worded(measureTuning(item, expectation), expected) };
	});
}

/** What all tones say together: the set's error can be told from the recorder's by several alone. */
function tuningOfTones(items: readonly HeardItem[], expected: Expected): Tuning | null {
	const expectation = expected.of("tone");
	const tones = items.filter((item): item is HeardTone & HeardItem => item.kind === "tone");
	return expectation === null || tones.length === 0 ? null : worded(measureTuning(tones, expectation), expected);
}

/** Hz within which a tone is where the tuning puts one. */
const SAME_HZ = 2;

function isOneOf({ audioHz }: HeardItem, { offsetHz }: Tuning, expected: Expected): boolean {
	const { nominalAudioHz = [], mode = "USB" } = expected.of("tone") ?? {};
	const higherHz = (mode === "LSB" ? -1 : 1) * (offsetHz ?? Number.NaN);
	return nominalAudioHz.some((nominalHz) => Math.abs(audioHz - nominalHz - higherHz) < SAME_HZ);
}

/** Without a dial a correction has no figure. */
function worded(tuning: Tuning, { hasDial }: Expected): Tuning {
	if (hasDial || tuning.offsetHz === null) return tuning;
	const offset = `${Math.abs(tuning.offsetHz).toFixed(1)} Hz ${tuning.offsetHz < 0 ? "below" : "above"} the usual place`;
	return { ...tuning, steps: null, rightDialHz: null, words: `${offset}; give --listing or --dial to have it judged.` };
}

interface Pictures {
	/** Writes a chart's picture, where it is wanted, and drops it: an hour of charts must not fill the memory. */
	readonly keep: (item: HeardItem) => HeardItem;
	readonly nameOf: (item: HeardItem) => string | null;
}

function createPictures(context: Context, path: string | undefined): Pictures {
	const names = new Map<HeardItem, string>();
	return {
		keep(item) {
			if (item.kind !== "chart") return item;
			const { width, height, pixels } = item.image;
			const kept = { ...item, image: { width, height, pixels: new Uint8Array(0) } };
			if (path !== undefined) {
				const name = names.size === 0 ? path : path.replace(/(\.png)?$/i, `-${names.size + 1}.png`);
				context.writeFile(name, encode({ width, height, data: pixels, depth: 8, channels: 1 }));
				names.set(kept, name);
			}
			return kept;
		},
		nameOf: (item) => names.get(item) ?? null,
	};
}

function kindsGiven(text: string | undefined): readonly HeardKind[] {
	if (text === undefined) return HEARD_KINDS;
	return text.split(",").map((word) => {
		const kind = HEARD_KINDS.find((one) => one === word.trim());
		if (kind === undefined)
			throw new UsageError(`cannot take --kind ${word}: expected ${HEARD_KINDS.join(", ")}, with commas between several`);
		return kind;
	});
}

function channelGiven(text: string | undefined): number | "mean" {
	if (text === undefined) return "mean";
	const value = Number(text);
	if (Number.isInteger(value) && value >= 1) return value;
	throw new UsageError(`cannot take --channel ${text}: expected the number of a channel, 1 the first`);
}

function startedGiven(text: string | undefined): number | null {
	if (text === undefined) return null;
	const ms = /^\d{4}-\d\d-\d\dT\d\d:\d\d(:\d\d)?Z$/.test(text) ? Date.parse(text) : Number.NaN;
	if (Number.isFinite(ms)) return ms;
	throw new UsageError(`cannot take --started ${text}: expected UTC as 2026-11-24T10:00Z`);
}
