import { describe, expect, it } from "vitest";
import { FRAME_SAMPLES, MODEM_RATE_HZ } from "../receiver.ts";
import { joined, mixed, silence } from "../signal/join.ts";
import { keyedTones } from "../signal/keyed.ts";
import { whiteNoise } from "../signal/noise.ts";
import { prng } from "../signal/random.ts";
import type { HeardTone } from "./heardTone.ts";
import { createToneReceiver } from "./toneReceiver.ts";

function hear(samples: Float64Array): readonly HeardTone[] {
	const receiver = createToneReceiver();
	const heard: HeardTone[] = [];
	for (let at = 0; at + FRAME_SAMPLES <= samples.length; at += FRAME_SAMPLES) {
		heard.push(...receiver.frame(samples.subarray(at, at + FRAME_SAMPLES)));
	}
	return [...heard, ...receiver.end()];
}

const tone = (toneHz: number, seconds: number, amplitude = 0.1) => keyedTones([{ toneHz, seconds }], { amplitude });

describe("createToneReceiver", () => {
	it("measures a tone in noise near the Cramer-Rao bound, and says how sure it is", () => {
		const random = prng(1);
		let [compared, squares] = [0, 0];
		for (const [seconds, noisePower] of [
			[2, 1e-2],
			[5, 1e-2],
			[12, 2e-2],
		] as const) {
			const errors: number[] = [];
			let told = 0;
			// Real tone of power C in noise of density N0: variance of its frequency 6 N0 / (C (2 pi)^2 T^3) (Rife and Boorstyn 1974).
			const bound = Math.sqrt((6 * noisePower) / 4_000 / 0.005 / seconds) / (2 * Math.PI * seconds);
			for (let run = 0; run < 20; run++) {
				const toneHz = 400 + 2_500 * random();
				const samples = mixed(tone(toneHz, seconds), whiteNoise(seconds * MODEM_RATE_HZ, noisePower, random));
				const [item, ...more] = hear(samples);
				expect(more).toEqual([]);
				errors.push(item!.audioHz - toneHz);
				told += item!.uncertaintyHz / 20;
				expect(Math.abs(item!.snrDb - 10 * Math.log10(0.005 / ((noisePower * 2_700) / 4_000)))).toBeLessThan(1.5);
			}
			const rms = Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length);
			console.info(`${seconds} s: rms ${rms.toFixed(5)} Hz, told ${told.toFixed(5)}, Cramer-Rao ${bound.toFixed(5)}`);
			squares += (20 * (rms / (1.22 * bound)) ** 2) / 60; // 1.22 for the window
			expect(told).toBeGreaterThan(rms / 1.4);
			expect(told).toBeLessThan(rms * 1.6 + 0.0005);
			compared++;
		}
		expect(compared).toBe(3);
		// what 60 runs leave to chance: two sigma of their rms
		expect(Math.sqrt(squares)).toBeLessThan(1.18);
	});

	it("hears several at once, each from when to when, and how much of the time a keyed one is on", () => {
		const pair = joined(
			silence(1),
			mixed(tone(645.7, 1), tone(977.2, 1)),
			silence(0.3),
			mixed(tone(312.6, 1), tone(1_083.9, 1)),
			silence(1),
		);
		const heard = hear(mixed(pair, whiteNoise(pair.length, 1e-4, prng(2))));
		expect(heard.map(({ audioHz }) => Math.round(10 * audioHz) / 10).sort((a, b) => a - b)).toEqual([312.6, 645.7, 977.2, 1_083.9]);
		for (const { audioHz, startS, endS } of heard) {
			const from = audioHz === 645.7 || audioHz < 1_000 === audioHz > 600 ? 1 : 2.3;
			expect(Math.abs(startS - from)).toBeLessThan(0.1);
			expect(Math.abs(endS - from - 1)).toBeLessThan(0.1);
		}
		const ticks = Array.from({ length: 12 }, () => [
			{ toneHz: 1_000, seconds: 0.6 },
			{ toneHz: 0, seconds: 0.4 },
		]).flat();
		const [carrier, ...more] = hear(mixed(keyedTones(ticks), whiteNoise(12 * MODEM_RATE_HZ, 1e-3, prng(3))));
		expect(more).toEqual([]);
		expect(Math.abs(carrier!.audioHz - 1_000)).toBeLessThan(0.01);
		expect(Math.abs(carrier!.onRatio - 0.62)).toBeLessThan(0.08);
	});

	it("gives a long tone in parts of a minute", () => {
		const heard = hear(tone(700, 150));
		// each begins half a second early, in what was kept
		expect(heard.map(({ startS }) => Math.round(startS / 10))).toEqual([0, 6, 12]);
		expect(Math.abs(heard[2]!.endS - 150)).toBeLessThan(0.1);
		for (const { audioHz } of heard) expect(audioHz).toBeCloseTo(700, 3);
	});

	it("invents none in four minutes of noise, nor in sounds that glide", () => {
		expect(hear(whiteNoise(240 * MODEM_RATE_HZ, 0.01, prng(4)))).toEqual([]);
		let turns = 0;
		const voice = Float64Array.from({ length: 20 * MODEM_RATE_HZ }, (_, n) => {
			turns += (130 + 25 * Math.sin((2 * Math.PI * n) / 5_000) + 10 * Math.sin((2 * Math.PI * n) / 1_700)) / MODEM_RATE_HZ;
			return [3, 4, 5, 9, 10].reduce((sum, k) => sum + 0.05 * Math.sin(2 * Math.PI * ((k * turns) % 1)), 0);
		});
		expect(hear(voice)).toEqual([]);
	});

	it("hears a tone without noise, rounded to 16 bits, as one and as nothing else; one 40 dB weaker beside it too", () => {
		const rounded = (samples: Float64Array) => samples.map((x) => Math.round(32_767 * x) / 32_768);
		const around = (samples: Float64Array) => hear(rounded(joined(silence(1), samples, silence(1))));
		let compared = 0;
		for (const toneHz of [437.5, 1_000, 1_500, 2_182.25, 3_100]) {
			for (const amplitude of [0.05, 0.5, 1]) {
				const heard = around(tone(toneHz, 5, amplitude));
				expect(heard.map(({ audioHz }) => Math.round(100 * audioHz) / 100)).toEqual([toneHz]);
				compared++;
			}
		}
		expect(compared).toBe(15);
		const both = around(mixed(tone(1_000, 5, 0.5), tone(1_750, 5, 0.005)));
		expect(both.map(({ audioHz }) => Math.round(audioHz))).toEqual([1_000, 1_750]);
	});

	it("never throws, whatever it is given", () => {
		const random = prng(5);
		const wild = [
			silence(3),
			Float64Array.from({ length: 24_000 }, () => 1e300 * (random() - 0.5)),
			new Float64Array(24_000).fill(1),
			Float64Array.from({ length: 24_000 }, () => Math.sign(random() - 0.5)),
			Float64Array.from(tone(1_234.5, 4, 30), (x) => Math.max(-1, Math.min(1, x))),
		];
		const heard = hear(joined(...wild));
		expect(JSON.stringify(heard)).not.toContain("null");
		expect(heard.some(({ audioHz }) => Math.abs(audioHz - 1_234.5) < 0.05)).toBe(true);
	});
});
