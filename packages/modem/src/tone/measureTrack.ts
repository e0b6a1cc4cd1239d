import { cos, sin } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { FRAME_S, type ToneTrack } from "./toneTrack.ts";

/** Part of its strong frames' power above which a frame has the tone on. */
const ON_PART = 0.25;
/** Share of strong frames from which a tone counts as on throughout. */
const STEADY = 0.8;
/** Hz. What keying to a clock, the resampler and rounding leave, one sigma. */
const LEAST_HZ = 0.0005;
/** Standard deviation of a frequency measured under the cosine window, over the Cramer-Rao bound: square root of 1.5. */
const WINDOW_LOSS = 1.22;

export interface MeasuredTone {
	readonly hz: number;
	readonly uncertaintyHz: number;
	/** Frames of the track: first on, and one past the last. */
	readonly from: number;
	readonly to: number;
	readonly onRatio: number;
	/** How much of the power while on turns as one tone, 0 to 1: near 1 for a steady tone, noise taken off. */
	readonly coherence: number;
	/** Power of the tone while on, mean square of a sample. */
	readonly power: number;
}

/**
 * Frequency of a track: where its spectrum under a cosine window has its peak. `noisePower` is the mean square of a sample of white
 * noise as dense as that about the tone. Null where nothing is on.
 */
export function measureTrack({ toneHz, re, im }: ToneTrack, noisePower: number): MeasuredTone | null {
	const power = re.map((x, i) => x * x + im[i]! * im[i]!);
	const smooth = power.map((p, i) => (p + (power[i - 1] ?? p) + (power[i + 1] ?? p)) / 3);
	const strong = smooth.toSorted((a, b) => a - b)[Math.floor(0.8 * smooth.length)] ?? 0;
	const isOn = smooth.map((p) => p > ON_PART * strong);
	const [from, to] = [isOn.indexOf(true), isOn.lastIndexOf(true) + 1];
	if (from < 0 || strong === 0) return null;
	const count = to - from;
	const share = isOn.filter(Boolean).length / count;
	if (share > STEADY) isOn.fill(true, from, to); // the rest was noise
	const weight = (i: number) => (isOn[i]! ? cos(Math.PI * ((i - from + 0.5) / count - 0.5)) : 0);
	let [weights, squares, onPower, on] = [0, 0, 0, 0];
	for (let i = from; i < to; i++) {
		if (!isOn[i]!) continue;
		weights += weight(i);
		squares += weight(i) * weight(i);
		onPower += weight(i) * power[i]!;
		on++;
	}
	/** Power of the windowed sum, its turn of `hz` taken off. */
	const peakAt = (hz: number) => {
		let [sumRe, sumIm] = [0, 0];
		const turn = -2 * Math.PI * hz * FRAME_S;
		const [turnRe, turnIm] = [cos(turn), sin(turn)];
		let [oscRe, oscIm] = [1, 0];
		for (let i = from; i < to; i++) {
			const w = weights === 0 ? 0 : windows[i - from]!;
			sumRe += w * (re[i]! * oscRe - im[i]! * oscIm);
			sumIm += w * (re[i]! * oscIm + im[i]! * oscRe);
			const next = oscRe * turnRe - oscIm * turnIm;
			oscIm = oscRe * turnIm + oscIm * turnRe;
			oscRe = next;
		}
		return sumRe * sumRe + sumIm * sumIm;
	};
	const windows = Float64Array.from({ length: count }, (_, i) => weight(from + i));
	const offHz = peakOf(peakAt, SEARCH_HZ, 1 / (4 * count * FRAME_S));
	const noise = noisePower * FRAME_SAMPLES;
	const peak = peakAt(offHz);
	const tonePower = Math.max(0, peak - noise * squares) / (weights * weights);
	const coherence = tonePower / Math.max(onPower / weights - noise, tonePower, Number.MIN_VALUE);
	// Peak a of a tone gives sums of a / 2 a sample; its power is a^2 / 2.
	const perSample = (2 * tonePower) / (FRAME_SAMPLES * FRAME_SAMPLES);
	const density = noisePower / (MODEM_RATE_HZ / 2);
	const seconds = count * FRAME_S;
	const bound = Math.sqrt((6 * density * (count / on)) / Math.max(perSample, Number.MIN_VALUE) / seconds) / (2 * Math.PI * seconds);
	return {
		hz: toneHz + offHz,
		uncertaintyHz: Math.sqrt(WINDOW_LOSS * WINDOW_LOSS * bound * bound + LEAST_HZ * LEAST_HZ),
		from,
		to,
		onRatio: on / count,
		coherence,
		power: perSample,
	};
}

/** Hz. How far from the track's oscillator its tone may lie. */
const SEARCH_HZ = 2.5;

/** Where a function of one peak about 0 is highest: by steps, then by narrowing in. */
function peakOf(height: (x: number) => number, reach: number, step: number): number {
	let best = 0;
	let most = height(0);
	for (let x = -reach; x <= reach; x += step) {
		const here = height(x);
		if (here > most) [best, most] = [x, here];
	}
	for (let width = step; width > 1e-6; width /= 2) {
		for (const x of [best - width / 2, best + width / 2]) {
			const here = height(x);
			if (here > most) [best, most] = [x, here];
		}
	}
	return best;
}
