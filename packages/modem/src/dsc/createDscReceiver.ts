import { createFskDemodulator } from "../fsk/demodulate.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import { createDscBits } from "./createDscBits.ts";
import { DSC_BAUD, DSC_SHIFT_HZ } from "./dscCall.ts";
import type { HeardDsc } from "./heardDsc.ts";

export interface DscReceiverOptions {
	/** Hz. Span in which the middle between the tones may lie. Default as the demodulator's. */
	readonly lowestHz?: number;
	readonly highestHz?: number;
}

/** Hears digital selective calls, wherever in the audio their tones lie, in either sense. */
export function createDscReceiver(options: DscReceiverOptions = {}): Receiver<HeardDsc> {
	const demodulator = createFskDemodulator({ baud: DSC_BAUD, shiftHz: DSC_SHIFT_HZ, ...options });
	const bits = createDscBits();
	let frames = 0;
	return {
		frame(samples) {
			frames++;
			return bits.take(demodulator.frame(samples), (frames * FRAME_SAMPLES) / MODEM_RATE_HZ);
		},
		end() {
			const heard = bits.take(demodulator.end(), (frames * FRAME_SAMPLES) / MODEM_RATE_HZ);
			return [...heard, ...bits.end()];
		},
	};
}
