import { describe, expect, it } from "vitest";
import { joined, meanPower, mixed, scaled, silence } from "./join.ts";
import { keyedTones } from "./keyed.ts";

describe("joined, mixed, scaled, silence", () => {
	it("put signals after and over each other", () => {
		const [a, b] = [Float64Array.of(1, 2), Float64Array.of(10, 20, 30)];
		expect(joined(a, silence(2 / 8_000), b)).toEqual(Float64Array.of(1, 2, 0, 0, 10, 20, 30));
		expect(mixed(a, b)).toEqual(Float64Array.of(11, 22, 30));
		expect(scaled(a, 3)).toEqual(Float64Array.of(3, 6));
		expect(joined()).toHaveLength(0);
		expect(silence(0.5, 48_000)).toHaveLength(24_000);
	});
});

describe("meanPower", () => {
	it("is half the square of a sine's peak", () => {
		expect(meanPower(keyedTones([{ toneHz: 1_000, seconds: 1 }], { amplitude: 0.4 }))).toBeCloseTo(0.08, 12);
		expect(meanPower(new Float64Array(0))).toBe(0);
	});
});
