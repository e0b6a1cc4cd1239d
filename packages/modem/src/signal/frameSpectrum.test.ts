import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES } from "../receiver.ts";
import { createFrameSpectrum } from "./frameSpectrum.ts";
import { keyedTones } from "./keyed.ts";
import { whiteNoise } from "./noise.ts";
import { prng } from "./random.ts";

describe("createFrameSpectrum", () => {
	it("gives noise its mean square in each bin, and a tone what its comment says", () => {
		const spectrum = createFrameSpectrum(4);
		const noise = whiteNoise(400 * FRAME_SAMPLES, 0.03, prng(1));
		const mean = new Float64Array(513);
		for (let frame = 0; frame < 400; frame++) {
			const power = spectrum.frame(noise.subarray(frame * FRAME_SAMPLES, (frame + 1) * FRAME_SAMPLES));
			for (const [bin, value] of power.entries()) mean[bin]! += value / 400;
		}
		expect(mean.subarray(4, 508).reduce((sum, value) => sum + value / 504, 0) / 0.03).toBeCloseTo(1, 1);
		const toneHz = 100 * spectrum.binHz;
		const tone = keyedTones([{ toneHz, seconds: 1 }], { amplitude: 0.4 });
		for (let frame = 0; frame < 3; frame++) spectrum.hold(tone.subarray(frame * FRAME_SAMPLES, (frame + 1) * FRAME_SAMPLES));
		const power = spectrum.frame(tone.subarray(3 * FRAME_SAMPLES, 4 * FRAME_SAMPLES));
		expect(power[100]).toBeCloseTo((0.4 * 0.4 * 1_024) / 6, 3);
		expect(power[104]! / power[100]!).toBeLessThan(1e-6);
	});
});
