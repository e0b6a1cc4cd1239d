import type { BitClock } from "./bitClock.ts";

/** A bit clock and how well it is known: variances of the start, in samples squared, of the length of a bit, and their covariance. */
export interface TrackedClock extends BitClock {
	readonly startVariance: number;
	readonly bitVariance: number;
	readonly covariance: number;
}

/** Samples squared a bit: how much the sender's or the way's time may wander (a path of other length: 1 ms in some seconds). */
const START_WANDER = 0.003;
/** The same of the length of a bit: 1 ppm in some seconds. */
const BIT_WANDER = 1e-10;

/** The clock counted from `bits` later (or earlier) on: less is known of it there. */
export function movedClock(clock: TrackedClock, bits: number): TrackedClock {
	const { startSample, bitSamples, startVariance, bitVariance, covariance } = clock;
	return {
		startSample: startSample + bits * bitSamples,
		bitSamples,
		startVariance: startVariance + 2 * bits * covariance + bits * bits * bitVariance + Math.abs(bits) * START_WANDER,
		bitVariance: bitVariance + Math.abs(bits) * BIT_WANDER,
		covariance: covariance + bits * bitVariance,
	};
}

/** After bit `atBit` was seen to start `lateSamples` later than said, give or take `variance` (Kalman filter, two states). */
export function correctedClock(clock: TrackedClock, atBit: number, lateSamples: number, variance: number): TrackedClock {
	const { startVariance, bitVariance, covariance } = clock;
	const startWith = startVariance + atBit * covariance;
	const bitWith = covariance + atBit * bitVariance;
	const total = startWith + atBit * bitWith + variance;
	const [startGain, bitGain] = [startWith / total, bitWith / total];
	return {
		startSample: clock.startSample + startGain * lateSamples,
		bitSamples: clock.bitSamples + bitGain * lateSamples,
		startVariance: startVariance - startGain * startWith,
		bitVariance: bitVariance - bitGain * bitWith,
		covariance: covariance - startGain * bitWith,
	};
}

/** A clock found in so many bits, none known before: to 1/16 of a bit and chance in their middle, its speed to twice that over their length. */
export function foundClock(clock: BitClock, bits: number): TrackedClock {
	const startVariance = 16; // samples squared
	const bitVariance = (2 * startVariance) / (bits * bits);
	const middle = clock.startSample + (bits / 2) * clock.bitSamples;
	return movedClock({ startSample: middle, bitSamples: clock.bitSamples, startVariance, bitVariance, covariance: 0 }, -bits / 2);
}
