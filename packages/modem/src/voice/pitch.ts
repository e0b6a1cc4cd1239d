import { cos, sin } from "@skipwright/units";

/** Samples at 8 kHz. Periods of a voice: 350 down to 80 Hz. */
const SHORTEST = 23,
	LONGEST = 100;

/** How periodic a stretch of sound is, whatever its frequencies have been moved by. */
export interface Pitch {
	/** Samples at 8 kHz, to a fraction. */
	readonly period: number;
	/** Height of the peak, 0 to 1: 1 for what repeats exactly. */
	readonly height: number;
	/** The least between the shortest period and the peak: near the height for a single tone, which repeats at any period. */
	readonly valley: number;
}

export interface PitchFinder {
	/** From powers by bin, of `first` and those that follow. */
	pitch(power: Float64Array): Pitch;
}

/**
 * Size of the autocorrelation of the analytic signal, from its power spectrum. A set off tune moves all harmonics alike, which turns the
 * phase of that autocorrelation and leaves its size: the pitch is found though the harmonics lie at no multiples of it.
 * @param size samples of the spectrum's window, a Hann window, whose own autocorrelation is taken off
 */
export function createPitchFinder(size: number, first: number, count: number): PitchFinder {
	const lags = LONGEST - SHORTEST + 1;
	const cosines = new Float64Array(lags * count);
	const sines = new Float64Array(lags * count);
	const fade = new Float64Array(lags);
	const window = Float64Array.from({ length: size }, (_, i) => 0.5 - 0.5 * cos((2 * Math.PI * (i + 0.5)) / size));
	for (let lag = 0; lag < lags; lag++) {
		const samples = lag + SHORTEST;
		for (let i = 0; i + samples < size; i++) fade[lag]! += window[i]! * window[i + samples]!;
		fade[lag] = fade[lag]! / (0.375 * size);
		for (let bin = 0; bin < count; bin++) {
			const angle = (2 * Math.PI * (((first + bin) * samples) % size)) / size;
			cosines[lag * count + bin] = cos(angle);
			sines[lag * count + bin] = sin(angle);
		}
	}
	const heights = new Float64Array(lags);
	return {
		pitch(power) {
			let all = 0;
			for (let bin = 0; bin < count; bin++) all += power[bin]!;
			if (all <= 0) return { period: SHORTEST, height: 0, valley: 0 };
			for (let lag = 0; lag < lags; lag++) {
				let re = 0;
				let im = 0;
				for (let bin = 0, k = lag * count; bin < count; bin++, k++) {
					re += power[bin]! * cosines[k]!;
					im += power[bin]! * sines[k]!;
				}
				heights[lag] = Math.sqrt(re * re + im * im) / (all * fade[lag]!);
			}
			let best = 0;
			for (let lag = 1; lag + 1 < lags; lag++) {
				// A whole number of periods is as good as one: the shortest of nearly equal peaks counts.
				const isPeak = heights[lag]! >= heights[lag - 1]! && heights[lag]! > heights[lag + 1]!;
				if (isPeak && heights[lag]! > heights[best]! + (best === 0 ? 0 : 0.1)) best = lag;
			}
			if (best === 0) return { period: SHORTEST, height: 0, valley: 0 };
			let valley = 1;
			for (let lag = 0; lag < best; lag++) valley = Math.min(valley, heights[lag]!);
			const [a, b, c] = [heights[best - 1]!, heights[best]!, heights[best + 1]!];
			return { period: SHORTEST + best + (0.5 * (a - c)) / Math.min(a - 2 * b + c, -1e-9), height: Math.min(1, b), valley };
		},
	};
}
