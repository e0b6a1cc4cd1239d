import { atan2 } from "@skipwright/units";
import { CELL_MASK, CELLS_PER_FRAME, CELLS_PER_SECOND, createToneCells } from "./toneCells.ts";

/** Cells of a window: 20 ms, about an element whatever the speed; and of its halves, between which the phase is compared. */
const HALF = 20;
/** Windows are looked at every 2 ms. */
const STEP = 4,
	STEPS_PER_HALF = HALF / STEP;
/** Halves that a frame's windows have, each being the second of one and, a half later, the first of another. */
const HALVES = CELLS_PER_FRAME / STEP + STEPS_PER_HALF;

export interface MeasuredPair {
	/** Hz, as the tones' phases turn: within 50 Hz of what was asked. */
	readonly lowHz: number;
	readonly highHz: number;
	/** Correlation of the two tones' powers: towards -1 where one goes when the other comes, 0 for noise, above for speech and Morse. */
	readonly correlation: number;
}

/** Looks at two tones of a stretch of frames: their exact frequencies, and whether they are keyed in turn. */
export function measurePair(frames: readonly Float64Array[], lowHz: number, highHz: number): MeasuredPair {
	const [low, high] = [createHalves(lowHz), createHalves(highHz)];
	let [count, sumLow, sumHigh, sumLowLow, sumHighHigh, sumLowHigh] = [0, 0, 0, 0, 0, 0];
	let [lowRe, lowIm, highRe, highIm] = [0, 0, 0, 0];
	for (const [i, frame] of frames.entries()) {
		low.frame(frame);
		high.frame(frame);
		if (i === 0) continue;
		for (let second = STEPS_PER_HALF; second < HALVES; second++) {
			const first = second - STEPS_PER_HALF;
			const lowRe1 = low.re[first]!;
			const lowIm1 = low.im[first]!;
			const lowRe2 = low.re[second]!;
			const lowIm2 = low.im[second]!;
			const highRe1 = high.re[first]!;
			const highIm1 = high.im[first]!;
			const highRe2 = high.re[second]!;
			const highIm2 = high.im[second]!;
			const lowPower = (lowRe1 + lowRe2) * (lowRe1 + lowRe2) + (lowIm1 + lowIm2) * (lowIm1 + lowIm2);
			const highPower = (highRe1 + highRe2) * (highRe1 + highRe2) + (highIm1 + highIm2) * (highIm1 + highIm2);
			count++;
			sumLow += lowPower;
			sumHigh += highPower;
			sumLowLow += lowPower * lowPower;
			sumHighHigh += highPower * highPower;
			sumLowHigh += lowPower * highPower;
			if (lowPower > highPower) {
				lowRe += lowRe2 * lowRe1 + lowIm2 * lowIm1;
				lowIm += lowIm2 * lowRe1 - lowRe2 * lowIm1;
			} else {
				highRe += highRe2 * highRe1 + highIm2 * highIm1;
				highIm += highIm2 * highRe1 - highRe2 * highIm1;
			}
		}
	}
	const spread = Math.sqrt((count * sumLowLow - sumLow * sumLow) * (count * sumHighHigh - sumHigh * sumHigh));
	const hzPerRadian = CELLS_PER_SECOND / (2 * Math.PI * HALF);
	return {
		lowHz: lowHz + atan2(lowIm, lowRe) * hzPerRadian,
		highHz: highHz + atan2(highIm, highRe) * hzPerRadian,
		correlation: spread > 0 ? (count * sumLowHigh - sumLow * sumHigh) / spread : 0,
	};
}

/** Sums of a tone over half a window, one each `STEP` cells: the last frame's, and before them those that the first windows begin with. */
function createHalves(toneHz: number) {
	const tone = createToneCells(toneHz);
	const steps = { re: new Float64Array(HALVES + STEPS_PER_HALF - 1), im: new Float64Array(HALVES + STEPS_PER_HALF - 1) };
	const [re, im] = [new Float64Array(HALVES), new Float64Array(HALVES)];
	let cells = 0;

	/** Sums of `STEP` cells, the last of them ending a step before the frame does. */
	function sumSteps(): void {
		for (let i = 0, cell = cells - STEP - steps.re.length * STEP; i < steps.re.length; i++) {
			let sumRe = 0;
			let sumIm = 0;
			for (let k = 0; k < STEP; k++, cell++) {
				sumRe += tone.re[cell & CELL_MASK]!;
				sumIm += tone.im[cell & CELL_MASK]!;
			}
			steps.re[i] = sumRe;
			steps.im[i] = sumIm;
		}
	}
	return {
		re,
		im,
		frame(samples: Float64Array): void {
			tone.frame(samples);
			cells += CELLS_PER_FRAME;
			sumSteps();
			for (let i = 0; i < HALVES; i++) {
				let sumRe = 0;
				let sumIm = 0;
				for (let k = i; k < i + STEPS_PER_HALF; k++) {
					sumRe += steps.re[k]!;
					sumIm += steps.im[k]!;
				}
				re[i] = sumRe;
				im[i] = sumIm;
			}
		},
	};
}
