import { expect, test } from "vitest";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { createToneEnergies } from "./toneEnergies.ts";

const tone = (hz: number, amplitude: number, count: number) =>
	Float64Array.from({ length: count }, (_, i) => amplitude * Math.cos((2 * Math.PI * hz * i) / MODEM_RATE_HZ + 0.7));

test("A tone shows its squared amplitude in its own correlator and a closed-form share in the other", () => {
	const { low, high, atS } = createToneEnergies({ lowHz: 1_000, highHz: 1_170, windowS: 0.01, outHz: 800 }).push(tone(1_170, 0.5, 8_000));
	expect(low.length).toBe(793); // 800 less the seven steps before the first whole window
	// 170 Hz off for 10 ms: (sin(1.7 pi) / 1.7 pi)^2
	const leak = (Math.sin(1.7 * Math.PI) / (1.7 * Math.PI)) ** 2;
	// a real tone has a negative frequency too: at most its share of a window of 80 samples
	const image = 1 / (80 * Math.sin((2 * Math.PI * 1_170) / MODEM_RATE_HZ));
	for (const [i, energy] of high.entries()) {
		expect(energy).toBeGreaterThan(0.25 * (1 - image) ** 2);
		expect(energy).toBeLessThan(0.25 * (1 + image) ** 2);
		expect(Math.abs(low[i]! - 0.25 * leak)).toBeLessThan(0.25 * 0.012);
	}
	expect(atS[0]).toBeCloseTo(0.005, 12);
	expect(atS[792]).toBeCloseTo(0.995, 12);
});

test("The answer is the same whatever the blocks, also where a step is no whole number of samples", () => {
	const options = { lowHz: 915, highHz: 1_085, windowS: 1 / 45.45, outHz: 16 * 45.45 };
	const samples = tone(1_000, 1, 4_000);
	const whole = createToneEnergies(options).push(samples);
	const pieces = createToneEnergies(options);
	const got = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => pieces.push(samples.subarray(i * 500, (i + 1) * 500)));
	expect(whole.low.length).toBeGreaterThan(340);
	expect(got.flatMap(({ atS }) => [...atS])).toEqual([...whole.atS]);
	const highs = got.flatMap(({ high }) => [...high]);
	for (const [i, energy] of whole.high.entries()) expect(Math.abs(highs[i]! - energy)).toBeLessThan(1e-12);
});

test("A sample that is no number is forgotten with its window", () => {
	const samples = tone(1_000, 1, 2_000);
	samples[500] = Number.NaN;
	const { low, atS } = createToneEnergies({ lowHz: 1_000, highHz: 1_170, windowS: 0.01, outHz: 800 }).push(samples);
	const bad = [...low.keys()].filter((i) => Number.isNaN(low[i]!));
	expect(bad.length).toBe(8);
	for (const i of bad) expect(Math.abs(atS[i]! - 500 / MODEM_RATE_HZ)).toBeLessThan(0.0051);
});
