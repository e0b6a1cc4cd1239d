import { expect, test } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, silence } from "../signal/join.ts";
import { keyedBits } from "../signal/keyed.ts";
import { withNoiseAtEbN0 } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { createFskDemodulator, type SoftBits } from "./demodulate.ts";

function randomBits(count: number, seed: number): Uint8Array {
	const random = prng(seed);
	return Uint8Array.from({ length: count }, () => (random() < 0.5 ? 1 : 0));
}

function demodulated(samples: Float64Array): readonly SoftBits[] {
	const demodulator = createFskDemodulator({ baud: 100, shiftHz: 170 });
	const out: SoftBits[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		out.push(...demodulator.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	}
	return [...out, ...demodulator.end()];
}

/** Bits of one carrier laid beside those sent: how many are there, how many wrong. */
function compared(heard: readonly SoftBits[], bits: Uint8Array, startS: number, baud: number) {
	let [seen, wrong] = [0, 0];
	for (const { softs, atS } of heard) {
		for (const [k, soft] of softs.entries()) {
			const bit = bits[Math.floor((atS[k]! - startS) * baud)];
			if (bit === undefined || atS[k]! < startS) continue;
			seen++;
			if (soft > 0 !== (bit === 1)) wrong++;
		}
	}
	return { seen, wrong };
}

test("A short call is handed back from its first bit to its last", () => {
	const bits = randomBits(600, 1);
	const call = keyedBits(bits, { baud: 100, lowHz: 1_615, highHz: 1_785 });
	const noisy = withNoiseAtEbN0(joined(silence(3.333), call, silence(5)), 15, { bitsPerSecond: 100, random: prng(2), signalPower: 0.125 });
	const heard = demodulated(noisy);
	expect(new Set(heard.map(({ carrier }) => carrier)).size).toBe(1);
	expect(heard.at(-1)!.isOver).toBe(true);
	expect(compared(heard, bits, Math.round(3.333 * MODEM_RATE_HZ) / MODEM_RATE_HZ, 100)).toEqual({ seen: 600, wrong: 0 });
});
