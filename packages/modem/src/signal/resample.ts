import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { type Kernel, lowPassKernel, weighed } from "./kernel.ts";

/** Sample rates that the modem takes, Hz. */
export const RATE_LIMITS_HZ = { from: 7_000, to: 192_000 } as const;

/** Hz. Below it the level stays within 0.1 dB, and of what folds to below it at most a thousandth comes through. */
const PASS_HZ = 3_400;

/** dB. 5 more than is promised: two filters' leaks may add, and Kaiser's formulas are approximate. */
const REJECTION_DB = 65;

/**
 * Hz. A first filter brings the rate down by a whole number: to twice the modem's where that goes (the second filter then has half its
 * coefficients zero), else to no less than `LEAST_MIDDLE_HZ`. Found by trial to be least work.
 */
const BEST_MIDDLE_HZ = 2 * MODEM_RATE_HZ,
	LEAST_MIDDLE_HZ = 11_000;

/** Up to so many output phases each has its coefficients; beyond, a straight line between those of 256 (error below -100 dB). */
const EXACT_PHASES = 1_000,
	LINE_PHASES = 256;

/** A sample of this size is damage; squares of sums of squares below it stay finite. */
const ABSURD = 1e30;

/** Input samples that are worked on at a time. */
const CHUNK_SAMPLES = 4_096;

/** Brings a stream to the modem's rate. */
export interface Resampler {
	/** Takes samples as they come, any number; returns the frames of `FRAME_SAMPLES` that are complete with them. */
	push(block: ArrayLike<number>): readonly Float64Array[];
	/** The stream ends: the frames still under way, the last filled up with zeros. */
	end(): readonly Float64Array[];
	/** How many samples were no number, infinite or beyond `ABSURD`, and were taken as 0. */
	badSamples(): number;
}

/**
 * From `rateHz` to `MODEM_RATE_HZ`. Sample n of the answer is the signal at n / MODEM_RATE_HZ seconds: the filters' delay is taken off.
 * The same to the bit whatever the sizes of the blocks.
 * @throws RangeError unless `rateHz` is a whole number within `RATE_LIMITS_HZ`
 */
export function createResampler(rateHz: number): Resampler {
	if (!Number.isInteger(rateHz) || rateHz < RATE_LIMITS_HZ.from || rateHz > RATE_LIMITS_HZ.to) {
		throw new RangeError(
			`Cannot resample from ${rateHz} Hz as it must be a whole number from ${RATE_LIMITS_HZ.from} to ${RATE_LIMITS_HZ.to}`,
		);
	}
	const stages = stagesFrom(rateHz);
	const chunk = new Float64Array(CHUNK_SAMPLES);
	let [taken, bad, given] = [0, 0, 0];
	let frame = new Float64Array(FRAME_SAMPLES);
	let filled = 0;

	function run(count: number, frames: Float64Array[], limit: number): void {
		let [samples, length]: [Float64Array, number] = [chunk, count];
		for (const stage of stages) [samples, length] = stage(samples, length);
		length = Math.min(length, limit - given);
		given += length;
		for (let from = 0; from < length; ) {
			const more = Math.min(length - from, FRAME_SAMPLES - filled);
			frame.set(samples.subarray(from, from + more), filled);
			from += more;
			filled += more;
			if (filled < FRAME_SAMPLES) break;
			frames.push(frame);
			frame = new Float64Array(FRAME_SAMPLES);
			filled = 0;
		}
	}
	return {
		push(block) {
			const frames: Float64Array[] = [];
			for (let from = 0; from < block.length; from += CHUNK_SAMPLES) {
				const count = Math.min(CHUNK_SAMPLES, block.length - from);
				bad += copyGood(block, from, count, chunk);
				run(count, frames, Number.POSITIVE_INFINITY);
			}
			taken += block.length;
			return frames;
		},
		end() {
			const frames: Float64Array[] = [];
			const limit = Math.ceil((taken * MODEM_RATE_HZ) / rateHz);
			chunk.fill(0);
			while (given < limit) run(CHUNK_SAMPLES, frames, limit);
			if (filled > 0) frames.push(frame);
			return frames;
		},
		badSamples: () => bad,
	};
}

/** Copies `count` samples of a block, bad ones as 0; returns how many of them there were. */
function copyGood(block: ArrayLike<number>, from: number, count: number, into: Float64Array): number {
	let bad = 0;
	for (let i = 0; i < count; i++) {
		const sample = block[from + i]!;
		if (Math.abs(sample) < ABSURD) into[i] = sample;
		else {
			into[i] = 0; // no number is not less either
			bad++;
		}
	}
	return bad;
}

/** Takes the first `count` samples and returns what comes of them: an array that is used again, and how many in it count. */
type Stage = (samples: Float64Array, count: number) => [Float64Array, number];

function stagesFrom(rateHz: number): Stage[] {
	if (rateHz === MODEM_RATE_HZ) return [];
	const down = rateHz % BEST_MIDDLE_HZ === 0 ? rateHz / BEST_MIDDLE_HZ : Math.max(1, Math.floor(rateHz / LEAST_MIDDLE_HZ));
	const middleHz = rateHz / down;
	const stages: Stage[] = [];
	// What folds at either filter to between PASS_HZ and half the rate is nobody's signal.
	const foldless = (fromHz: number, toHz: number) => ({
		rateHz: fromHz,
		passHz: PASS_HZ,
		stopHz: toHz - PASS_HZ,
		rejectionDb: REJECTION_DB,
	});
	if (down > 1) stages.push(wholeStage(down, lowPassKernel(foldless(rateHz, middleHz), 1)));
	if (middleHz === BEST_MIDDLE_HZ) return [...stages, wholeStage(2, lowPassKernel(foldless(middleHz, MODEM_RATE_HZ), 1))];
	const divisor = commonDivisor(rateHz, down * MODEM_RATE_HZ);
	const [step, parts] = [rateHz / divisor, (down * MODEM_RATE_HZ) / divisor];
	// An input below 8 kHz has nothing to pass up to 3400 Hz; its images must go.
	const isSlow = rateHz < MODEM_RATE_HZ;
	const passHz = isSlow ? Math.min(PASS_HZ, 0.46 * rateHz) : PASS_HZ;
	const stopHz = isSlow ? rateHz - passHz : Math.min(MODEM_RATE_HZ, middleHz) - PASS_HZ;
	const lowPass = { rateHz: middleHz, passHz, stopHz, rejectionDb: REJECTION_DB };
	return [...stages, partStage(step, parts, lowPassKernel(lowPass, parts <= EXACT_PHASES ? parts : LINE_PHASES))];
}

/** Outputs that are worked out together, so that each sample is fetched once for all of them. */
const TOGETHER = 4;

/**
 * Output n lies at input time n * down. Samples are dealt out to `down` lanes, so that those which meet coefficient k for one output and
 * coefficient k - down for the next lie beside each other.
 */
function wholeStage(down: number, { taps, table }: Kernel): Stage {
	const lanes = Array.from({ length: down }, (_, lane) => laneOf(table.subarray(0, taps), lane, down));
	const reach = Math.max(...lanes.map(({ skip, weights }) => skip + weights.length)) + TOGETHER;
	const room = Math.ceil(CHUNK_SAMPLES / down) + 2 * reach;
	const held = new Float64Array(down * room); // lane after lane
	let count = taps / 2 - 1; // samples in all lanes; at first the zeros before the stream
	const output = new Float64Array(room);
	return (samples, length) => {
		for (let i = 0; i < down && i < length; i++) {
			let to = ((count + i) % down) * room + Math.floor((count + i) / down);
			for (let from = i; from < length; from += down) held[to++] = samples[from]!;
		}
		count += length;
		const full = Math.floor(count / down); // samples that every lane has
		let made = 0;
		for (; made + reach <= full; made += TOGETHER) {
			let a = 0;
			let b = 0;
			let c = 0;
			let d = 0;
			for (let lane = 0; lane < down; lane++) {
				const { skip, weights } = lanes[lane]!;
				let at = lane * room + skip + made;
				let p = held[at]!;
				let q = held[at + 1]!;
				let r = held[at + 2]!;
				at += 3;
				for (let k = 0; k < weights.length; k += 4, at += 4) {
					const e = weights[k]!;
					const f = weights[k + 1]!;
					const g = weights[k + 2]!;
					const h = weights[k + 3]!;
					const s = held[at]!;
					a += e * p + f * q + g * r + h * s;
					p = held[at + 1]!;
					b += e * q + f * r + g * s + h * p;
					q = held[at + 2]!;
					c += e * r + f * s + g * p + h * q;
					r = held[at + 3]!;
					d += e * s + f * p + g * q + h * r;
				}
			}
			output[made] = a;
			output[made + 1] = b;
			output[made + 2] = c;
			output[made + 3] = d;
		}
		for (let lane = 0; lane < down; lane++) held.copyWithin(lane * room, lane * room + made, (lane + 1) * room);
		count -= made * down;
		return [output, made];
	};
}

/** Every `down`-th coefficient from `lane` on, less the zeros at both ends, filled up to a multiple of 4. */
function laneOf(coefficients: Float64Array, lane: number, down: number): { readonly skip: number; readonly weights: Float64Array } {
	const all = coefficients.filter((_, k) => k % down === lane);
	const isSome = (weight: number) => Math.abs(weight) > 1e-12;
	const skip = Math.max(0, all.findIndex(isSome));
	const some = all.subarray(skip, all.findLastIndex(isSome) + 1);
	const weights = new Float64Array(4 * Math.ceil(some.length / 4));
	weights.set(some);
	return { skip, weights };
}

/** Output n lies at input time n step / parts, counted in whole numbers, so that nothing drifts. */
function partStage(step: number, parts: number, kernel: Kernel): Stage {
	const { taps, phases } = kernel;
	let held = new Float64Array(CHUNK_SAMPLES + 2 * taps);
	let count = taps / 2 - 1; // samples in `held`; at first the zeros before the stream
	let [at, part] = [0, 0]; // where in `held` the next output's first sample lies, and the parts of a sample beyond
	let output = new Float64Array(0);
	return (samples, length) => {
		if (count + length > held.length) held = enlarged(held, count + length);
		held.set(samples.subarray(0, length), count);
		count += length;
		const most = Math.ceil((length * parts) / step) + taps;
		if (output.length < most) output = new Float64Array(most);
		let made = 0;
		while (at + taps <= count) {
			const row = (part * phases) / parts;
			const whole = Math.floor(row);
			const here = weighed(kernel, whole * taps, held, at);
			output[made++] = whole === row ? here : here + (row - whole) * (weighed(kernel, (whole + 1) * taps, held, at) - here);
			part += step;
			const moved = Math.floor(part / parts);
			at += moved;
			part -= moved * parts;
		}
		const gone = Math.min(at, count);
		held.copyWithin(0, gone, count);
		count -= gone;
		at -= gone;
		return [output, made];
	};
}

function enlarged(samples: Float64Array, size: number): Float64Array<ArrayBuffer> {
	const larger = new Float64Array(2 * size);
	larger.set(samples);
	return larger;
}

function commonDivisor(a: number, b: number): number {
	return b === 0 ? a : commonDivisor(b, a % b);
}

/** dB. Makers want cleaner signals than a receiver needs. */
const MAKER_REJECTION_DB = 80;

/**
 * The whole signal at another rate, for makers and tests: any two rates, whole or not. Up to 42.5 % of the lower rate passes, nothing above half of it.
 */
export function resample(samples: Float64Array, fromHz: number, toHz: number): Float64Array {
	if (fromHz === toHz) return samples.slice();
	const lowerHz = Math.min(fromHz, toHz);
	const kernel = lowPassKernel(
		{ rateHz: fromHz, passHz: 0.425 * lowerHz, stopHz: 0.5 * lowerHz, rejectionDb: MAKER_REJECTION_DB },
		LINE_PHASES,
	);
	const { taps, phases } = kernel;
	const before = taps / 2 - 1;
	const padded = new Float64Array(samples.length + 2 * taps);
	padded.set(samples, before);
	const output = new Float64Array(Math.round((samples.length * toHz) / fromHz));
	for (let n = 0; n < output.length; n++) {
		const time = (n * fromHz) / toHz;
		const at = Math.floor(time);
		const row = (time - at) * phases;
		const whole = Math.floor(row);
		const here = weighed(kernel, whole * taps, padded, at);
		const next = weighed(kernel, (whole + 1) * taps, padded, at);
		output[n] = here + (row - whole) * (next - here);
	}
	return output;
}
