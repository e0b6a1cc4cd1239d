import {
	type ChannelChoice,
	createListener,
	createWavDecoder,
	type HeardItem,
	type HeardKind,
	type Listener,
	type LoggedCall,
	readDscLog,
} from "@skipwright/modem";
import type { Context } from "./context.ts";
import { readText, unreadable } from "./readText.ts";

/** What is in one file: a recording, or a set's log of its calls. */
export interface HeardFile {
	readonly file: string;
	/** An NMEA 0183 log; its `calls` are all there is. */
	readonly isLog: boolean;
	readonly calls: readonly LoggedCall[];
	/** In order of time. */
	readonly items: readonly HeardItem[];
	readonly seconds: number;
	readonly rateHz: number;
	readonly channels: number;
	/** Seconds that the header promises and the file lacks. */
	readonly missingS: number;
	/** Samples that were no numbers, taken as silence. */
	readonly badSamples: number;
}

export interface HearOptions {
	readonly kinds: readonly HeardKind[];
	readonly channel: ChannelChoice;
	/** Makes of each item what is kept of it. */
	readonly keep?: (item: HeardItem) => HeardItem;
}

/** Share of a long recording after which progress is told again, and seconds from which it is long. */
const PROGRESS = 0.1,
	LONG_S = 300;
/** Text of which a line is a talker's sentence, whatever stands before its `$`. */
const LOG = /^[^\0]*\$[A-Z]{5},[^\0]*$/;

/**
 * Everything that is heard in a file, read piece by piece; progress goes to standard error.
 * @throws UsageError when it is not there; BadSoundError (a BadInputError) when it is neither a recording nor a log
 */
export function hearFile(context: Context, file: string, { kinds, channel, keep = (item) => item }: HearOptions): HeardFile {
	const decoder = createWavDecoder(file, channel);
	const items: HeardItem[] = [];
	let listener: Listener | null = null;
	let [taken, told] = [0, PROGRESS];
	const parts = partsOf(context, file);
	for (const part of parts) {
		if (taken === 0 && isLog(part)) return loggedFile(context, file);
		taken += part.length;
		const samples = decoder.push(part);
		const format = decoder.format();
		if (format === null) continue;
		listener ??= createListener({ rateHz: format.rateHz, kinds });
		items.push(...listener.push(samples).map(keep));
		const share = format.samples === null ? 0 : (listener.takenS() * format.rateHz) / Math.max(1, format.samples);
		if (share < told || format.samples! < LONG_S * format.rateHz) continue;
		context.err(`listening to ${file}: ${Math.round(100 * share)} %\n`);
		told = share + PROGRESS;
	}
	const { format, samples, missing } = decoder.end();
	items.push(...(listener?.end() ?? []).map(keep));
	return {
		file,
		isLog: false,
		calls: [],
		items: items.sort((a, b) => a.startS - b.startS || a.audioHz - b.audioHz),
		seconds: samples / format.rateHz,
		rateHz: format.rateHz,
		channels: format.channels,
		missingS: missing / format.rateHz,
		badSamples: listener?.badSamples() ?? 0,
	};
}

function* partsOf(context: Context, file: string): Generator<Uint8Array> {
	const parts = context.readParts(file)[Symbol.iterator]();
	for (;;) {
		let next: IteratorResult<Uint8Array>;
		try {
			next = parts.next();
		} catch (error) {
			throw unreadable(file, error);
		}
		if (next.done === true) return;
		yield next.value;
	}
}

function isLog(part: Uint8Array): boolean {
	return LOG.test(new TextDecoder("latin1").decode(part));
}

function loggedFile(context: Context, file: string): HeardFile {
	const calls = readDscLog(readText(context, file));
	return { file, isLog: true, calls, items: [], seconds: 0, rateHz: 0, channels: 0, missingS: 0, badSamples: 0 };
}
