import { cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { lowPassKernel } from "../signal/kernel.ts";
import { phaseAngle } from "./phaseAngle.ts";

/**
 * Hz from the middle: edges of the filter before the discriminator, for strong, fair and weak signals. A wide one keeps fine lines,
 * a narrow one keeps noise out, below some 12 dB (in 2700 Hz) where a discriminator's threshold lies. A made chart came out best so.
 * All have one transition's width, so one delay: a change of filter leaves no seam.
 */
const FILTERS = {
	wide: { passHz: 1_500, stopHz: 1_800 },
	middle: { passHz: 800, stopHz: 1_100 },
	narrow: { passHz: 600, stopHz: 900 },
} as const;

export type FilterName = keyof typeof FILTERS;

const REJECTION_DB = 40;
/** Samples larger than this many times their mean size are cut down to it: a steady tone's peak is pi / 2, so only clicks are meant. */
const LARGEST = 3;
/** Share of a new sample in the running mean of sizes: 25 ms. */
const LEVEL_GAIN = 0.005;
/** Mean size below which the next frame sets it anew. */
const SILENCE = 1e-9;
const HZ_PER_RADIAN = MODEM_RATE_HZ / (2 * Math.PI);

const WEIGHTS = { wide: weightsOf("wide"), middle: weightsOf("middle"), narrow: weightsOf("narrow") };

function weightsOf(filter: FilterName): Float64Array {
	const { table, taps } = lowPassKernel({ rateHz: MODEM_RATE_HZ, rejectionDb: REJECTION_DB, ...FILTERS[filter] }, 1);
	return table.slice(0, taps);
}

/** Samples: entry n of a frame's answer is the mean frequency from sample n less this to the one after it. */
export const DISCRIMINATOR_DELAY = WEIGHTS.middle.length / 2 + 1;

/** Frequency of an FM signal, sample by sample. */
export interface Discriminator {
	/** Puts the mean frequency (Hz) from each sample to the next into `outHz`, `DISCRIMINATOR_DELAY` samples late. */
	frame(samples: Float64Array, outHz: Float64Array): Levels;
	/** Hz of white noise that the filter lets through. */
	readonly noiseBandwidthHz: number;
}

/** Power of the filtered signal, in the mean over a frame, and mean of its square: together they tell a steady signal from noise. */
export interface Levels {
	readonly power: number;
	readonly powerSquared: number;
}

/** Shifts the middle to 0 Hz, filters, and takes the phase from each sample to the next. */
export function createDiscriminator(centreHz: number, width: FilterName): Discriminator {
	const weights = WEIGHTS[width];
	const taps = weights.length;
	const inPhase = new Float64Array(taps + FRAME_SAMPLES);
	const quadrature = new Float64Array(taps + FRAME_SAMPLES);
	const filteredI = new Float64Array(FRAME_SAMPLES);
	const filteredQ = new Float64Array(FRAME_SAMPLES);
	const turn = (2 * Math.PI * centreHz) / MODEM_RATE_HZ;
	const [stepI, stepQ] = [cos(turn), -sin(turn)];
	let [taken, size, lastI, lastQ] = [0, 0, 0, 0];

	function mix(samples: Float64Array): void {
		if (size < SILENCE) size = samples.reduce((sum, sample) => sum + Math.abs(sample), 0) / FRAME_SAMPLES;
		inPhase.copyWithin(0, FRAME_SAMPLES);
		quadrature.copyWithin(0, FRAME_SAMPLES);
		const turns = (taken * centreHz) / MODEM_RATE_HZ;
		const angle = 2 * Math.PI * (turns - Math.floor(turns));
		let [i, q] = [cos(angle), -sin(angle)];
		for (let n = 0; n < FRAME_SAMPLES; n++) {
			const sample = samples[n]!;
			size += (Math.min(Math.abs(sample), 4 * size) - size) * LEVEL_GAIN;
			const limited = Math.max(-LARGEST * size, Math.min(LARGEST * size, sample));
			inPhase[taps + n] = limited * i;
			quadrature[taps + n] = limited * q;
			const next = i * stepI - q * stepQ;
			q = i * stepQ + q * stepI;
			i = next;
		}
		taken += FRAME_SAMPLES;
	}
	return {
		noiseBandwidthHz: MODEM_RATE_HZ * weights.reduce((sum, weight) => sum + weight * weight, 0),
		frame(samples, outHz) {
			mix(samples);
			filterInto(filteredI, inPhase, weights);
			filterInto(filteredQ, quadrature, weights);
			let [power, powerSquared] = [0, 0];
			for (let n = 0; n < FRAME_SAMPLES; n++) {
				const i = filteredI[n]!;
				const q = filteredQ[n]!;
				const square = i * i + q * q;
				power += square;
				powerSquared += square * square;
				outHz[n] = centreHz + HZ_PER_RADIAN * phaseAngle(q * lastI - i * lastQ, i * lastI + q * lastQ);
				lastI = i;
				lastQ = q;
			}
			return { power: power / FRAME_SAMPLES, powerSquared: powerSquared / FRAME_SAMPLES };
		},
	};
}

/** Four samples at a time, so that each coefficient and each sample is fetched once for all of them. */
function filterInto(filtered: Float64Array, samples: Float64Array, weights: Float64Array): void {
	for (let n = 0; n < FRAME_SAMPLES; n += 4) {
		let sum0 = 0;
		let sum1 = 0;
		let sum2 = 0;
		let sum3 = 0;
		let a = samples[n + 1]!;
		let b = samples[n + 2]!;
		let c = samples[n + 3]!;
		for (let k = 0; k < weights.length; k++) {
			const weight = weights[k]!;
			const d = samples[n + k + 4]!;
			sum0 += weight * a;
			sum1 += weight * b;
			sum2 += weight * c;
			sum3 += weight * d;
			a = b;
			b = c;
			c = d;
		}
		filtered[n] = sum0;
		filtered[n + 1] = sum1;
		filtered[n + 2] = sum2;
		filtered[n + 3] = sum3;
	}
}
