import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { measurePair } from "../teletype/measurePair.ts";
import type { HeardTone } from "../tone/heardTone.ts";

/** Tells whether two tones are one signal that goes from one to the other. */
export interface KeyedInTurn {
	/** Takes the next frame. */
	frame(samples: Float64Array): void;
	/** Of the last seconds: whether one tone goes when the other comes. */
	isKeyed(a: HeardTone, b: HeardTone): boolean;
}

/** Frames kept, 6 s: a tone is told 1.5 s after it went. */
const KEPT_FRAMES = Math.round((6 * MODEM_RATE_HZ) / FRAME_SAMPLES);
/** Hz between the tones of a keyed pair. */
const SHIFT_HZ = { from: 70, to: 1_000 };
/** Correlation of the two tones' powers below which they are keyed in turn; noise, Morse and time signals lie about 0 and above. */
const MOST_CORRELATION = -0.3;

export function createKeyedInTurn(): KeyedInTurn {
	const kept: Float64Array[] = [];
	return {
		frame(samples) {
			const frame = kept.length < KEPT_FRAMES ? new Float64Array(FRAME_SAMPLES) : kept.shift()!;
			frame.set(samples);
			kept.push(frame);
		},
		isKeyed(a, b) {
			const shiftHz = Math.abs(a.audioHz - b.audioHz);
			if (shiftHz < SHIFT_HZ.from || shiftHz > SHIFT_HZ.to) return false;
			const [lowHz, highHz] = [Math.min(a.audioHz, b.audioHz), Math.max(a.audioHz, b.audioHz)];
			return measurePair(kept, lowHz, highHz).correlation < MOST_CORRELATION;
		},
	};
}
