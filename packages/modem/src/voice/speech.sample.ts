import { cos, sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { gaussian, prng } from "../signal/random.ts";

export interface SpeechOptions {
	readonly seconds: number;
	readonly seed: number;
	/** Hz by which all of it is moved: what a set off tune makes of it. Default 0. */
	readonly movedHz?: number;
	/** Upside down about 1500 Hz: the wrong sideband. */
	readonly isInverted?: boolean;
}

/**
 * For tests: what resembles speech on a sideband. Syllables by chance, each a glottal pitch that glides, its harmonics weighed by
 * two formants, some with a burst of hiss; pauses between words; 300 to 2700 Hz.
 */
export function speechLike({ seconds, seed, movedHz = 0, isInverted = false }: SpeechOptions): Float64Array {
	const random = prng(seed);
	const next = gaussian(random);
	const samples = new Float64Array(Math.round(seconds * MODEM_RATE_HZ));
	const speakerHz = 95 + 110 * random();
	let turns = 0;
	for (let start = 0; start < samples.length; ) {
		const length = Math.round((0.12 + 0.18 * random()) * MODEM_RATE_HZ);
		const [from, to] = [speakerHz * (0.85 + 0.4 * random()), speakerHz * (0.8 + 0.35 * random())];
		const [first, second] = [300 + 500 * random(), 900 + 1_500 * random()];
		const loud = 0.05 + 0.1 * random();
		for (let i = 0; i < length && start + i < samples.length; i++) {
			const pitchHz = from + ((to - from) * i) / length;
			turns += pitchHz / MODEM_RATE_HZ;
			const rise = sin((Math.PI * i) / length);
			for (let k = Math.ceil(300 / pitchHz); k * pitchHz < 2_700; k++) {
				const hz = k * pitchHz;
				const weight = peak(hz, first, 120) + 0.4 * peak(hz, second, 180) + 0.02;
				const here = isInverted ? (3_000 / MODEM_RATE_HZ) * (start + i) - k * turns : k * turns + (movedHz / MODEM_RATE_HZ) * (start + i);
				samples[start + i]! += loud * rise * weight * cos(2 * Math.PI * (here - Math.floor(here)));
			}
		}
		start += length;
		const hiss = random() < 0.3 ? Math.round(0.07 * MODEM_RATE_HZ) : 0;
		for (let i = 0; i < hiss && start + i < samples.length; i++) samples[start + i]! += 0.01 * next();
		start += hiss + Math.round((random() < 0.25 ? 0.25 + 0.3 * random() : 0.03) * MODEM_RATE_HZ);
	}
	return samples;
}

function peak(hz: number, at: number, width: number): number {
	return 1 / (1 + ((hz - at) / width) * ((hz - at) / width));
}
