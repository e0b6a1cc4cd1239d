import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { keyedBits, keyedTones } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtSnr } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import { makeText } from "../text/makeText.ts";
import type { HeardTeletype } from "./heardTeletype.ts";
import { createTeletypeReceiver } from "./teletypeReceiver.ts";

function hear(samples: Float64Array): readonly HeardTeletype[] {
	const receiver = createTeletypeReceiver();
	const heard: HeardTeletype[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES)
		heard.push(...receiver.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	return [...heard, ...receiver.end()];
}

/** Keyed bits by chance, as enciphered traffic without starts and stops is. */
function randomBits(seconds: number, baud: number, shiftHz: number, seed: number): Float64Array {
	const random = prng(seed);
	const bits = Array.from({ length: Math.round(seconds * baud) }, () => (random() < 0.5 ? 0 : 1));
	return keyedBits(bits, { baud, lowHz: 1_700 - shiftHz / 2, highHz: 1_700 + shiftHz / 2 });
}

/** A hand's Morse: dots, dashes and gaps by chance, 20 words a minute. */
function morse(seconds: number, toneHz: number, seed: number): Float64Array {
	const random = prng(seed);
	const dot = 0.06;
	const signs = Array.from({ length: Math.round(seconds / (4.5 * dot)) }, () => [
		{ toneHz, seconds: (random() < 0.5 ? dot : 3 * dot) * (0.9 + 0.2 * random()) },
		{ toneHz: 0, seconds: random() < 0.7 ? dot : random() < 0.7 ? 3 * dot : 7 * dot },
	]).flat();
	return keyedTones(signs);
}

/** Voiced sounds by chance: harmonics of a pitch that glides, louder about two frequencies that move, with pauses. */
function speechLike(seconds: number, seed: number): Float64Array {
	const random = prng(seed);
	const samples = new Float64Array(seconds * MODEM_RATE_HZ);
	let [turns, pitchHz, firstHz, secondHz, level] = [0, 120, 500, 1_500, 0];
	for (let n = 0; n < samples.length; n++) {
		if (n % 1_600 === 0)
			[pitchHz, firstHz, secondHz, level] = [90 + 80 * random(), 300 + 500 * random(), 900 + 1_600 * random(), random() < 0.25 ? 0 : 0.3];
		pitchHz += (random() - 0.5) * 0.2;
		turns += pitchHz / MODEM_RATE_HZ;
		if (level === 0) continue;
		for (let k = 2; k * pitchHz < 2_800; k++) {
			const near = 1 / (1 + ((k * pitchHz - firstHz) / 150) ** 2) + 0.5 / (1 + ((k * pitchHz - secondHz) / 200) ** 2);
			samples[n]! += level * near * Math.sin(2 * Math.PI * ((k * turns) % 1));
		}
	}
	return samples;
}

const MINUTES = 60;

describe("createTeletypeReceiver hears nothing", () => {
	it("in ten minutes of noise, white and with the edge of a set's filter", () => {
		const noise = whiteNoise(10 * MINUTES * MODEM_RATE_HZ, 0.01, prng(1));
		expect(hear(noise)).toEqual([]);
		const edge = noise.subarray(0, 3 * MINUTES * MODEM_RATE_HZ);
		for (let n = edge.length - 1; n >= 3; n--) edge[n] = edge[n]! + 0.9 * edge[n - 1]! + 0.6 * edge[n - 2]! + 0.3 * edge[n - 3]!;
		expect(hear(edge)).toEqual([]);
	});

	it("in ten minutes of keying at 850 Hz shift without starts and stops", () => {
		expect(hear(withNoiseAtSnr(randomBits(5 * MINUTES, 50, 850, 2), 10, { random: prng(3) }))).toEqual([]);
		expect(hear(withNoiseAtSnr(randomBits(5 * MINUTES, 75, 850, 4), 0, { random: prng(5) }))).toEqual([]);
	});

	it("in keying at 100 Bd, a text by collective FEC, dots, and slower random bits", () => {
		expect(hear(withNoiseAtSnr(randomBits(MINUTES, 100, 170, 6), 5, { random: prng(7) }))).toEqual([]);
		const text = makeText("GALE WARNING 49-30N 006W\nWIND SOUTHWEST 8 TO 9\n".repeat(6), { centreHz: 1_700, phasingPairs: 200 });
		expect(hear(withNoiseAtSnr(text, 8, { random: prng(8) }))).toEqual([]);
		for (const baud of [45.45, 50, 75, 100]) {
			const dots = keyedBits(
				Uint8Array.from({ length: 20 * baud }, (_, i) => i & 1),
				{ baud, lowHz: 1_615, highHz: 1_785 },
			);
			expect([baud, hear(withNoiseAtSnr(dots, 10, { random: prng(9) }))]).toEqual([baud, []]);
			expect([baud, hear(withNoiseAtSnr(randomBits(25, baud, 170, baud), 10, { random: prng(10) }))]).toEqual([baud, []]);
		}
	});

	it("in Morse, two Morse senders at once, and what resembles speech", () => {
		const one = morse(60, 700, 11);
		expect(hear(withNoiseAtSnr(one, 15, { random: prng(12) }))).toEqual([]);
		const other = morse(60, 1_150, 13);
		const both = one.subarray(0, Math.min(one.length, other.length)).map((sample, n) => sample + other[n]!);
		expect(hear(withNoiseAtSnr(both, 15, { random: prng(14) }))).toEqual([]);
		expect(hear(speechLike(MINUTES, 15))).toEqual([]);
	});
});
