import { position } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { constantIonosphere } from "../truth/madeUpIonosphere.ts";
import { skyMonth } from "./skyWaveMonth.ts";
import { skipDistanceKm } from "./skyWaveSkip.ts";

const from = position(45.5, -93);
const month = skyMonth({ year: 2027, month: 3, sunspots: 50 });
const skip = (fMHz: number, foF2MHz: number) =>
	skipDistanceKm({ from, bearingDeg: 120, fMHz, utcHour: 2 }, constantIonosphere({ foF2MHz, foEMHz: 0.5, gyro300MHz: 1.1 }), month);

describe("skip distance", () => {
	it("is none under foF2 and half the gyrofrequency, and grows with frequency from there", () => {
		expect(skip(5.5, 5)).toBe(0);
		const growing = [6, 7, 9, 11, 13].map((fMHz) => skip(fMHz, 5)!);
		expect(growing[0]).toBeGreaterThan(0);
		expect(growing).toEqual([...growing].sort((a, b) => a - b));
		expect(growing[4]).toBeLessThan(4000);
	});

	it("is null where no hop reaches the frequency", () => {
		expect(skip(25, 5)).toBeNull();
	});
});
