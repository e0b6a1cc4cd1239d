import { MODEM_RATE_HZ } from "../receiver.ts";
import { kaiserLength, kaiserWindow } from "./kernel.ts";

/** A real signal with its quarter-turned twin: together they have no negative frequencies, and can be turned and shifted. */
export interface Analytic {
	readonly real: Float64Array;
	readonly imaginary: Float64Array;
}

/** dB, of the negative frequencies. */
const REJECTION_DB = 70;

/** Hz. From here up, and from as far below half the rate, negative frequencies are rejected. */
const LOWEST_HZ = 100;

/** The signal and its Hilbert transform, by an odd filter under a Kaiser window; both at the signal's own times. */
export function analytic(samples: Float64Array, rateHz: number = MODEM_RATE_HZ): Analytic {
	const length = kaiserLength(REJECTION_DB, (2 * LOWEST_HZ) / rateHz);
	const reach = Math.ceil(length / 2);
	const window = kaiserWindow(REJECTION_DB);
	// 2 / (pi k) at odd k, zero at even
	const weights = Float64Array.from({ length: Math.ceil(reach / 2) }, (_, i) => {
		const k = 2 * i + 1;
		return (2 / (Math.PI * k)) * window((2 * k) / length);
	});
	const padded = new Float64Array(samples.length + 2 * (reach + 1));
	padded.set(samples, reach + 1);
	const imaginary = new Float64Array(samples.length);
	for (let n = 0; n < samples.length; n++) {
		let sum = 0;
		for (let i = 0, k = 1; i < weights.length; i++, k += 2) sum += weights[i]! * (padded[n + reach + 1 - k]! - padded[n + reach + 1 + k]!);
		imaginary[n] = sum;
	}
	return { real: samples, imaginary };
}
