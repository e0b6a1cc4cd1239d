import { type ChartUnderWay, createChartReceiver } from "../chart/chartReceiver.ts";
import { createDscBits } from "../dsc/createDscBits.ts";
import { DSC_BAUD, DSC_SHIFT_HZ } from "../dsc/dscCall.ts";
import { createFskDemodulator } from "../fsk/demodulate.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { createResampler } from "../signal/resample.ts";
import { createTeletypeReceiver } from "../teletype/teletypeReceiver.ts";
import { createTextReader } from "../text/textReader.ts";
import { createToneReceiver } from "../tone/toneReceiver.ts";
import { createVoiceReceiver } from "../voice/voiceReceiver.ts";
import { HEARD_KINDS, type Heard, type HeardKind } from "./heard.ts";
import { createKeyedInTurn } from "./keyedInTurn.ts";
import { createSettling } from "./settling.ts";
import { type Sureness, surenessOf } from "./sureness.ts";

/** What was heard, and how sure that is. */
export type HeardItem = Heard & { readonly sure: Sureness };

export interface ListenerOptions {
	/** Hz, samples a second of what is pushed, a whole number from 7000 to 192000. Default `MODEM_RATE_HZ`. */
	readonly rateHz?: number;
	/** What to listen for. Default all. What is not listened for claims nothing either: with tones alone, a keyed signal may sound as tones. */
	readonly kinds?: readonly HeardKind[];
	/** Seconds, see `createChartReceiver`. */
	readonly longestChartS?: number;
}

/** Listens for everything at once. */
export interface Listener {
	/** Takes samples as they come, any number, full scale ±1; returns what is settled with them, in order of its start. */
	push(samples: ArrayLike<number>): readonly HeardItem[];
	/** The stream ends; returns the rest. */
	end(): readonly HeardItem[];
	/** The chart now coming in, for a live view; see `ChartReceiver.underWay`. */
	chartUnderWay(): ChartUnderWay | null;
	/** Seconds taken so far. */
	takenS(): number;
	/** See `Resampler.badSamples`. */
	badSamples(): number;
}

/**
 * All receivers over one stream. A call, a text, a chart or a teletype is told as soon as it is complete; tones and voices wait until it is
 * known whether they belong to one of these. The same items whatever the sizes of the blocks; memory does not grow with the stream.
 */
export function createListener({ rateHz = MODEM_RATE_HZ, kinds = HEARD_KINDS, longestChartS }: ListenerOptions = {}): Listener {
	const resampler = createResampler(rateHz);
	const chart = kinds.includes("chart") ? createChartReceiver(longestChartS) : null;
	const receivers: readonly Receiver<Heard>[] = [
		...(kinds.includes("dsc") || kinds.includes("text") ? [createKeyedReceiver(kinds)] : []),
		...(chart === null ? [] : [chart]),
		...(kinds.includes("teletype") ? [createTeletypeReceiver()] : []),
		...(kinds.includes("tone") ? [createToneReceiver()] : []),
		...(kinds.includes("voice") ? [createVoiceReceiver()] : []),
	];
	const inTurn = createKeyedInTurn();
	const settling = createSettling(inTurn);
	let [frames, samplesTaken] = [0, 0];

	function settled(heard: readonly Heard[], nowS: number): readonly HeardItem[] {
		return settling.take(heard, nowS, chart?.underWay() != null).map(withSureness);
	}
	function frame(samples: Float64Array): readonly HeardItem[] {
		frames++;
		inTurn.frame(samples);
		const heard = receivers.flatMap((receiver) => receiver.frame(samples));
		return settled(heard, (frames * FRAME_SAMPLES) / MODEM_RATE_HZ);
	}

	return {
		push(samples) {
			samplesTaken += samples.length;
			return resampler.push(samples).flatMap(frame);
		},
		end() {
			const last = resampler.end().flatMap(frame);
			const heard = receivers.flatMap((receiver) => receiver.end());
			const endS = samplesTaken / rateHz;
			const rest = [...settled(heard, endS), ...settling.end().map(withSureness)];
			return [...last, ...rest].map((item) => (item.endS > endS ? { ...item, endS } : item)).sort(byStart);
		},
		chartUnderWay: () => chart?.underWay() ?? null,
		takenS: () => samplesTaken / rateHz,
		badSamples: () => resampler.badSamples(),
	};
}

function withSureness(heard: Heard): HeardItem {
	return { ...heard, sure: surenessOf(heard) };
}

function byStart(a: Heard, b: Heard): number {
	return a.startS - b.startS || a.audioHz - b.audioHz;
}

/** Calls and texts come by the same tones at the same speed: one demodulator for both. */
function createKeyedReceiver(kinds: readonly HeardKind[]): Receiver<Heard> {
	const demodulator = createFskDemodulator({ baud: DSC_BAUD, shiftHz: DSC_SHIFT_HZ });
	const calls = kinds.includes("dsc") ? createDscBits() : null;
	const texts = kinds.includes("text") ? createTextReader() : null;
	let frames = 0;
	return {
		frame(samples) {
			frames++;
			const bits = demodulator.frame(samples);
			const nowS = (frames * FRAME_SAMPLES) / MODEM_RATE_HZ;
			return [...(calls?.take(bits, nowS) ?? []), ...(texts?.bits(bits, nowS) ?? [])];
		},
		end() {
			const bits = demodulator.end();
			const endS = (frames * FRAME_SAMPLES) / MODEM_RATE_HZ;
			const heard = [...(calls?.take(bits, endS) ?? []), ...(texts?.bits(bits, endS) ?? [])];
			return [...heard, ...(calls?.end() ?? []), ...(texts?.end(endS) ?? [])];
		},
	};
}
