import type { Bench } from "../../../../tools/bench-types.ts";
import { measure } from "../../../../tools/measure.ts";
import { whiteNoise } from "./noise.ts";
import { prng } from "./random.ts";
import { createResampler } from "./resample.ts";

const SECONDS = 60;
const BLOCK_SAMPLES = 4_096;

/** As recorders and sound cards give it. Read and added up block by block: no filter goes under that. */
export const bench: Bench = {
	name: "resample",
	run: () =>
		Promise.resolve(
			[48_000, 44_100, 12_001, 192_000].map((rateHz) => {
				const samples = whiteNoise(SECONDS * rateHz, 0.1, prng(rateHz));
				const blocks = Array.from({ length: Math.ceil(samples.length / BLOCK_SAMPLES) }, (_, i) =>
					samples.subarray(i * BLOCK_SAMPLES, (i + 1) * BLOCK_SAMPLES),
				);
				const work = () => {
					const resampler = createResampler(rateHz);
					for (const block of blocks) resampler.push(block);
					return resampler.end();
				};
				const floor = () => {
					let sum = 0;
					for (const block of blocks) for (let i = 0; i < block.length; i++) sum += block[i]!;
					return sum;
				};
				return {
					what: `${SECONDS} s at ${rateHz} Hz to 8000 Hz`,
					floor: "adding up the samples",
					count: SECONDS,
					unit: "s of audio",
					...measure(work, floor),
				};
			}),
		),
};
