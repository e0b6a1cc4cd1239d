import { exp, log, pow } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { meanPower } from "./join.ts";
import { gaussian, type Random } from "./random.ts";

/** Hz. Bandwidth in which a signal-to-noise ratio is told: that of a speech channel of single sideband. */
export const SNR_BANDWIDTH_HZ = 2_700;

export interface NoiseOptions {
	readonly random: Random;
	/** Power of the signal, mean of the squares. Default: that of all the samples; give it where part of them is silence. */
	readonly signalPower?: number;
	readonly rateHz?: number;
}

/** White Gaussian noise of that power (mean of the squares), from 0 to half the sample rate. */
export function whiteNoise(count: number, power: number, random: Random): Float64Array {
	const next = gaussian(random);
	const deviation = Math.sqrt(power);
	const samples = new Float64Array(count);
	for (let i = 0; i < count; i++) samples[i] = deviation * next();
	return samples;
}

/** The signal with white noise such that each bit's energy lies `ebN0Db` over the noise density (one-sided). */
export function withNoiseAtEbN0(
	samples: Float64Array,
	ebN0Db: number,
	{ bitsPerSecond, ...options }: NoiseOptions & { readonly bitsPerSecond: number },
): Float64Array {
	return noisy(samples, ebN0Db, bitsPerSecond, options);
}

/** The signal with white noise such that its power lies `snrDb` over that of the noise in `SNR_BANDWIDTH_HZ`. */
export function withNoiseAtSnr(samples: Float64Array, snrDb: number, options: NoiseOptions): Float64Array {
	return noisy(samples, snrDb, SNR_BANDWIDTH_HZ, options);
}

function noisy(
	samples: Float64Array,
	ratioDb: number,
	bandwidthHz: number,
	{ random, rateHz = MODEM_RATE_HZ, signalPower = meanPower(samples) }: NoiseOptions,
): Float64Array {
	const perHz = signalPower / bandwidthHz / pow(10, ratioDb / 10);
	const sum = whiteNoise(samples.length, (perHz * rateHz) / 2, random);
	for (let i = 0; i < sum.length; i++) sum[i] = sum[i]! + samples[i]!;
	return sum;
}

export interface ImpulseOptions {
	readonly random: Random;
	/** Mean number of impulses a second; they come independently of one another. */
	readonly perSecond: number;
	/** Standard deviation of an impulse's first sample, full scale 1. */
	readonly amplitude: number;
	/** Time in which an impulse falls to 1/e. Default 1 ms, about what the filter of a receiver makes of a short click. */
	readonly decayS?: number;
	readonly rateHz?: number;
}

/** The signal with bursts of noise, each falling off: static crashes, sparks, switches. */
export function withImpulses(
	samples: Float64Array,
	{ random, perSecond, amplitude, decayS = 0.001, rateHz = MODEM_RATE_HZ }: ImpulseOptions,
): Float64Array {
	const next = gaussian(random);
	const wait = () => (-log(1 - random()) / perSecond) * rateHz;
	const sum = samples.slice();
	const keep = exp(-1 / (decayS * rateHz));
	for (let start = wait(); start < sum.length; start += wait()) {
		let level = amplitude;
		for (let n = Math.floor(start); n < sum.length && level > amplitude / 1_000; n++, level *= keep) sum[n] = sum[n]! + level * next();
	}
	return sum;
}
