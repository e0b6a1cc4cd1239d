/** Samples a second inside the modem: every input is brought to this rate first. Speech and all signals of a radiotelephone lie below 4 kHz. */
export const MODEM_RATE_HZ = 8_000;

/** Samples in each frame that a receiver is given: 32 ms. All frames have this length, so that blocks of any size give the same answer. */
export const FRAME_SAMPLES = 256;

/** What every item heard tells, whatever its kind. */
export interface HeardBase {
	/** Seconds from the start of the stream. */
	readonly startS: number;
	readonly endS: number;
	/** Hz. Where it lies in the audio: middle between the tones of a keyed signal, the tone itself, middle between black and white of a chart. */
	readonly audioHz: number;
	/** Hz, one sigma, of `audioHz`. */
	readonly uncertaintyHz: number;
	/** dB, power of the signal over power of the noise in 2700 Hz. */
	readonly snrDb: number;
}

/** A streaming receiver. It keeps no frame: the array is used again. */
export interface Receiver<Heard> {
	/** Takes the next `FRAME_SAMPLES` samples (full scale ±1) at `MODEM_RATE_HZ`; returns what is complete with it. */
	frame(samples: Float64Array): readonly Heard[];
	/** The stream ends; returns what was under way, as far as it can be told. */
	end(): readonly Heard[];
}
