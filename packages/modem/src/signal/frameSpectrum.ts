import { cos } from "@skipwright/units";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { createFft } from "./fft.ts";

export interface FrameSpectrum {
	/** Hz between two bins. */
	readonly binHz: number;
	/** Takes a frame; returns the power in each bin from 0 to half the rate of what the window holds, an array that is used again. */
	frame(samples: Float64Array): Float64Array;
	/** Takes a frame of which no spectrum is wanted. */
	hold(samples: Float64Array): void;
}

/**
 * Power spectra over the last `frames` frames (a power of two) under a Hann window, one a frame. White noise of variance v gives v
 * in each bin on the mean; a steady tone of peak a, in the middle of a bin, gives a^2 / 6 times the samples in the window.
 */
export function createFrameSpectrum(frames: number): FrameSpectrum {
	const size = frames * FRAME_SAMPLES;
	const fft = createFft(size);
	const window = Float64Array.from(
		{ length: size },
		(_, i) => Math.sqrt(8 / 3 / size) * (0.5 - 0.5 * cos((2 * Math.PI * (i + 0.5)) / size)),
	);
	const held = new Float64Array(size);
	const windowed = new Float64Array(size);
	const spectrum = fft.createComplexArray();
	const power = new Float64Array(size / 2 + 1);
	function hold(samples: Float64Array): void {
		held.copyWithin(0, FRAME_SAMPLES);
		held.set(samples, size - FRAME_SAMPLES);
	}
	return {
		binHz: MODEM_RATE_HZ / size,
		hold,
		frame(samples) {
			hold(samples);
			for (let i = 0; i < size; i++) windowed[i] = held[i]! * window[i]!;
			fft.realTransform(spectrum, windowed);
			for (let bin = 0; bin < power.length; bin++) {
				const re = spectrum[2 * bin]!;
				const im = spectrum[2 * bin + 1]!;
				power[bin] = re * re + im * im;
			}
			return power;
		},
	};
}
