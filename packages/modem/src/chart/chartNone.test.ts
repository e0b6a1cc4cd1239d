import { describe, expect, it } from "vitest";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { keyedBits, keyedTones } from "../signal/keyed.ts";
import { whiteNoise, withNoiseAtSnr } from "../signal/noise.ts";
import { prng, type Random } from "../signal/random.ts";
import { chartsIn } from "./charts.sample.ts";

const SECONDS = 48;

function noisy(samples: Float64Array): Float64Array {
	return withNoiseAtSnr(samples, 20, { random: prng(2), signalPower: 0.125 });
}

/** Harmonics of `hz` at `t`, as of a plucked string. */
function pluck(hz: number, t: number): number {
	return [1, 2, 3, 4, 5, 6].reduce((sum, k) => sum + Math.sin(2 * Math.PI * k * hz * t) / k, 0) * Math.exp(-6 * (t % 0.25));
}

/** Notes of a quarter of a second, the tune repeated. */
function tune(notesHz: readonly number[]): Float64Array {
	return new Float64Array(SECONDS * MODEM_RATE_HZ).map((_, n) => {
		const t = n / MODEM_RATE_HZ;
		return 0.2 * pluck(notesHz[Math.floor(t / 0.25) % notesHz.length]!, t);
	});
}

/** Voiced syllables, four a second, of gliding pitch, shaped by two moving resonances. */
function speech(random: Random): Float64Array {
	let [phase, pitch, formant] = [0, 120, 1_500];
	return new Float64Array(SECONDS * MODEM_RATE_HZ).map((_, n) => {
		const t = n / MODEM_RATE_HZ;
		if (n % 2_000 === 0) [pitch, formant] = [90 + 80 * random(), 900 + 1_400 * random()];
		phase += pitch / MODEM_RATE_HZ;
		let sum = 0;
		for (let k = 1; k < 24; k++) sum += Math.sin(2 * Math.PI * k * phase) / (1 + ((k * pitch - formant) / 150) ** 2);
		return 0.3 * sum * Math.max(0, Math.sin(2 * Math.PI * 2 * t)) ** 0.5;
	});
}

describe("what is no chart", () => {
	it("ten minutes of noise give none", () => {
		expect(chartsIn(whiteNoise(600 * MODEM_RATE_HZ, 0.05, prng(1)))).toEqual([]);
	});

	it("keyed signals give none, in dots, at random, idle or repeating a pair of letters", () => {
		const random = prng(3);
		const patterns: readonly ((bit: number) => number)[] = [
			(bit) => bit % 2,
			() => Math.round(random()),
			(bit) => (bit % 15 < 7 ? 1 : 0),
			(bit) => Number("0101011010101"[bit % 13]),
		];
		let tried = 0;
		for (const [baud, shiftHz] of [
			[100, 170],
			[50, 450],
			[75, 850],
			[50, 850],
		] as const) {
			for (const pattern of patterns) {
				const bits = Array.from({ length: (baud * SECONDS) / 3 }, (_, bit) => pattern(bit));
				const samples = keyedBits(bits, { baud, lowHz: 1_900 - shiftHz / 2, highHz: 1_900 + shiftHz / 2 });
				expect(chartsIn(noisy(samples))).toEqual([]);
				tried++;
			}
		}
		expect(tried).toBe(16);
	});

	it("Morse, the two-tone alarm, second ticks, a steady tone and one that climbs each second give none", () => {
		const tones = (parts: readonly (readonly [number, number])[], times: number) =>
			noisy(keyedTones(Array.from({ length: times }, () => parts.map(([toneHz, seconds]) => ({ toneHz, seconds }))).flat()));
		const random = prng(5);
		const keyed = new Float64Array(SECONDS * MODEM_RATE_HZ);
		for (let n = 0, isDown = true; n < keyed.length; isDown = !isDown) {
			const length = 480 * (random() < 0.6 ? 1 : 3); // dots of 60 ms: 20 words a minute
			for (let end = n + length; n < end && n < keyed.length; n++) keyed[n] = isDown ? 0.5 * Math.sin(2 * Math.PI * 0.1 * n) : 0;
		}
		expect(chartsIn(noisy(keyed))).toEqual([]);
		expect(
			chartsIn(
				tones(
					[
						[2_200, 0.25],
						[1_300, 0.25],
					],
					120,
				),
			),
		).toEqual([]);
		expect(
			chartsIn(
				tones(
					[
						[1_900, 0.99],
						[1_500, 0.01],
					],
					SECONDS,
				),
			),
		).toEqual([]);
		expect(chartsIn(tones([[1_900, 1]], SECONDS))).toEqual([]);
		const steps = Array.from({ length: 100 }, (_, step): readonly [number, number] => [1_500 + 8 * step, 0.01]);
		expect(chartsIn(tones(steps, SECONDS))).toEqual([]);
	});

	it("tunes that repeat at a chart's line rates, and speech, give none", () => {
		const tunes = [[262, 392], [262, 330, 392, 523], [294, 440, 300, 450, 262, 330, 392, 523], [300]];
		for (const notesHz of tunes) expect(chartsIn(tune(notesHz))).toEqual([]);
		expect(chartsIn(speech(prng(6)))).toEqual([]);
	});
});
