import type { SoftBits } from "../fsk/demodulate.ts";
import { type CollectiveReader, createCollectiveReader } from "./collectiveReader.ts";
import type { HeardText } from "./heardText.ts";
import { createMessageSplitter, LONGEST_HOLE_S, type MessageSplitter, type SplitText } from "./messageSplitter.ts";
import { TEXT_SHIFT_HZ } from "./textSignal.ts";
import { textSummary } from "./textSummary.ts";

/** Makes texts of what a demodulator for 100 baud and 170 Hz shift gives, carrier by carrier. */
export interface TextReader {
	/** Takes the bits given by `nowS`, seconds from the start of the stream. */
	bits(softs: readonly SoftBits[], nowS: number): readonly HeardText[];
	/** The stream ends at `endS`. */
	end(endS: number): readonly HeardText[];
}

/** A sender: what the demodulator gives of it may come as several carriers, where it fades. */
interface Sender {
	readonly splitter: MessageSplitter;
	reader: CollectiveReader;
	/** Number of the carrier; null once it is over. */
	carrier: number | null;
	centreHz: number;
	snrDb: number;
	/** Of its last bit. */
	lastS: number;
	/** When its last text ended. */
	textEndS: number;
}

/** Hz. A carrier that comes up so near to one that has just gone is the same sender. */
const SAME_SENDER_HZ = 20;
/** Hz. Within this of one shift away from a stronger sender, a weaker one is that sender's, read off the one tone which they share. */
const IMAGE_WITHIN_HZ = 30;
/** s. From the middle of a signal's first bit in the first copy to that of its last in the second, and half a bit more on either side. */
const COPIES_S = 0.41;
const HALF_BIT_S = 0.005;

export function createTextReader(): TextReader {
	let senders: Sender[] = [];

	function senderOf({ carrier, centreHz, snrDb }: SoftBits): Sender {
		const known = senders.find((sender) => sender.carrier === carrier);
		if (known !== undefined) return known;
		const reader = createCollectiveReader();
		const faded = senders.find((sender) => sender.carrier === null && Math.abs(sender.centreHz - centreHz) < SAME_SENDER_HZ);
		if (faded !== undefined) return Object.assign(faded, { carrier, reader });
		const sender = { splitter: createMessageSplitter(), reader, carrier, centreHz, snrDb, lastS: 0, textEndS: 0 };
		senders.push(sender);
		return sender;
	}

	function heardOf(sender: Sender, splits: readonly SplitText[], nowS: number): readonly HeardText[] {
		const texts = splits
			.map((split) => heard(split, nowS))
			.filter((text) => !senders.some((other) => other !== sender && isImage(text, other)));
		sender.textEndS = Math.max(sender.textEndS, ...texts.map(({ endS }) => endS));
		return texts;
	}

	function endOf(sender: Sender, nowS: number): readonly HeardText[] {
		const signals = sender.carrier === null ? [] : sender.reader.end();
		return heardOf(sender, [...signals.flatMap((signal) => sender.splitter.signal(signal)), ...sender.splitter.end(nowS)], nowS);
	}

	return {
		bits(softs, nowS) {
			const texts: HeardText[] = [];
			for (const soft of softs) {
				const sender = senderOf(soft);
				const { centreHz, uncertaintyHz, snrDb } = soft;
				Object.assign(sender, { centreHz, snrDb, lastS: soft.atS.at(-1) ?? sender.lastS });
				const signals = [...soft.softs].flatMap((llr, i) => sender.reader.bit(llr, { atS: soft.atS[i]!, centreHz, uncertaintyHz, snrDb }));
				if (soft.isOver) {
					signals.push(...sender.reader.end());
					sender.carrier = null;
				}
				const splits = signals.flatMap((signal) => sender.splitter.signal(signal));
				texts.push(...heardOf(sender, splits, nowS));
			}
			const gone = senders.filter(({ carrier, lastS }) => carrier === null && nowS - lastS > LONGEST_HOLE_S);
			texts.push(...gone.flatMap((sender) => endOf(sender, nowS)));
			if (gone.length > 0) senders = senders.filter((sender) => !gone.includes(sender));
			return texts;
		},
		end(endS) {
			const texts = senders.flatMap((sender) => endOf(sender, endS));
			senders = [];
			return texts;
		},
	};
}

/** Whether a text is another sender's, read off the tone that both carriers share. */
function isImage(text: HeardText, other: Sender): boolean {
	const isOneShiftAway = Math.abs(Math.abs(other.centreHz - text.audioHz) - TEXT_SHIFT_HZ) < IMAGE_WITHIN_HZ;
	const since = other.splitter.sinceS();
	return isOneShiftAway && other.snrDb > text.snrDb && ((since !== null && since < text.endS) || other.textEndS > text.startS);
}

function heard({ marks, ...split }: SplitText, nowS: number): HeardText {
	const surest = marks.reduce((best, mark) => (mark.uncertaintyHz < best.uncertaintyHz ? mark : best));
	const { text, identity, gaps, characters, lostCharacters, isInverted } = split;
	return {
		kind: "text",
		startS: Math.max(0, marks[0]!.atS - COPIES_S - HALF_BIT_S),
		endS: Math.min(nowS, marks.at(-1)!.atS + HALF_BIT_S),
		audioHz: surest.centreHz,
		uncertaintyHz: surest.uncertaintyHz,
		snrDb: marks.reduce((sum, mark) => sum + mark.snrDb, 0) / marks.length,
		text,
		identity,
		gaps,
		characters,
		lostCharacters,
		errorRatio: lostCharacters / characters,
		isInverted,
		summary: textSummary(split),
	};
}
