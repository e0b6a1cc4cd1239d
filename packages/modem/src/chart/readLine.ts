import type { Track } from "./track.ts";

/** Mean frequency (Hz) of each of `into.length` equal parts of the line that begins at sample `at` (may lie between two) and has `length`. */
export type LineReader = (at: number, length: number, into: Float64Array) => void;

/** Reads lines of a track; a buffer of its own is used again. */
export function createLineReader(track: Track): LineReader {
	let samples = new Float64Array(0);
	return (at, length, into) => {
		const count = Math.ceil(length) + 2;
		if (samples.length !== count) samples = new Float64Array(count);
		const from = Math.floor(at);
		track.copy(from, samples);
		const part = length / into.length;
		let sum = 0; // of all samples before number `index`
		let index = 0;
		let before = (at - from) * samples[0]!; // the sum up to a part's start
		for (let n = 0; n < into.length; n++) {
			const end = at - from + (n + 1) * part;
			while (index + 1 <= end) sum += samples[index++]!;
			const upTo = sum + (end - index) * samples[index]!;
			into[n] = (upTo - before) / part;
			before = upTo;
		}
	};
}
