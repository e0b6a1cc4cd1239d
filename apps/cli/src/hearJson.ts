import type { HeardKind, LoggedCall, Tuning } from "@skipwright/modem";
import { summaryOf, type Told } from "./hearText.ts";
import { isToAll } from "./secrecy.ts";

export interface HeardContext {
	/** Milliseconds of UTC; null where the start of the recording is not known. */
	readonly startedMs: number | null;
	/** A listing or a dial was given, so that there is something to judge by. */
	readonly isJudged: boolean;
	/** Kind that is a broadcast to all by the listing given. */
	readonly kindToAll: HeardKind | null;
}

/** A heard item as contracts of hearing have it, and more keys than those named there. */
export function heardJson(file: string, { item, tuning, image }: Told, { startedMs, isJudged, kindToAll }: HeardContext): object {
	const { kind, startS, endS, audioHz, uncertaintyHz, snrDb, sure } = item;
	return {
		file,
		kind,
		startS: rounded(startS),
		endS: rounded(endS),
		...(startedMs === null ? {} : { startUtc: new Date(startedMs + Math.round(1_000 * startS)).toISOString() }),
		offsetHz: tuning?.offsetHz == null ? null : rounded(tuning.offsetHz),
		uncertaintyHz: rounded(tuning?.uncertaintyHz ?? uncertaintyHz),
		snrDb: rounded(snrDb),
		audioHz: rounded(audioHz),
		sure,
		isToAll: isToAll(item, kindToAll),
		...ownKeys(item, image),
		summary: summaryOf(item),
		...(tuning === null || !isJudged ? {} : { tuning: tuningKeys(tuning) }),
	};
}

function tuningKeys({ verdict, slip, steps, rightDialHz, words }: Tuning): object {
	return { verdict, slip, steps, rightDialHz, words };
}

function ownKeys(item: Told["item"], image: string | null): object {
	switch (item.kind) {
		case "dsc": {
			const { symbols, ecc, ok, from, to, faults, isInverted, corrected, times } = item;
			return { symbols, ecc, ok, from, to, faults, isInverted, corrected, times };
		}
		case "text": {
			const { text, identity, gaps, characters, lostCharacters, errorRatio, isInverted } = item;
			return { text, identity, gaps, characters, lostCharacters, errorRatio, isInverted };
		}
		case "teletype": {
			const { text, baud, shiftHz, sense, characters, lostCharacters, errorRatio, part, continues } = item;
			return { text, baud, shiftHz: rounded(shiftHz), sense, characters, lostCharacters, errorRatio, part, continues };
		}
		case "chart": {
			const { image: picture, ioc, iocFrom, linesPerMinute, phaseFrom, began, ended, isComplete, clockPpm, blackHz, whiteHz } = item;
			const size = { lines: picture.height, width: picture.width, image };
			const levels = { clockPpm: rounded(clockPpm), blackHz: rounded(blackHz), whiteHz: rounded(whiteHz) };
			return { ...size, ioc, iocFrom, linesPerMinute, phaseFrom, began, ended, isComplete, ...levels };
		}
		case "tone":
			return { onRatio: rounded(item.onRatio) };
		case "voice":
			return { lowHz: rounded(item.lowHz), highHz: rounded(item.highHz), isOutOfPlace: item.isOutOfPlace };
	}
}

/** A call of a set's own log in the same form: what a log does not tell is null. */
export function loggedJson(file: string, { line, stamp, call, ok, faults, summary }: LoggedCall): object {
	const nothing = { startS: null, endS: null, offsetHz: null, uncertaintyHz: null, snrDb: null, symbols: null, ecc: null };
	const distress = call?.distress ?? null;
	const message = call?.message?.kind === "position" ? call.message : null;
	const { position = null, time = null } = distress ?? message ?? {};
	const told = { position, timeUtc: time, nature: distress?.nature ?? null, isToAll: isToAll(call) };
	return { file, kind: "dsc", ...nothing, ...told, ok, from: call?.from ?? null, to: call?.to ?? null, summary, faults, line, stamp };
}

function rounded(value: number): number {
	return Math.round(1_000 * value) / 1_000;
}
