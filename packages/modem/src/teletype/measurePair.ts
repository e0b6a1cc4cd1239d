import { atan2 } from "@skipwright/units";
import { CELL_MASK, CELLS_PER_FRAME, CELLS_PER_SECOND, createToneCells, type ToneCells } from "./toneCells.ts";

/** Cells of a window: 20 ms, about an element whatever the speed; and of its halves, between which the phase is compared. */
const HALF = 20;
/** Windows are looked at every 2 ms. */
const STEP = 4;

export interface MeasuredPair {
	/** Hz, as the tones' phases turn: within 50 Hz of what was asked. */
	readonly lowHz: number;
	readonly highHz: number;
	/** Correlation of the two tones' powers: towards -1 where one goes when the other comes, 0 for noise, above for speech and Morse. */
	readonly correlation: number;
}

/** Looks at two tones of a stretch of frames: their exact frequencies, and whether they are keyed in turn. */
export function measurePair(frames: readonly Float64Array[], lowHz: number, highHz: number): MeasuredPair {
	const [low, high] = [createToneCells(lowHz), createToneCells(highHz)];
	const turning = { low: [0, 0] as [number, number], high: [0, 0] as [number, number] };
	let [count, sumLow, sumHigh, sumLowLow, sumHighHigh, sumLowHigh] = [0, 0, 0, 0, 0, 0];
	for (const [i, frame] of frames.entries()) {
		low.frame(frame);
		high.frame(frame);
		if (i === 0) continue;
		for (let end = i * CELLS_PER_FRAME; end < (i + 1) * CELLS_PER_FRAME; end += STEP) {
			const [a, b] = [halves(low, end), halves(high, end)];
			count++;
			sumLow += a.power;
			sumHigh += b.power;
			sumLowLow += a.power * a.power;
			sumHighHigh += b.power * b.power;
			sumLowHigh += a.power * b.power;
			const [leading, turned] = a.power > b.power ? [turning.low, a] : [turning.high, b];
			leading[0] += turned.re;
			leading[1] += turned.im;
		}
	}
	const spread = Math.sqrt((count * sumLowLow - sumLow * sumLow) * (count * sumHighHigh - sumHigh * sumHigh));
	const hzPerRadian = CELLS_PER_SECOND / (2 * Math.PI * HALF);
	return {
		lowHz: lowHz + atan2(turning.low[1], turning.low[0]) * hzPerRadian,
		highHz: highHz + atan2(turning.high[1], turning.high[0]) * hzPerRadian,
		correlation: spread > 0 ? (count * sumLowHigh - sumLow * sumHigh) / spread : 0,
	};
}

/** Power of the window that ends before the cell, and its second half times the conjugate of its first. */
function halves({ re, im }: ToneCells, end: number): { readonly power: number; readonly re: number; readonly im: number } {
	let [re1, im1, re2, im2] = [0, 0, 0, 0];
	for (let cell = end - 2 * HALF; cell < end - HALF; cell++) {
		re1 += re[cell & CELL_MASK]!;
		im1 += im[cell & CELL_MASK]!;
		re2 += re[(cell + HALF) & CELL_MASK]!;
		im2 += im[(cell + HALF) & CELL_MASK]!;
	}
	const [sumRe, sumIm] = [re1 + re2, im1 + im2];
	return { power: sumRe * sumRe + sumIm * sumIm, re: re2 * re1 + im2 * im1, im: im2 * re1 - re2 * im1 };
}
