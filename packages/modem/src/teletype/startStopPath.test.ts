import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES } from "../receiver.ts";
import { withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { editErrors } from "./editErrors.sample.ts";
import { createElementLevels } from "./elementLevels.ts";
import { makeTeletype } from "./makeTeletype.ts";
import { createStartStopPath } from "./startStopPath.ts";
import { exactBaud } from "./teletypeBaud.ts";
import { createToneCells } from "./toneCells.ts";

const PEAK = 0.5;

/** Codes read from a made signal in noise, its tones and speed known. */
function readCodes(samples: Float64Array, baud: 45.45 | 50 | 75, noisePower: number): readonly number[] {
	const [low, high] = [createToneCells(1_475), createToneCells(1_925)];
	const path = createStartStopPath(exactBaud(baud));
	const levels = createElementLevels(path.elementCells);
	const codes: number[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		const frame = samples.subarray(at, at + FRAME_SAMPLES);
		low.frame(frame);
		high.frame(frame);
		levels.frame(low, high, noisePower);
		path.push(levels.high.nats, levels.low.nats);
		codes.push(...path.settle().map(({ code }) => code));
	}
	return [...codes, ...path.finish().map(({ code }) => code)];
}

describe("createStartStopPath", () => {
	it("comes within 0.25 dB of a receiver that knows when each element begins, 0.5 dB at 75 baud (no whole cells)", () => {
		const random = prng(5);
		const sent = Array.from({ length: 1_500 }, () => Math.floor(32 * random()));
		// Five elements right, each wrong with 0.5 exp(-Eb/2N0): the textbook curve of non-coherent orthogonal keying.
		const curve = (db: number) => 1 - (1 - 0.5 * Math.exp(-(10 ** (db / 10)) / 2)) ** 5;
		let compared = 0;
		for (const [baud, stopElements, ebN0Db, lossDb] of [
			[50, 1.5, 8, 0.25],
			[50, 1.5, 10, 0.25],
			[45.45, 1, 9, 0.25],
			[75, 2, 9, 0.5],
		] as const) {
			const made = makeTeletype(sent, { baud, centreHz: 1_700, shiftHz: 450, stopElements, amplitude: PEAK });
			const noisePower = ((PEAK * PEAK) / 2 / exactBaud(baud) / 10 ** (ebN0Db / 10)) * 4_000;
			const noisy = withNoiseAtEbN0(made, ebN0Db, { bitsPerSecond: exactBaud(baud), random: prng(ebN0Db) });
			const errors = editErrors(sent, readCodes(noisy, baud, noisePower)) / sent.length;
			console.info(
				`${baud} Bd, stop ${stopElements}, Eb/N0 ${ebN0Db} dB: ${(100 * errors).toFixed(2)} % of ${sent.length} characters wrong or lost; ` +
					`five elements with timing known: ${(100 * curve(ebN0Db)).toFixed(2)} %`,
			);
			// two sigma of the count beside
			expect(errors).toBeLessThan(curve(ebN0Db - lossDb) + 2 * Math.sqrt(curve(ebN0Db) / sent.length));
			compared++;
		}
		expect(compared).toBe(4);
	});
});
