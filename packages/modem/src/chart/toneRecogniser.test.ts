import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { gaussian, prng } from "../signal/random.ts";
import { createToneRecogniser, type RecognisedTone } from "./toneRecogniser.ts";

/** Tones recognised in 4 s of frequencies that alternate between black and white at `toneHz`, with noise of `noiseHz`, about `centreHz`. */
function recognised(toneHz: number, noiseHz: number, centreHz = 1_900) {
	const recogniser = createToneRecogniser();
	const noise = gaussian(prng(1));
	const found: RecognisedTone[] = [];
	for (let frame = 0; frame < (4 * MODEM_RATE_HZ) / FRAME_SAMPLES; frame++) {
		const hz = new Float64Array(FRAME_SAMPLES).map((_, n) => {
			const turns = ((frame * FRAME_SAMPLES + n) / MODEM_RATE_HZ) * toneHz;
			return centreHz + (turns % 1 < 0.5 ? -400 : 400) + noiseHz * noise();
		});
		const tone = recogniser.frame(hz);
		if (tone !== null) found.push(tone);
	}
	return found;
}

describe("start and stop tones", () => {
	it("are told from one another, with the middle, in noise", () => {
		for (const toneHz of [300, 675, 450]) {
			for (const centreHz of [1_900, 1_750]) {
				const found = recognised(toneHz, 300, centreHz);
				expect(found.length).toBeGreaterThan(8);
				expect(new Set(found.map((tone) => tone.toneHz))).toEqual(new Set([toneHz]));
				expect(Math.abs(found.at(-1)!.centreHz - centreHz)).toBeLessThan(15);
				expect(found.at(-1)!.frames).toBeGreaterThan(112); // 3.6 s of the 4
			}
		}
	});

	it("are not mistaken for a picture's screen: 8 or 12 elements at 120 lines a minute have 452.4 and 301.6 Hz", () => {
		const lineHz = Math.PI * 576 * 2;
		for (const toneHz of [lineHz / 8, lineHz / 12, 299, 451, 674]) expect(recognised(toneHz, 50)).toEqual([]);
	});
});
