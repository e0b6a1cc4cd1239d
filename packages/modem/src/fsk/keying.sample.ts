import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedBits } from "../signal/keyed.ts";
import { withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createFskDemodulator, type SoftBits } from "./demodulate.ts";

/** Keying for trials: 170 Hz at about 100 Bd, random bits. */
export interface Keying {
	readonly centreHz?: number;
	/** Parts in a million by which the sender's clock is fast. */
	readonly fastPpm?: number;
	readonly isContinuous?: boolean;
}

export const SHIFT_HZ = 170;

export function randomBits(count: number, seed: number): Uint8Array {
	const random = prng(seed);
	return Uint8Array.from({ length: count }, () => (random() < 0.5 ? 1 : 0));
}

export function baudOf({ fastPpm = 0 }: Keying): number {
	return 100 * (1 + fastPpm / 1e6);
}

export function keyed(bits: Uint8Array, keying: Keying = {}): Float64Array {
	const { centreHz = 1_700, isContinuous = true } = keying;
	return keyedBits(bits, { baud: baudOf(keying), lowHz: centreHz - SHIFT_HZ / 2, highHz: centreHz + SHIFT_HZ / 2, isContinuous });
}

/** Noise such that keying of `keyed`'s own amplitude has that Eb/N0, also where silence is around it. */
export function noisy(samples: Float64Array, ebN0Db: number, seed: number): Float64Array {
	return withNoiseAtEbN0(samples, ebN0Db, { bitsPerSecond: 100, random: prng(seed), signalPower: 0.125 });
}

export function demodulated(samples: Float64Array): readonly SoftBits[] {
	const demodulator = createFskDemodulator({ baud: 100, shiftHz: SHIFT_HZ });
	const out: SoftBits[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		out.push(...demodulator.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	}
	return [...out, ...demodulator.end()];
}

export function carriersOf(heard: readonly SoftBits[]): readonly number[] {
	return [...new Set(heard.map(({ carrier }) => carrier))];
}

/** Bits heard beside those sent from `startS` on: how many of these are there, each once, and how many are wrong. */
export function compared(heard: readonly SoftBits[], bits: Uint8Array, startS: number, baud = 100): { seen: number; wrong: number } {
	const found = new Map<number, boolean>();
	for (const { softs, atS } of heard) {
		for (const [k, soft] of softs.entries()) {
			const index = Math.floor((atS[k]! - startS) * baud);
			if (index >= 0 && index < bits.length && !found.has(index)) found.set(index, soft > 0 !== (bits[index] === 1));
		}
	}
	return { seen: found.size, wrong: [...found.values()].filter((isWrong) => isWrong).length };
}

/** Errors among `count` random bits through the whole demodulator, seconds of noise before and after them. */
export function countErrors(count: number, ebN0Db: number, keying: Keying, seed: number): { seen: number; wrong: number } {
	const bits = randomBits(count, seed);
	const before = silence(1.237);
	const samples = noisy(joined(before, keyed(bits, keying), silence(2)), ebN0Db, seed + 1);
	return compared(demodulated(samples), bits, before.length / MODEM_RATE_HZ, baudOf(keying));
}
