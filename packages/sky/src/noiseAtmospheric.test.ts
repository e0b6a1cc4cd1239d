import { describe, expect, it } from "vitest";
import { atmosphericAt1MHz, atmosphericDayShare, atmosphericLaw } from "./noiseAtmospheric.ts";

const at = (month: number, localHour: number, latDeg: number, lonDeg: number): number =>
	atmosphericAt1MHz({ month, utcHour: (((localHour - lonDeg / 15) % 24) + 24) % 24, position: { latDeg, lonDeg } });

// Our own model, no outside source: the levels it was drawn to give.
describe("atmosphericAt1MHz has the sizes it was drawn for (own model, no outside source)", () => {
	it.each([
		["North Atlantic, July, midnight", at(7, 0, 45, -30), 73],
		["North Atlantic, January, 10 h", at(1, 10, 45, -30), 26],
		["equatorial Africa, April, midnight", at(4, 0, 0, 20), 90],
	])("%s", (_where, found, expected) => {
		expect(Math.abs(found - expected)).toBeLessThan(2);
	});

	it("10 to 20 dB on a polar day, 10 to 95 dB anywhere", () => {
		expect(at(7, 10, 80, 0)).toBeGreaterThan(10);
		expect(at(7, 10, 80, 0)).toBeLessThan(20);
		let visited = 0;
		for (let month = 1; month <= 12; month++) {
			for (let hour = 0; hour < 24; hour++) {
				for (let latDeg = -90; latDeg <= 90; latDeg += 6) {
					for (let lonDeg = -180; lonDeg < 180; lonDeg += 12) {
						const level = atmosphericAt1MHz({ month, utcHour: hour, position: { latDeg, lonDeg } });
						if (!(level > 10 && level < 95)) throw new Error(`${level} dB in month ${month}, hour ${hour}, at ${latDeg}, ${lonDeg}`);
						visited++;
					}
				}
			}
		}
		expect(visited).toBe(12 * 24 * 31 * 30);
	});

	it("storms follow the sun, summer's nights are louder, the storm centres stand out, the quiet zones fall back", () => {
		expect(at(7, 22, 40, -30)).toBeGreaterThan(at(1, 22, 40, -30) + 8);
		expect(at(1, 22, -40, -30)).toBeGreaterThan(at(7, 22, -40, -30) + 8);
		expect(at(4, 22, -5, -60)).toBeGreaterThan(at(4, 22, -5, -100) + 4);
		expect(at(4, 22, -30, -15)).toBeLessThan(at(4, 22, -30, 60) - 3);
	});
});

describe("atmosphericAt1MHz is continuous", () => {
	it("in local time, across midnight and the dateline", () => {
		let compared = 0;
		for (const latDeg of [-70, -35, 0, 20, 52, 79, 85]) {
			for (let minute = 0; minute < 1440; minute++) {
				const hour = minute / 60;
				const next = atmosphericAt1MHz({ month: 7, utcHour: ((minute + 1) % 1440) / 60, position: { latDeg, lonDeg: -179.9 } });
				const here = atmosphericAt1MHz({ month: 7, utcHour: hour, position: { latDeg, lonDeg: -179.9 } });
				expect(Math.abs(next - here)).toBeLessThan(0.12);
				const across = atmosphericAt1MHz({ month: 7, utcHour: hour, position: { latDeg, lonDeg: 179.9999 } });
				const west = atmosphericAt1MHz({ month: 7, utcHour: hour, position: { latDeg, lonDeg: -180 } });
				expect(Math.abs(across - west)).toBeLessThan(0.001);
				compared++;
			}
		}
		expect(compared).toBe(7 * 1440);
	});

	it.each([90, -90])("at the pole %d, where all meridians meet", (pole) => {
		const levels: number[] = [];
		for (let lonDeg = -180; lonDeg < 180; lonDeg += 15) {
			const near = { latDeg: pole - Math.sign(pole) * 1e-6, lonDeg };
			levels.push(atmosphericAt1MHz({ month: 1, utcHour: 9, position: near }), atmosphericDayShare({ utcHour: 9, position: near }) * 30);
		}
		expect(levels).toHaveLength(48);
		const fam1 = levels.filter((_, i) => i % 2 === 0);
		const share = levels.filter((_, i) => i % 2 === 1);
		for (const each of [fam1, share]) expect(Math.max(...each) - Math.min(...each)).toBeLessThan(0.001);
	});
});

describe("atmosphericDayShare", () => {
	it.each([
		[2, 0],
		[6, 0],
		[8, 0.5],
		[10, 1],
		[13, 1],
		[14, 1],
		[17, 0.25],
		[18, 0],
		[23, 0],
	])("at %d h local is %d", (hour, share) => {
		expect(atmosphericDayShare({ utcHour: hour, position: { latDeg: 20, lonDeg: 0 } })).toBeCloseTo(share, 10);
		expect(atmosphericDayShare({ utcHour: (hour + 6) % 24, position: { latDeg: 20, lonDeg: -90 } })).toBeCloseTo(share, 10);
	});
});

describe("atmosphericLaw", () => {
	const noise = (of: "night" | "day", fMHz: number, fam1: number): number => {
		const { slope, level } = atmosphericLaw(of, fMHz);
		return slope * fam1 + level;
	};

	it("is the level at 1 MHz itself, 34 and 30 dB at 10 MHz for levels of 60 by night and 40 by day, and meets itself there", () => {
		expect(noise("night", 1, 73)).toBeCloseTo(73, 10);
		expect(noise("day", 1, 26)).toBeCloseTo(26, 10);
		expect(noise("night", 10, 60)).toBeCloseTo(34, 10);
		expect(noise("day", 10, 40)).toBeCloseTo(30, 10);
		for (const of of ["night", "day"] as const) expect(noise(of, 10.0001, 50)).toBeCloseTo(noise(of, 10, 50), 3);
	});

	it("falls by 55 dB a decade of frequency above 10 MHz by night, 40 by day, and dips in the day's MF absorption", () => {
		expect(noise("night", 10, 60) - noise("night", 31.6227766, 60)).toBeCloseTo(27.5, 5);
		expect(noise("day", 10, 40) - noise("day", 31.6227766, 40)).toBeCloseTo(20, 5);
		expect(noise("day", 3.16227766, 40)).toBeCloseTo((40 + 30) / 2 - 8, 5);
	});
});
