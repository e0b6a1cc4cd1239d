import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hourRuns, hoursInWords } from "./hoursInWords.ts";
import { bestByHour, chanceAtMinute, usableSpan } from "./usableSpan.ts";

const day = (value: number) => Array.from({ length: 24 }, () => value);
const with_ = (base: number, ...spans: readonly (readonly [number, number, number])[]) =>
	day(base).map((value, hour) => spans.find(([from, to]) => hour >= from && hour < to)?.[2] ?? value);

describe("hours in words", () => {
	test("runs, over midnight, all day and never", () => {
		expect(hoursInWords(with_(0, [6, 10, 0.9], [10, 12, 0.5]))).toBe("good 0600-1000; fair 1000-1200; not heard otherwise");
		expect(hoursInWords(with_(0, [5, 6, 0.5], [6, 10, 0.9], [10, 12, 0.5], [23, 24, 0.5]))).toBe(
			"good 0600-1000; fair 0500-0600, 1000-1200, 2300-2400; not heard otherwise",
		);
		expect(hoursInWords(with_(0, [22, 24, 0.8], [0, 3, 0.8]))).toBe("good 2200-0300; not heard otherwise");
		expect(hoursInWords(with_(0.2, [0, 12, 0.8]))).toBe("good 0000-1200; poor 1200-2400");
		expect(hoursInWords(day(0.8))).toBe("good all day");
		expect(hoursInWords(day(0.1))).toBe("not heard");
	});

	test("one hour that only just differs from both its neighbours is told as they are; one that differs plainly is not", () => {
		expect(hoursInWords(with_(0.73, [5, 6, 0.77]))).toBe("fair all day");
		expect(hoursInWords(with_(0.77, [23, 24, 0.73]))).toBe("good all day");
		expect(hoursInWords(with_(0.73, [5, 6, 0.85]))).toBe("good 0500-0600; fair 0600-0500");
		expect(hoursInWords(with_(0.73, [5, 7, 0.77]))).toBe("good 0500-0700; fair 0700-0500");
		expect(hoursInWords(with_(0.16, [5, 6, 0.13]))).toBe("poor all day");
		expect(hoursInWords(with_(0.9, [5, 6, 0.13]))).toBe("good 0600-0500; not heard otherwise");
	});

	test("the runs of any day cover its 24 hours once", () => {
		let runs = 0;
		fc.assert(
			fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 24, maxLength: 24 }), (chances) => {
				const lengths = hourRuns(chances).map(({ fromHour, toHour }) => (toHour > fromHour ? toHour - fromHour : toHour + 24 - fromHour));
				runs += lengths.length;
				expect(lengths.reduce((sum, length) => sum + length, 0)).toBe(24);
			}),
			{ seed: 1, numRuns: 200 },
		);
		expect(runs).toBeGreaterThan(500);
	});
});

describe("around a broadcast", () => {
	const evening = with_(0, [18, 24, 0.9]);

	test("the span takes in the usable minutes around it; none when nothing of it is usable", () => {
		expect(chanceAtMinute(evening, 17 * 60 + 30)).toBeCloseTo(0.45, 12);
		const span = usableSpan(evening, 0.45, 19 * 60, 19 * 60 + 15);
		expect(span).toEqual({ firstMin: 17 * 60 + 30, lastMin: 23 * 60 + 30 });
		expect(usableSpan(evening, 0.45, 12 * 60, 12 * 60 + 15)).toBeNull();
		expect(usableSpan(evening, 0.45, 17 * 60, 18 * 60)?.firstMin).toBe(17 * 60 + 30);
		expect(usableSpan(day(1), 0.5, 60, 75)).toMatchObject({ firstMin: expect.any(Number) });
	});

	test("the best band by hour: chance, then the higher frequency (best practice: the highest usable)", () => {
		const rows = [
			{ fMHz: 4, chances: with_(0, [0, 6, 0.9]) },
			{ fMHz: 8, chances: with_(0, [4, 18, 0.9]) },
		];
		expect(bestByHour(rows).slice(0, 8)).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
		expect(bestByHour(rows)[20]).toBeNull();
	});
});
