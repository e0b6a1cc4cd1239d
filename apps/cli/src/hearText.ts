import type { HeardItem, HeardTone, LoggedCall, Tuning } from "@skipwright/modem";
import type { HeardFile } from "./hearFile.ts";

/** Gives an item's time: from the start of the file, or UTC. */
export type Clock = (seconds: number) => string;

/** What is told of an item beside itself. */
export interface Told {
	readonly item: HeardItem;
	readonly tuning: Tuning | null;
	/** File of its picture. */
	readonly image: string | null;
}

const INDENT = " ".repeat(10);
const SECONDS_A_DAY = 86_400;
/**
 * What a ship that receives a distress alert does, each sentence from 47 CFR: watch the paired telephony frequency (80.1123(d), 80.1077), no
 * acknowledgement by DSC (80.1117(a)), no relay on MF (80.1121(b)), on HF one to a coast station after five minutes (80.1121(c)).
 */
const ON_DISTRESS = [
	"Follow the radio procedures. Listen for five minutes on the telephony distress frequency of the same band, kHz:",
	"2182 for 2187.5, 4125 for 4207.5, 6215 for 6312, 8291 for 8414.5, 12290 for 12577, 16420 for 16804.5.",
	"Leave the acknowledgement by DSC to coast stations. On MF do not relay; tell a coast station or rescue centre. On HF, if you hear no",
	"traffic and no coast station acknowledges within five minutes, pass the alert on to a coast station. Official procedures prevail.",
];
/** Of tones that stand together, so many are told one by one. */
const MOST_TONES = 8;
/** dB by which the strongest must lead to be told first, the others by their pitch. */
const LEAD_DB = 3;
/** Seconds within which tones begin that are told as one; seconds and hertz within which speech, or a tone, goes on. */
const TOGETHER_S = 0.5,
	PAUSE_S = 30,
	SAME_HZ = 2;

export function clockFrom(startedMs: number | null): Clock {
	return (seconds) => {
		const whole = Math.max(0, Math.round(seconds));
		if (startedMs === null) return hms(whole);
		return `${hms(Math.floor(startedMs / 1_000 + whole) % SECONDS_A_DAY)}Z`;
	};
}

function hms(seconds: number): string {
	const two = (value: number) => String(value).padStart(2, "0");
	return `${two(Math.floor(seconds / 3_600))}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
}

/** The first line of a file's log. */
export function fileLine({ file, seconds, rateHz, channels, missingS, badSamples }: HeardFile): string {
	const cut = missingS > 0 ? `; the file was cut short, ${missingS.toFixed(1)} s are missing` : "";
	const bad = badSamples > 0 ? `; ${badSamples} samples were no numbers, taken as silence` : "";
	return `${file}: ${hms(Math.round(seconds))} at ${rateHz} samples a second, ${channels === 1 ? "one channel" : `${channels} channels`}${cut}${bad}`;
}

/** A file's items as an operator would log them, in order of time. */
export function logText(told: readonly Told[], clock: Clock): readonly string[] {
	const lines: string[] = [];
	for (let i = 0; i < told.length; ) {
		const rest = told.slice(i);
		const [tones, parts] = [tonesAtOnce(rest), partsOfOne(rest)];
		if (tones.length > 1) lines.push(tonesText(tones, clock));
		else lines.push(parts.length > 1 ? partsText(parts, clock) : itemText(told[i]!, clock));
		i += Math.max(tones.length, parts.length);
	}
	return lines;
}

/** Tones at the head of the list that begin together. */
function tonesAtOnce(told: readonly Told[]): readonly Told[] {
	const startS = told[0]!.item.startS;
	const end = told.findIndex(({ item }) => item.kind !== "tone" || item.startS - startS > TOGETHER_S);
	return told.slice(0, end < 0 ? told.length : end);
}

/** Speech, or a keyed tone, at the head of the list and where it goes on after pauses. */
function partsOfOne(told: readonly Told[]): readonly Told[] {
	const goesOn = (before: HeardItem, after: HeardItem) => {
		if (before.kind !== after.kind || after.startS - before.endS > PAUSE_S) return false;
		return before.kind === "voice" || (before.kind === "tone" && Math.abs(before.audioHz - after.audioHz) < SAME_HZ);
	};
	const end = told.findIndex(({ item }, i) => i > 0 && !goesOn(told[i - 1]!.item, item));
	return told.slice(0, end < 0 ? told.length : end);
}

function partsText(parts: readonly Told[], clock: Clock): string {
	const longest = parts.reduce((best, one) => (lengthS(one) > lengthS(best) ? one : best));
	const until = `${INDENT}Until ${clock(parts.at(-1)!.item.endS)}, with pauses; told of its longest part:`;
	const [, ...lines] = itemText(longest, clock).split("\n");
	return [`${clock(parts[0]!.item.startS)}  ${summaryOf(longest.item)}`, until, ...lines].join("\n");
}

function lengthS({ item }: Told): number {
	return item.endS - item.startS;
}

function itemText({ item, tuning, image }: Told, clock: Clock): string {
	const lines = [`${clock(item.startS)}  ${summaryOf(item)}`];
	if (item.kind === "text" || item.kind === "teletype")
		lines.push(
			...item.text
				.trim()
				.split("\n")
				.map((line) => `    ${line}`),
		);
	if (item.kind === "dsc") lines.push(...item.faults.map(({ message }) => message));
	if (item.kind === "dsc" && item.call?.format === "distress alert") lines.push(...ON_DISTRESS);
	if (item.kind === "chart") lines.push(image === null ? "The picture is not kept; --image OUT.png keeps it." : `Picture: ${image}`);
	lines.push(figures(item));
	if (tuning !== null && item.kind !== "tone") lines.push(tuning.words); // of tones, together
	return lines.map((line, i) => (i === 0 ? line : `${INDENT}${line}`.trimEnd())).join("\n");
}

/** What and who, in a sentence or two. */
export function summaryOf(item: HeardItem): string {
	if (item.kind === "dsc") return `Selective call. ${item.summary}${item.times > 1 ? ` Sent ${item.times} times.` : ""}`;
	return item.kind === "chart" ? chartSummary(item) : item.summary;
}

function chartSummary(chart: Extract<HeardItem, { kind: "chart" }>): string {
	const { image, linesPerMinute, ioc, iocFrom, phaseFrom, began, ended, isComplete, clockPpm } = chart;
	const index = iocFrom === "start tone" ? `index of cooperation ${ioc}` : `index of cooperation ${ioc} (${iocFrom})`;
	const parts = [
		...(began === "mid-chart" ? ["joined in the middle"] : []),
		...(ended === "stop tone" ? [] : [ended === "end of stream" ? "the recording ends" : `ended by: ${ended}`]),
		...(phaseFrom === "nothing" ? ["the left edge is not known, the picture may be wrapped round"] : []),
	];
	const whole = isComplete && parts.length === 0 ? "whole" : `not whole: ${parts.join(", ")}`;
	const slant = `slant of ${Math.round(clockPpm)} parts in a million taken out`;
	return `Chart of ${image.height} lines, ${linesPerMinute} a minute, ${index}; ${whole}; ${slant}.`;
}

function figures(item: HeardItem): string {
	const { audioHz, uncertaintyHz, snrDb, startS, endS, sure } = item;
	const where = item.kind === "voice" ? "" : ` at ${audioHz.toFixed(1)} Hz (±${Math.max(0.1, uncertaintyHz).toFixed(1)}) in the audio,`;
	return `${capital(sure)};${where} S/N ${Math.round(snrDb)} dB in 2700 Hz, ${(endS - startS).toFixed(1)} s`;
}

function tonesText(tones: readonly Told[], clock: Clock): string {
	const items = tones.map(({ item }) => item as HeardTone & HeardItem);
	const loudest = items.toSorted((a, b) => b.snrDb - a.snrDb).slice(0, MOST_TONES);
	const leads = loudest[0]!.snrDb - loudest[1]!.snrDb >= LEAD_DB ? 1 : 0;
	const others = loudest.slice(leads).toSorted((a, b) => a.audioHz - b.audioHz);
	const shown = [...loudest.slice(0, leads), ...others].map(({ audioHz }) => audioHz.toFixed(1));
	const rest = items.length > shown.length ? ` and ${items.length - shown.length} weaker` : "";
	const longest = Math.max(...items.map(({ startS, endS }) => endS - startS));
	const best = Math.round(loudest[0]!.snrDb);
	const lines = [
		`${clock(items[0]!.startS)}  Tones of ${shown.join(", ")} Hz${rest}.`,
		`${INDENT}The strongest with S/N ${best} dB in 2700 Hz, up to ${longest.toFixed(1)} s`,
	];
	return lines.join("\n");
}

/** The calls of a set's own log. */
export function loggedText(calls: readonly LoggedCall[]): readonly string[] {
	return calls.map(({ line, summary, faults }) =>
		[`line ${String(line).padStart(4)} Selective call. ${summary}`, ...faults.map(({ message }) => `${INDENT}${message}`)].join("\n"),
	);
}

function capital(words: string): string {
	return words.charAt(0).toUpperCase() + words.slice(1);
}
