import { sin } from "@skipwright/units";

/** What a low pass must do. */
export interface LowPass {
	/** Samples a second of what it is given. */
	readonly rateHz: number;
	readonly passHz: number;
	readonly stopHz: number;
	/** dB, above `stopHz`. The ripple below `passHz` is as small: 60 dB are 0.01 dB. */
	readonly rejectionDb: number;
}

/** Coefficients of a low pass for output times that fall between the input's samples. */
export interface Kernel {
	/** Coefficients for each phase, a multiple of 4. The sample at or just before the output's time meets number `taps / 2 - 1`. */
	readonly taps: number;
	/** Rows 0 to `phases`: row p is for a time p / phases of a sample after that one. */
	readonly phases: number;
	/** Row after row. */
	readonly table: Float64Array;
}

/**
 * Sinc under a Kaiser window, with Kaiser's formulas for length and shape (Oppenheim and Schafer, Discrete-Time Signal Processing,
 * section on the Kaiser window; from memory). Each row adds up to 1, so that a constant stays what it is.
 */
export function lowPassKernel({ rateHz, passHz, stopHz, rejectionDb }: LowPass, phases: number): Kernel {
	const width = kaiserLength(rejectionDb, (stopHz - passHz) / rateHz);
	const half = 2 * Math.ceil((width / 2 + 1) / 2);
	const taps = 2 * half;
	const window = kaiserWindow(rejectionDb);
	const cutoff = (passHz + stopHz) / rateHz; // of half the rate
	const table = new Float64Array((phases + 1) * taps);
	for (let phase = 0; phase <= phases; phase++) {
		const row = table.subarray(phase * taps, (phase + 1) * taps);
		let sum = 0;
		for (let k = 0; k < taps; k++) {
			const x = k - half + 1 - phase / phases;
			row[k] = sinc(cutoff * x) * window((2 * x) / width);
			sum += row[k]!;
		}
		for (let k = 0; k < taps; k++) row[k] = row[k]! / sum;
	}
	return { taps, phases, table };
}

function sinc(x: number): number {
	return x === 0 ? 1 : sin(Math.PI * x) / (Math.PI * x);
}

/** Samples from end to end of a filter with that rejection, for a transition so wide in parts of the rate. */
export function kaiserLength(rejectionDb: number, transition: number): number {
	return (rejectionDb - 7.95) / (14.36 * transition);
}

/** Kaiser's window for that rejection (more than 50 dB), over x from -1 to 1: 1 in the middle, 0 outside. */
export function kaiserWindow(rejectionDb: number): (x: number) => number {
	const beta = 0.1102 * (rejectionDb - 8.7);
	const middle = besselI0(beta);
	return (x) => (x * x >= 1 ? 0 : besselI0(beta * Math.sqrt(1 - x * x)) / middle);
}

/** Modified Bessel function of the first kind, order 0, by its power series. */
function besselI0(x: number): number {
	let [sum, term] = [1, 1];
	for (let k = 1; term > sum * 1e-17; k++) {
		term *= (x / (2 * k)) * (x / (2 * k));
		sum += term;
	}
	return sum;
}

/** Sum of products of `kernel.table` from `row` on with `samples` from `at` on. */
export function weighed({ table, taps }: Kernel, row: number, samples: Float64Array, at: number): number {
	let a = 0;
	let b = 0;
	let c = 0;
	let d = 0;
	for (let k = 0; k < taps; k += 4) {
		a += table[row + k]! * samples[at + k]!;
		b += table[row + k + 1]! * samples[at + k + 1]!;
		c += table[row + k + 2]! * samples[at + k + 2]!;
		d += table[row + k + 3]! * samples[at + k + 3]!;
	}
	return a + b + (c + d);
}
