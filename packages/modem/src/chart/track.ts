import { FRAME_SAMPLES } from "../receiver.ts";

/** Steps a hertz in which frequencies are kept: 16 bits reach to 4095 Hz. */
const STEPS_PER_HZ = 8;
const HIGHEST_HZ = 4_000;
const HIGHEST_STEP = STEPS_PER_HZ * HIGHEST_HZ;
const CHUNK_BITS = 13;
const CHUNK_SAMPLES = 1 << CHUNK_BITS;

/** Frequencies heard, sample after sample, counted from the start of the stream; only what is not forgotten takes room. */
export interface Track {
	/** Adds the frequencies of a frame, Hz. */
	add(hz: Float64Array): void;
	/** Number of the sample that is added next. */
	end(): number;
	/** Number of the first sample kept. */
	start(): number;
	/** Drops what lies before sample `start`, as far as whole pieces allow. */
	forget(start: number): void;
	/** Hz of samples `from` to `from + into.length`; those that are not there repeat the nearest. */
	copy(from: number, into: Float64Array): void;
	/** Mean of each `by` samples from `from` on, Hz, up to sample `to`. */
	means(from: number, to: number, by: number): Float32Array;
}

/** An empty track; its first sample has number `first`. */
export function createTrack(first: number): Track {
	const chunks: Int16Array[] = [];
	let dropped = 0; // whole chunks
	let count = 0;

	/** Calls `take` with the pieces that hold samples `from` to `to`, counted from the first ever added. */
	function pieces(from: number, to: number, take: (piece: Int16Array, at: number) => void): void {
		for (let at = from; at < to; ) {
			const offset = at & (CHUNK_SAMPLES - 1);
			const length = Math.min(CHUNK_SAMPLES - offset, to - at);
			take(chunks[(at >> CHUNK_BITS) - dropped]!.subarray(offset, offset + length), at);
			at += length;
		}
	}
	return {
		add(hz) {
			if (count >> CHUNK_BITS === chunks.length + dropped) chunks.push(new Int16Array(CHUNK_SAMPLES));
			const chunk = chunks.at(-1)!; // whole frames fill it
			const offset = count & (CHUNK_SAMPLES - 1);
			for (let n = 0; n < FRAME_SAMPLES; n++) {
				const value = hz[n]!;
				chunk[offset + n] = value < 0 ? 0 : value > HIGHEST_HZ ? HIGHEST_STEP : STEPS_PER_HZ * value + 0.5;
			}
			count += FRAME_SAMPLES;
		},
		end: () => first + count,
		start: () => first + dropped * CHUNK_SAMPLES,
		forget(start) {
			while ((dropped + 1) * CHUNK_SAMPLES <= Math.min(start - first, count)) {
				chunks.shift();
				dropped++;
			}
		},
		copy(from, into) {
			const low = dropped * CHUNK_SAMPLES;
			if (count === low) return;
			const begin = Math.max(low, Math.min(count - 1, from - first));
			const end = Math.max(begin + 1, Math.min(count, from - first + into.length));
			pieces(begin, end, (piece, at) => {
				const offset = at - (from - first);
				for (let n = Math.max(0, -offset); n < piece.length && offset + n < into.length; n++) into[offset + n] = piece[n]! / STEPS_PER_HZ;
			});
			const [head, tail] = [begin - (from - first), end - (from - first)];
			if (head > 0) into.fill(into[Math.min(head, into.length - 1)]!, 0, head);
			if (tail < into.length) into.fill(into[Math.max(0, tail - 1)]!, Math.max(0, tail));
		},
		means(from, to, by) {
			const means = new Float32Array(Math.max(0, Math.floor((to - from) / by)));
			let [sum, left, number] = [0, by, 0];
			pieces(from - first, from - first + means.length * by, (piece) => {
				for (let n = 0; n < piece.length; n++) {
					sum += piece[n]!;
					if (--left > 0) continue;
					means[number++] = sum / (by * STEPS_PER_HZ);
					[sum, left] = [0, by];
				}
			});
			return means;
		},
	};
}
