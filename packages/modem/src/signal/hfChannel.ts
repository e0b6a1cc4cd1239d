import { MODEM_RATE_HZ } from "../receiver.ts";
import { analytic } from "./analytic.ts";
import { fadingGain } from "./fadingGain.ts";
import type { Random } from "./random.ts";

/** Two paths of equal mean power that fade independently. */
export interface HfChannel {
	/** By how much the second path comes later. */
	readonly delayS: number;
	/** Hz. Twice the standard deviation of each path's Gaussian Doppler spectrum. */
	readonly spreadHz: number;
}

/**
 * Channels for tests of HF modems. Source: ITU-R F.1487 (2000), Annex 3, from memory; the definition of the spread and all values
 * agree with what third parties quote from it.
 */
export const HF_CHANNELS = {
	lowQuiet: { delayS: 0.0005, spreadHz: 0.5 },
	lowModerate: { delayS: 0.002, spreadHz: 1.5 },
	lowDisturbed: { delayS: 0.006, spreadHz: 10 },
	midQuiet: { delayS: 0.0005, spreadHz: 0.1 },
	midModerate: { delayS: 0.001, spreadHz: 0.5 },
	midDisturbed: { delayS: 0.002, spreadHz: 1 },
	midDisturbedNearVertical: { delayS: 0.007, spreadHz: 1 },
	highQuiet: { delayS: 0.001, spreadHz: 0.5 },
	highModerate: { delayS: 0.003, spreadHz: 10 },
	highDisturbed: { delayS: 0.007, spreadHz: 30 },
} as const satisfies Record<string, HfChannel>;

/**
 * The signal after Watterson's channel. Its mean power is that of the signal in the long run; a short signal may well fall into a fade.
 * The delay is taken to the nearest sample; what the second path still brings after the end is cut off.
 */
export function throughHfChannel(
	samples: Float64Array,
	{ delayS, spreadHz }: HfChannel,
	random: Random,
	rateHz: number = MODEM_RATE_HZ,
): Float64Array {
	const signal = analytic(samples, rateHz);
	const output = new Float64Array(samples.length);
	for (const delay of [0, Math.round(delayS * rateHz)]) {
		const gain = fadingGain(samples.length, spreadHz / 2, random, rateHz);
		for (let n = delay; n < output.length; n++) {
			const turned = signal.real[n - delay]! * gain.real[n]! - signal.imaginary[n - delay]! * gain.imaginary[n]!;
			output[n] = output[n]! + Math.SQRT1_2 * turned;
		}
	}
	return output;
}
