import { createFskDemodulator } from "../fsk/demodulate.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import type { HeardText } from "./heardText.ts";
import { createTextReader } from "./textReader.ts";
import { TEXT_BAUD, TEXT_SHIFT_HZ } from "./textSignal.ts";

/** Texts by collective FEC (mode B), wherever they lie in the audio: NAVTEX, safety texts, plain ones. */
export function createTextReceiver(): Receiver<HeardText> {
	const demodulator = createFskDemodulator({ baud: TEXT_BAUD, shiftHz: TEXT_SHIFT_HZ });
	const reader = createTextReader();
	let samplesTaken = 0;
	return {
		frame(samples) {
			samplesTaken += FRAME_SAMPLES;
			return reader.bits(demodulator.frame(samples), samplesTaken / MODEM_RATE_HZ);
		},
		end() {
			const endS = samplesTaken / MODEM_RATE_HZ;
			return [...reader.bits(demodulator.end(), endS), ...reader.end(endS)];
		},
	};
}
