import { describe, expect, it } from "vitest";
import { createFft } from "./fft.ts";
import { prng } from "./random.ts";

describe("createFft", () => {
	it.each([2, 8, 64, 512])("is the sum that defines the transform, for %d samples", (size) => {
		const random = prng(size);
		const samples = Float64Array.from({ length: size }, () => random() - 0.5);
		const fft = createFft(size);
		const spectrum = fft.createComplexArray();
		fft.realTransform(spectrum, samples);
		for (let bin = 0; bin <= size / 2; bin++) {
			let [real, imaginary] = [0, 0];
			for (let n = 0; n < size; n++) {
				real += samples[n]! * Math.cos((2 * Math.PI * bin * n) / size);
				imaginary -= samples[n]! * Math.sin((2 * Math.PI * bin * n) / size);
			}
			expect(spectrum[2 * bin]).toBeCloseTo(real, 10);
			expect(spectrum[2 * bin + 1]).toBeCloseTo(imaginary, 10);
		}
	});
});
