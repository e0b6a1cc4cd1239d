import { cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";

/** Seconds of a frame. */
export const FRAME_S: number = FRAME_SAMPLES / MODEM_RATE_HZ;

/** The sums of frame after frame against an oscillator at `toneHz`: what is left of the tone is a slow turn. */
export interface ToneTrack {
	readonly toneHz: number;
	/** Index of the first frame. */
	readonly firstFrame: number;
	readonly re: number[];
	readonly im: number[];
	frame(samples: Float64Array): void;
}

export function createToneTrack(toneHz: number, firstFrame: number): ToneTrack {
	const turn = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	const [turnRe, turnIm] = [cos(turn), -sin(turn)];
	const oscillator = { re: 1, im: 0 };
	const re: number[] = [];
	const im: number[] = [];
	return {
		toneHz,
		firstFrame,
		re,
		im,
		frame(samples) {
			let { re: oscRe, im: oscIm } = oscillator;
			let sumRe = 0;
			let sumIm = 0;
			for (let i = 0; i < FRAME_SAMPLES; i++) {
				const sample = samples[i]!;
				sumRe += sample * oscRe;
				sumIm += sample * oscIm;
				const next = oscRe * turnRe - oscIm * turnIm;
				oscIm = oscRe * turnIm + oscIm * turnRe;
				oscRe = next;
			}
			re.push(sumRe);
			im.push(sumIm);
			const gain = 1.5 - 0.5 * (oscRe * oscRe + oscIm * oscIm); // one Newton step keeps the oscillator at length 1
			oscillator.re = oscRe * gain;
			oscillator.im = oscIm * gain;
		},
	};
}
