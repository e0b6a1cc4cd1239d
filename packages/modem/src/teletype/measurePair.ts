import { atan2, cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";

/** Samples of a step, 2 ms: windows are looked at so often. */
const STEP_SAMPLES = 16,
	STEPS_PER_FRAME = FRAME_SAMPLES / STEP_SAMPLES;
/** Steps of half a window, between whose halves the phase is compared. A window is 20 ms, about an element whatever the speed. */
const STEPS_PER_HALF = 5;
/** Halves that a frame's windows have, each being the second of one and, a half later, the first of another. */
const HALVES = STEPS_PER_FRAME + STEPS_PER_HALF;

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
	const hzPerRadian = MODEM_RATE_HZ / (2 * Math.PI * STEPS_PER_HALF * STEP_SAMPLES);
	return {
		lowHz: lowHz + atan2(lowIm, lowRe) * hzPerRadian,
		highHz: highHz + atan2(highIm, highRe) * hzPerRadian,
		correlation: spread > 0 ? (count * sumLowHigh - sumLow * sumHigh) / spread : 0,
	};
}

/** Sums of a tone over half a window, one each step: those of a frame, and before them those that its first windows begin with. */
function createHalves(toneHz: number) {
	const turn = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	const [cosines, sines] = [new Float64Array(STEP_SAMPLES), new Float64Array(STEP_SAMPLES)];
	for (let i = 0; i < STEP_SAMPLES; i++) {
		cosines[i] = cos(turn * i);
		sines[i] = -sin(turn * i);
	}
	const [stepRe, stepIm] = [cos(turn * STEP_SAMPLES), -sin(turn * STEP_SAMPLES)];
	const oscillator = { re: 1, im: 0 };
	// sums of each step: those of the frame last
	const steps = { re: new Float64Array(HALVES + STEPS_PER_HALF - 1), im: new Float64Array(HALVES + STEPS_PER_HALF - 1) };
	const [re, im] = [new Float64Array(HALVES), new Float64Array(HALVES)];

	function sumSteps(samples: Float64Array): void {
		steps.re.copyWithin(0, STEPS_PER_FRAME);
		steps.im.copyWithin(0, STEPS_PER_FRAME);
		let oscRe = oscillator.re;
		let oscIm = oscillator.im;
		for (let at = 0, step = steps.re.length - STEPS_PER_FRAME; at < FRAME_SAMPLES; at += STEP_SAMPLES, step++) {
			// Even and odd apart: a sum has to wait for its own last term.
			let evenRe = 0;
			let evenIm = 0;
			let oddRe = 0;
			let oddIm = 0;
			for (let i = 0; i < STEP_SAMPLES; i += 2) {
				const even = samples[at + i]!;
				const odd = samples[at + i + 1]!;
				evenRe += even * cosines[i]!;
				evenIm += even * sines[i]!;
				oddRe += odd * cosines[i + 1]!;
				oddIm += odd * sines[i + 1]!;
			}
			const sumRe = evenRe + oddRe;
			const sumIm = evenIm + oddIm;
			steps.re[step] = sumRe * oscRe - sumIm * oscIm;
			steps.im[step] = sumRe * oscIm + sumIm * oscRe;
			const next = oscRe * stepRe - oscIm * stepIm;
			oscIm = oscRe * stepIm + oscIm * stepRe;
			oscRe = next;
		}
		const gain = 1.5 - 0.5 * (oscRe * oscRe + oscIm * oscIm); // one Newton step keeps the oscillator at length 1
		oscillator.re = oscRe * gain;
		oscillator.im = oscIm * gain;
	}
	return {
		re,
		im,
		frame(samples: Float64Array): void {
			sumSteps(samples);
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
