import { cos, sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";

export interface ToneEnergiesOptions {
	readonly lowHz: number;
	readonly highHz: number;
	/** Seconds over which each tone is correlated: the bit, for keying. Rounded to whole steps of the output, at least one. */
	readonly windowS: number;
	/** Pairs of energies wanted in a second, at most `MODEM_RATE_HZ`. */
	readonly outHz: number;
}

/** Energies complete with the samples given, as squares of amplitude: a steady tone of full scale gives 1. */
export interface ToneEnergies {
	readonly low: Float64Array;
	readonly high: Float64Array;
	/** Seconds from the stream's start, middle of each window. */
	readonly atS: Float64Array;
}

/** A pair of sliding correlators that know two tones: how much of each there is, whatever its phase. `push` takes any number of samples at `MODEM_RATE_HZ`. */
export function createToneEnergies(options: ToneEnergiesOptions): { push(samples: Float64Array): ToneEnergies } {
	const stepSamples = MODEM_RATE_HZ / options.outHz;
	if (!(stepSamples >= 1)) throw new RangeError(`Cannot give ${options.outHz} energies a second: expected at most ${MODEM_RATE_HZ}`);
	const steps = Math.max(1, Math.round(options.windowS * options.outHz));
	const low = createCorrelator(options.lowHz, steps);
	const high = createCorrelator(options.highHz, steps);
	let taken = 0;
	let stepsDone = 0;
	const boundary = () => Math.round((stepsDone + 1) * stepSamples);

	return {
		push(samples) {
			const most = Math.ceil(samples.length / stepSamples) + 1;
			const out = { low: new Float64Array(most), high: new Float64Array(most), atS: new Float64Array(most) };
			let count = 0;
			let from = 0;
			while (from < samples.length) {
				const to = Math.min(samples.length, from + boundary() - taken);
				low.add(samples, from, to);
				high.add(samples, from, to);
				taken += to - from;
				from = to;
				if (taken < boundary()) break;
				stepsDone++;
				const windowSamples = taken - Math.round(Math.max(0, stepsDone - steps) * stepSamples);
				const [lowEnergy, highEnergy] = [low.step(windowSamples), high.step(windowSamples)];
				if (stepsDone < steps) continue;
				out.low[count] = lowEnergy;
				out.high[count] = highEnergy;
				out.atS[count++] = (taken - windowSamples / 2) / MODEM_RATE_HZ;
			}
			return { low: out.low.subarray(0, count), high: out.high.subarray(0, count), atS: out.atS.subarray(0, count) };
		},
	};
}

/** Sums of each of the last `steps` steps are kept and added anew at each output: nothing old stays behind, not even a NaN. */
function createCorrelator(toneHz: number, steps: number) {
	const turn = (2 * Math.PI * toneHz) / MODEM_RATE_HZ;
	const [turnRe, turnIm] = [cos(turn), sin(turn)];
	const sumRe = new Float64Array(steps);
	const sumIm = new Float64Array(steps);
	let oscRe = 1;
	let oscIm = 0;
	let at = 0;
	let re = 0;
	let im = 0;
	return {
		add(samples: Float64Array, from: number, to: number): void {
			for (let i = from; i < to; i++) {
				const x = samples[i]!;
				re += x * oscRe;
				im += x * oscIm;
				const next = oscRe * turnRe - oscIm * turnIm;
				oscIm = oscRe * turnIm + oscIm * turnRe;
				oscRe = next;
			}
			// one Newton step keeps the oscillator at length 1
			const gain = 1.5 - 0.5 * (oscRe * oscRe + oscIm * oscIm);
			oscRe *= gain;
			oscIm *= gain;
		},
		step(windowSamples: number): number {
			sumRe[at] = re;
			sumIm[at] = im;
			at = (at + 1) % steps;
			re = 0;
			im = 0;
			let allRe = 0;
			let allIm = 0;
			for (let i = 0; i < steps; i++) {
				allRe += sumRe[i]!;
				allIm += sumIm[i]!;
			}
			return (4 * (allRe * allRe + allIm * allIm)) / (windowSamples * windowSamples);
		},
	};
}
