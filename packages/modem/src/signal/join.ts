import { MODEM_RATE_HZ } from "../receiver.ts";

/** Nothing, for so many seconds. */
export function silence(seconds: number, rateHz: number = MODEM_RATE_HZ): Float64Array {
	return new Float64Array(Math.round(seconds * rateHz));
}

/** One after another. */
export function joined(...parts: readonly Float64Array[]): Float64Array {
	const whole = new Float64Array(parts.reduce((sum, { length }) => sum + length, 0));
	let at = 0;
	for (const part of parts) {
		whole.set(part, at);
		at += part.length;
	}
	return whole;
}

/** All at once, from the same start, as long as the longest. */
export function mixed(...signals: readonly Float64Array[]): Float64Array {
	const sum = new Float64Array(signals.reduce((longest, { length }) => Math.max(longest, length), 0));
	for (const signal of signals) {
		for (let i = 0; i < signal.length; i++) sum[i] = sum[i]! + signal[i]!;
	}
	return sum;
}

/** Every sample times `factor`. */
export function scaled(samples: Float64Array, factor: number): Float64Array {
	return samples.map((sample) => sample * factor);
}

/** Mean of the squares; a sine of peak 1 has 0.5. 0 for nothing. */
export function meanPower(samples: Float64Array): number {
	let sum = 0;
	for (let i = 0; i < samples.length; i++) sum += samples[i]! * samples[i]!;
	return samples.length === 0 ? 0 : sum / samples.length;
}
