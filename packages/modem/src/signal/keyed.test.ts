import { describe, expect, it } from "vitest";
import { keyedBits, keyedTones } from "./keyed.ts";

const TURN = 2 * Math.PI;

describe("keyedTones", () => {
	it("puts each border where the seconds say, over 100 000 parts", () => {
		const parts = Array.from({ length: 100_000 }, (_, i) => ({ toneHz: i % 2 === 0 ? 1_000 : 2_000, seconds: 1 / 300 }));
		const samples = keyedTones(parts, { amplitude: 1 });
		expect(samples).toHaveLength(Math.round((100_000 / 300) * 8_000));
		// the last part but one starts at 99 998 / 300 s with 49 999 parts of each tone behind it
		const startS = 99_998 / 300;
		let compared = 0;
		for (let n = Math.ceil(startS * 8_000); n < (99_999 / 300) * 8_000; n++, compared++) {
			const turns = 49_999 * (1_000 / 300 + 2_000 / 300) + 1_000 * (n / 8_000 - startS);
			expect(samples[n]).toBeCloseTo(Math.sin(TURN * (turns % 1)), 6);
		}
		expect(compared).toBe(26);
	});

	it("never jumps: no step greater than the tone's own", () => {
		const samples = keyedTones(
			[1_234.5, 1_700.25, 300].map((toneHz) => ({ toneHz, seconds: 0.0333 })),
			{ amplitude: 1 },
		);
		for (let n = 1; n < samples.length; n++) expect(Math.abs(samples[n]! - samples[n - 1]!)).toBeLessThan(TURN * (1_701 / 8_000));
	});

	it("is silent or short where asked", () => {
		expect(keyedTones([])).toHaveLength(0);
		expect(keyedTones([{ toneHz: 0, seconds: 0.1 }])).toEqual(new Float64Array(800));
	});
});

describe("keyedBits", () => {
	const keying = { baud: 100, lowHz: 1_615, highHz: 1_785 };
	it("is what keyedTones makes of the same parts", () => {
		const bits = [1, 0, 0, 1, 1, 1, 0, 1, 0];
		const tones = keyedTones(bits.map((bit) => ({ toneHz: bit ? 1_785 : 1_615, seconds: 0.01 })));
		const samples = keyedBits(bits, keying);
		expect(samples).toHaveLength(tones.length);
		expect(Math.max(...samples.map((sample, n) => Math.abs(sample - tones[n]!)))).toBeLessThan(1e-9);
	});

	it("keeps two oscillators running where phase is not continuous", () => {
		const samples = keyedBits([1, 0, 1, 0], { ...keying, isContinuous: false, amplitude: 1, rateHz: 12_001 });
		expect(samples).toHaveLength(480);
		for (const [n, sample] of samples.entries()) {
			const toneHz = Math.floor((n / 12_001) * 100) % 2 === 0 ? 1_785 : 1_615;
			expect(sample).toBeCloseTo(Math.sin(TURN * toneHz * (n / 12_001)), 9);
		}
	});

	it("has no drift at a speed that does not divide the rate", () => {
		const samples = keyedBits(new Uint8Array(45_450), { baud: 45.45, lowHz: 1_000, highHz: 1_170 });
		expect(samples).toHaveLength(8_000_000);
		expect(samples[7_999_998]).toBeCloseTo(0.5 * Math.sin(-2 * TURN * (1_000 / 8_000)), 6);
	});
});
