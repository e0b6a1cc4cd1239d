import {
	createChartReceiver,
	createDscReceiver,
	createResampler,
	createTeletypeReceiver,
	createTextReceiver,
	createToneReceiver,
	createWavDecoder,
} from "@skipwright/modem";
import type { HeardItem } from "@skipwright/proving";

export interface HeardFile {
	readonly items: readonly HeardItem[];
	readonly rateHz: number;
	readonly lengthS: number;
}

const BLOCK_BYTES = 1 << 18;

/**
 * Everything that the receivers hear in a WAV file.
 * @param source name of the file, for messages
 * @throws BadSoundError (a BadInputError)
 */
export function hearFile(source: string, bytes: Uint8Array, onProgress: (share: number) => void): HeardFile {
	const decoder = createWavDecoder(source);
	const receivers = [createDscReceiver(), createTextReceiver(), createTeletypeReceiver(), createChartReceiver(), createToneReceiver()];
	const items: HeardItem[] = [];
	let resampler: ReturnType<typeof createResampler> | null = null;
	const take = (frames: readonly Float64Array[]) => {
		for (const frame of frames) for (const receiver of receivers) items.push(...receiver.frame(frame));
	};
	for (let at = 0; at < bytes.length; at += BLOCK_BYTES) {
		const samples = decoder.push(bytes.subarray(at, at + BLOCK_BYTES));
		const format = decoder.format();
		if (format === null) continue;
		resampler ??= createResampler(format.rateHz);
		take(resampler.push(samples));
		onProgress(Math.min(1, (at + BLOCK_BYTES) / bytes.length));
	}
	const { format, samples } = decoder.end();
	if (resampler !== null) take(resampler.end());
	for (const receiver of receivers) items.push(...receiver.end());
	return { items: items.sort((a, b) => a.startS - b.startS), rateHz: format.rateHz, lengthS: samples / format.rateHz };
}
