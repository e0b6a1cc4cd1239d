import { createFskDemodulator } from "../fsk/demodulate.ts";
import { FRAME_SAMPLES, MODEM_RATE_HZ, type Receiver } from "../receiver.ts";
import type { HeardText } from "./heardText.ts";
import { createTextReader } from "./textReader.ts";

/** Baud and Hz of collective FEC, of NAVTEX and of all narrow-band direct printing. Source: ITU-R M.625-4, M.540-2. */
export const TEXT_BAUD = 100;
export const TEXT_SHIFT_HZ = 170;

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
