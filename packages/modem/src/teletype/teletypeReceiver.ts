import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { createPairFinder, type TonePair } from "./findPairs.ts";
import type { HeardTeletype } from "./heardTeletype.ts";
import { measurePair } from "./measurePair.ts";
import { createPairListener, type PairListener } from "./pairListener.ts";
import { createTransmission, type Transmission } from "./transmission.ts";

/** Frames kept, 8 s: what was sent before the receiver was sure is read again from here. */
const KEPT_FRAMES = 250;
/** Pairs that are read at a time, and that are looked at each second. */
const MOST_LISTENERS = 2,
	MOST_LOOKS = 3;
/** Correlation of the tones' powers above which they are not keyed in turn. */
const LEAST_KEYED = -0.2;
/** Hz within which a pair is the same. */
const SAME_HZ = 25;
/** Blocks of a second for which a pair that was refused is left alone, and after which one that is gone is given up. */
const REFUSED_BLOCKS = 4,
	GONE_BLOCKS = 8;
/** Largest sample that is believed. Full scale is 1. */
const LARGEST = 100;

interface Listening {
	readonly listener: PairListener;
	/** Of its first frame. */
	readonly startS: number;
	readonly noisePower: number;
	/** Block in which its pair last stood out. */
	readonly seenBlock: number;
}

/**
 * Start-stop teletype in the five-unit alphabet at 45.45, 50 or 75 baud: tones, speed and sense are found from the signal, the
 * text only counts once its starts and stops have proved themselves, and is then read from its beginning. One transmission at a time.
 */
export function createTeletypeReceiver(): Receiver<HeardTeletype> {
	const finder = createPairFinder();
	const kept: Float64Array[] = [];
	let frames = 0;
	let blocks = 0;
	let listeners: Listening[] = [];
	let refused: { readonly pair: TonePair; readonly block: number }[] = [];
	let transmission: Transmission | null = null;
	/** About the transmission's tones. */
	let noisePower = 0;

	/** The frame, held to what is believable, kept for later. */
	function keep(samples: Float64Array): Float64Array {
		const frame = kept.length < KEPT_FRAMES ? new Float64Array(FRAME_SAMPLES) : kept.shift()!;
		for (let i = 0; i < FRAME_SAMPLES; i++) {
			const sample = samples[i]!;
			frame[i] = sample > LARGEST ? LARGEST : Math.max(sample, -LARGEST);
		}
		kept.push(frame);
		frames++;
		return frame;
	}

	/** Strongest pairs first; one that shares a tone with a stronger one is made of its sidebands. */
	function reviseListeners(): void {
		const before = listeners;
		listeners = [];
		refused = refused.filter(({ block }) => blocks - block < REFUSED_BLOCKS);
		let looks = 0;
		for (const pair of finder.pairs()) {
			if (listeners.length === MOST_LISTENERS) return;
			if (listeners.some(({ listener }) => sharesTone(pair, listener.pair))) continue;
			const old = before.find(({ listener }) => isSame(pair, listener.pair));
			if (old !== undefined) listeners.push({ ...old, noisePower: finder.noisePower(pair), seenBlock: blocks });
			else if (looks < MOST_LOOKS && !refused.some((one) => isSame(pair, one.pair))) {
				looks++;
				const listener = listenTo(pair);
				if (listener === null) refused.push({ pair, block: blocks });
				else listeners.push(listener);
			}
		}
		for (const old of before) {
			const isGone = blocks - old.seenBlock >= GONE_BLOCKS;
			const isTaken = listeners.some(({ listener }) => sharesTone(old.listener.pair, listener.pair));
			if (!isGone && !isTaken && listeners.length < MOST_LISTENERS) listeners.push(old);
		}
	}

	/** Null where the tones are not keyed in turn. */
	function listenTo(pair: TonePair): Listening | null {
		const measured = measurePair(kept, pair.lowHz, pair.highHz);
		if (measured.correlation > LEAST_KEYED || !isSame(measured, pair)) return null;
		const listener = createPairListener(measured);
		const noisePower = finder.noisePower(measured);
		for (const frame of kept) listener.frame(frame, noisePower);
		return { listener, startS: secondsOf(frames - kept.length), noisePower, seenBlock: blocks };
	}

	function proved(): Transmission | null {
		for (const { listener, startS, noisePower: known } of listeners) {
			const reading = listener.proved();
			if (reading === null) continue;
			listeners = [];
			noisePower = known;
			return createTransmission(listener, reading, startS);
		}
		return null;
	}

	return {
		frame(samples) {
			const frame = keep(samples);
			const isBlock = finder.frame(frame);
			if (isBlock) blocks++;
			if (transmission === null) {
				for (const one of listeners) one.listener.frame(frame, one.noisePower);
				if (isBlock) reviseListeners();
				transmission = proved();
				return [];
			}
			if (isBlock) noisePower = finder.noisePower(transmission.pair());
			const items = transmission.frame(frame, noisePower);
			if (!transmission.isOver()) return items;
			const last = transmission.end();
			kept.splice(0, kept.length - transmission.restFrames()); // another may have begun since
			transmission = null;
			return [...items, ...last];
		},
		end() {
			const silence = new Float64Array(FRAME_SAMPLES);
			if (transmission === null) {
				reviseListeners();
				for (const { listener, noisePower: known } of listeners) {
					listener.frame(silence, known);
					listener.finish();
				}
				transmission = proved();
			} else transmission.frame(silence, noisePower);
			return transmission?.end() ?? [];
		},
	};
}

function isSame(a: TonePair, b: TonePair): boolean {
	return Math.abs(a.lowHz - b.lowHz) < SAME_HZ && Math.abs(a.highHz - b.highHz) < SAME_HZ;
}

function sharesTone(a: TonePair, b: TonePair): boolean {
	return [a.lowHz, a.highHz].some((hz) => Math.abs(hz - b.lowHz) < SAME_HZ || Math.abs(hz - b.highHz) < SAME_HZ);
}

function secondsOf(frames: number): number {
	return (frames * FRAME_SAMPLES) / MODEM_RATE_HZ;
}
