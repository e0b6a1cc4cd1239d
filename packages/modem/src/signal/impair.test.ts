import { describe, expect, it } from "vitest";
import { clipped, offTune, recordedFast, stepped } from "./impair.ts";
import { keyedTones } from "./keyed.ts";

const tone = (toneHz: number, seconds = 1) => keyedTones([{ toneHz, seconds }], { amplitude: 1 });

/** Away from both ends, where the filters run out of signal. */
function greatestDifference(samples: Float64Array, wanted: (n: number) => number): number {
	expect(samples.length).toBeGreaterThan(7_000);
	return samples.subarray(800, -800).reduce((greatest, sample, i) => Math.max(greatest, Math.abs(sample - wanted(i + 800))), 0);
}

describe("offTune", () => {
	it.each([
		[1_700, -63.7],
		[400, 1_900],
		[1_700, 0],
	])("moves a tone of %d Hz by %d Hz", (toneHz, offsetHz) => {
		const moved = offTune(tone(toneHz), offsetHz);
		const wanted = tone(toneHz + offsetHz);
		expect(greatestDifference(moved, (n) => wanted[n]!)).toBeLessThan(1e-3);
	});

	it("drifts by so much a second", () => {
		const moved = offTune(tone(1_000, 2), 10, 5);
		const wanted = (t: number) => Math.sin(2 * Math.PI * (1_010 * t + 2.5 * t * t));
		expect(greatestDifference(moved, (n) => wanted(n / 8_000))).toBeLessThan(1e-3);
	});
});

describe("recordedFast", () => {
	it.each([300, -300, 50_000])("by %d ppm holds more samples of the same sound", (ppm) => {
		const factor = 1 + ppm / 1e6;
		const recorded = recordedFast(tone(2_000), ppm);
		expect(recorded).toHaveLength(Math.round(8_000 * factor));
		expect(greatestDifference(recorded, (n) => Math.sin((2 * Math.PI * 2_000 * n) / (8_000 * factor)))).toBeLessThan(5e-4);
	});
});

describe("clipped", () => {
	it("cuts off both sides", () => {
		expect(clipped(Float64Array.of(-2, -0.5, 0, 0.4, 0.6), 0.5)).toEqual(Float64Array.of(-0.5, -0.5, 0, 0.4, 0.5));
	});
});

describe("stepped", () => {
	it("changes the level at the times told, against the start", () => {
		const flat = new Float64Array(10).fill(1);
		const steps = [
			{ atS: 2 / 8_000, gainDb: -20 },
			{ atS: 5 / 8_000, gainDb: 20 },
		];
		const levels = [...stepped(flat, steps)].map((x) => Math.round(1_000 * x) / 1_000);
		expect(levels).toEqual([1, 1, 0.1, 0.1, 0.1, 10, 10, 10, 10, 10]);
		expect(stepped(flat, [])).toEqual(flat);
	});
});
