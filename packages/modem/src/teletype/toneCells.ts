import { cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";

/** Samples that are summed at a time: half a millisecond, a fortieth of an element at 50 baud. */
export const CELL_SAMPLES = 4;
export const CELLS_PER_FRAME: number = FRAME_SAMPLES / CELL_SAMPLES;
export const CELLS_PER_SECOND: number = MODEM_RATE_HZ / CELL_SAMPLES;
/** Cells kept, 2 s: a power of two, so that cell n lies at n & CELL_MASK. */
export const CELLS_KEPT = 4_096;
export const CELL_MASK: number = CELLS_KEPT - 1;

/** Sums against one tone, cell by cell: the last `CELLS_KEPT` of them. */
export interface ToneCells {
	readonly re: Float64Array;
	readonly im: Float64Array;
	frame(samples: Float64Array): void;
	/** Hz, of the oscillator. */
	toneHz(): number;
	/** Goes on at another frequency, without a jump of phase. */
	retune(toneHz: number): void;
}

/** Multiplies frames with an oscillator and sums each cell. */
export function createToneCells(toneHz: number): ToneCells {
	const re = new Float64Array(CELLS_KEPT);
	const im = new Float64Array(CELLS_KEPT);
	// In an object and not in variables of the closure, which would be allocated anew at each change. Turns of 1 to 4 samples.
	const oscillator = { re: 1, im: 0, re1: 1, im1: 0, re2: 1, im2: 0, re3: 1, im3: 0, re4: 1, im4: 0, hz: 0 };
	let done = 0;
	const retune = (hz: number) => {
		const turn = (2 * Math.PI * hz) / MODEM_RATE_HZ;
		[oscillator.re1, oscillator.im1] = [cos(turn), -sin(turn)];
		[oscillator.re2, oscillator.im2] = [cos(2 * turn), -sin(2 * turn)];
		[oscillator.re3, oscillator.im3] = [cos(3 * turn), -sin(3 * turn)];
		[oscillator.re4, oscillator.im4] = [cos(4 * turn), -sin(4 * turn)];
		oscillator.hz = hz;
	};
	retune(toneHz);
	return {
		re,
		im,
		frame(samples) {
			const { re1, im1, re2, im2, re3, im3, re4, im4 } = oscillator;
			let oscRe = oscillator.re;
			let oscIm = oscillator.im;
			// The oscillator goes on by a cell at a time, and within it the samples are turned by what is known beforehand.
			for (let at = 0; at < FRAME_SAMPLES; at += CELL_SAMPLES, done++) {
				const a = samples[at]!;
				const b = samples[at + 1]!;
				const c = samples[at + 2]!;
				const d = samples[at + 3]!;
				const sumRe = a + b * re1 + (c * re2 + d * re3);
				const sumIm = b * im1 + (c * im2 + d * im3);
				re[done & CELL_MASK] = sumRe * oscRe - sumIm * oscIm;
				im[done & CELL_MASK] = sumRe * oscIm + sumIm * oscRe;
				const next = oscRe * re4 - oscIm * im4;
				oscIm = oscRe * im4 + oscIm * re4;
				oscRe = next;
			}
			const gain = 1.5 - 0.5 * (oscRe * oscRe + oscIm * oscIm); // one Newton step keeps the oscillator at length 1
			oscillator.re = oscRe * gain;
			oscillator.im = oscIm * gain;
		},
		toneHz: () => oscillator.hz,
		retune,
	};
}
