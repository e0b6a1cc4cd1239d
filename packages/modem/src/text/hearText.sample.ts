import { readFileSync } from "node:fs";
import { createResampler } from "../signal/resample.ts";
import type { HeardText } from "./heardText.ts";
import { createTextReceiver } from "./textReceiver.ts";

/** What the text receiver makes of samples. */
export function hearText(samples: ArrayLike<number>, rateHz: number): readonly HeardText[] {
	const resampler = createResampler(rateHz);
	const receiver = createTextReceiver();
	const frames = [...resampler.push(samples), ...resampler.end()];
	return [...frames.flatMap((frame) => receiver.frame(frame)), ...receiver.end()];
}

/** Samples of a WAV of one channel with 16 bits; tests' own reading. */
export function readTestWav(path: string): { readonly samples: Float64Array; readonly rateHz: number } {
	const file = readFileSync(path);
	const data = file.indexOf("data", 12, "latin1");
	const rateHz = file.readUInt32LE(24);
	const count = Math.min(file.readUInt32LE(data + 4), file.length - data - 8) >> 1;
	return { samples: Float64Array.from({ length: count }, (_, i) => file.readInt16LE(data + 8 + 2 * i) / 32_768), rateHz };
}
