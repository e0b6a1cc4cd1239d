import { describe, expect, it } from "vitest";
import { yearMonth } from "./solarMonth.ts";
import { type Sunspots, sunspots } from "./solarSunspots.ts";

function everyMonth(from: string, to: string): readonly (readonly [string, Sunspots])[] {
	const [first, last] = [yearMonth(from), yearMonth(to)];
	const found: [string, Sunspots][] = [];
	for (let i = first.year * 12 + first.month - 1; i <= last.year * 12 + last.month - 1; i++) {
		const month = `${Math.floor(i / 12)}-${String((i % 12) + 1).padStart(2, "0")}`;
		found.push([month, sunspots(month)]);
	}
	return found;
}

describe("sunspots", () => {
	it("gives seven tenths of what the government published (NOAA/SWPC): the old scale", () => {
		expect(sunspots("2019-01")).toMatchObject({ r12Old: 3.64, low: 3.64, high: 3.64, kind: "observed", basis: ["sunspotScale"] }); // 5.2
		expect(sunspots("2023-09")).toMatchObject({ r12Old: 81.27, kind: "observed" }); // 116.1
		expect(sunspots("2025-11")).toMatchObject({ r12Old: 79.52, kind: "forecast", basis: ["sunspotScale", "sunspotSpread"] }); // 113.6
		expect(sunspots("2030-12")).toMatchObject({ r12Old: 13.09, low: 6.09, high: 20.09, kind: "forecast" }); // 18.7, 8.7 to 28.7
	});

	it("spreads a forecast by its own band at least, and by the share that a forecast was seen to miss", () => {
		const { r12Old, low, high } = sunspots("2027-02"); // 96.3, by its publisher 86.3 to 106.3; another index file says 110.3
		expect(r12Old).toBe(67.41);
		expect(low).toBeCloseTo(0.7 * r12Old, 1);
		expect(high).toBeGreaterThan(0.7 * 110.3);
	});

	it("says where it guesses: across the gap of the table, and past its end by an earlier cycle", () => {
		const gap = sunspots("2024-10");
		expect(gap.kind).toBe("between");
		expect(gap.source).toContain("2023-09 to 2025-11");
		expect(gap.high).toBeGreaterThan(0.7 * 160.9); // what came
		const later = sunspots("2031-06");
		expect(later).toMatchObject({ kind: "earlierCycle", r12Old: sunspots("2020-06").r12Old });
		expect(later.source).toContain("2020-06");
		expect(later.basis).toContain("solarCycle");
		expect(sunspots("2060-01").source).toContain("3 cycles earlier");
	});

	it("has every month from 2019 to 2070, in order of low, middle and high, without jumps inside the table", () => {
		const months = everyMonth("2019-01", "2070-12");
		expect(months.length).toBe(52 * 12);
		const count = (kind: Sunspots["kind"]) => months.filter(([, { kind: one }]) => one === kind).length;
		expect([count("observed"), count("between"), count("forecast")]).toEqual([57, 25, 62]);
		for (const [, { r12Old, low, high }] of months) {
			expect(low).toBeLessThanOrEqual(r12Old);
			expect(r12Old).toBeLessThanOrEqual(high);
			expect(low).toBeGreaterThanOrEqual(0);
			expect(high).toBeLessThan(160);
		}
		const inTable = months.filter(([month]) => month <= "2030-12");
		for (let i = 1; i < inTable.length; i++) expect(Math.abs(inTable[i]![1].r12Old - inTable[i - 1]![1].r12Old)).toBeLessThan(5);
	});

	it("takes the user's own figure as it stands, on the old scale", () => {
		expect(sunspots("2027-03", 100)).toMatchObject({ r12Old: 100, low: 100, high: 100, kind: "given", basis: [] });
		expect(sunspots("1990-03", 0)).toMatchObject({ r12Old: 0, kind: "given" });
		for (const bad of [-1, 401, Number.NaN]) expect(() => sunspots("2027-03", bad)).toThrow(RangeError);
	});

	it("refuses text that is no month, and months before the table", () => {
		for (const bad of ["2027", "2027-3", "2027-13", "2027-00", " 2027-03", "27-03", ""]) expect(() => sunspots(bad)).toThrow(SyntaxError);
		expect(() => sunspots("2018-12")).toThrow(/begins in 2019-01; give a number/);
	});
});
