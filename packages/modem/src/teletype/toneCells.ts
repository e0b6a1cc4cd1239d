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
	// In an object and not in variables of the closure, which would be allocated anew at each change.
	const oscillator = { re: 1, im: 0, turnRe: 1, turnIm: 0, hz: 0 };
	let done = 0;
	const retune = (hz: number) => {
		const turn = (2 * Math.PI * hz) / MODEM_RATE_HZ;
		oscillator.turnRe = cos(turn);
		oscillator.turnIm = -sin(turn);
		oscillator.hz = hz;
	};
	retune(toneHz);
	return {
		re,
		im,
		frame(samples) {
			const { turnRe, turnIm } = oscillator;
			let oscRe = oscillator.re;
			let oscIm = oscillator.im;
			for (let at = 0; at < FRAME_SAMPLES; done++) {
				let sumRe = 0;
				let sumIm = 0;
				for (let end = at + CELL_SAMPLES; at < end; at++) {
					const sample = samples[at]!;
					sumRe += sample * oscRe;
					sumIm += sample * oscIm;
					const next = oscRe * turnRe - oscIm * turnIm;
					oscIm = oscRe * turnIm + oscIm * turnRe;
					oscRe = next;
				}
				re[done & CELL_MASK] = sumRe;
				im[done & CELL_MASK] = sumIm;
			}
			const gain = 1.5 - 0.5 * (oscRe * oscRe + oscIm * oscIm); // one Newton step keeps the oscillator at length 1
			oscillator.re = oscRe * gain;
			oscillator.im = oscIm * gain;
		},
		toneHz: () => oscillator.hz,
		retune,
	};
}
