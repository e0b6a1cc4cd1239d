import type { SoftBits } from "../fsk/demodulate.ts";
import { type CollectiveReader, createCollectiveReader } from "./collectiveReader.ts";
import type { HeardText } from "./heardText.ts";
import { createMessageSplitter, LONGEST_HOLE_S, type MessageSplitter, type SplitText } from "./messageSplitter.ts";
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
	/** Of its last bit. */
	lastS: number;
}

/** Hz. A carrier that comes up so near to one that has just gone is the same sender. */
const SAME_SENDER_HZ = 20;
/** s. From the middle of a signal's first bit in the first copy to that of its last in the second, and half a bit more on either side. */
const COPIES_S = 0.41;
const HALF_BIT_S = 0.005;

export function createTextReader(): TextReader {
	let senders: Sender[] = [];

	function senderOf({ carrier, centreHz }: SoftBits): Sender {
		const known = senders.find((sender) => sender.carrier === carrier);
		if (known !== undefined) return known;
		const reader = createCollectiveReader();
		const faded = senders.find((sender) => sender.carrier === null && Math.abs(sender.centreHz - centreHz) < SAME_SENDER_HZ);
		if (faded !== undefined) return Object.assign(faded, { carrier, reader });
		const sender = { splitter: createMessageSplitter(), reader, carrier, centreHz, lastS: 0 };
		senders.push(sender);
		return sender;
	}

	function endOf({ carrier, reader, splitter }: Sender, nowS: number): readonly SplitText[] {
		const signals = carrier === null ? [] : reader.end();
		return [...signals.flatMap((signal) => splitter.signal(signal)), ...splitter.end(nowS)];
	}

	return {
		bits(softs, nowS) {
			const texts: SplitText[] = [];
			for (const soft of softs) {
				const sender = senderOf(soft);
				const { centreHz, uncertaintyHz, snrDb } = soft;
				const signals = [...soft.softs].flatMap((llr, i) => sender.reader.bit(llr, { atS: soft.atS[i]!, centreHz, uncertaintyHz, snrDb }));
				if (soft.isOver) signals.push(...sender.reader.end());
				texts.push(...signals.flatMap((signal) => sender.splitter.signal(signal)));
				sender.centreHz = centreHz;
				sender.lastS = soft.atS.at(-1) ?? sender.lastS;
				if (soft.isOver) sender.carrier = null;
			}
			const gone = senders.filter(({ carrier, lastS }) => carrier === null && nowS - lastS > LONGEST_HOLE_S);
			texts.push(...gone.flatMap((sender) => endOf(sender, nowS)));
			senders = senders.filter((sender) => !gone.includes(sender));
			return texts.map((text) => heard(text, nowS));
		},
		end(endS) {
			const texts = senders.flatMap((sender) => endOf(sender, endS));
			senders = [];
			return texts.map((text) => heard(text, endS));
		},
	};
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
