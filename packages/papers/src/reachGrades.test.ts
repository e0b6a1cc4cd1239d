import fc from "fast-check";
import { expect, test } from "vitest";
import { GRADES } from "./reach.sample.ts";
import { checkGrades, gradeBreadth, gradeIndex, shadeOf } from "./reachGrades.ts";
import { inkColour, REACH_THEMES } from "./reachTheme.ts";
import { greyOf } from "./reachXml.sample.ts";

const chance = fc.oneof(
	fc.double({ min: 0, max: 1, noNaN: true }),
	fc.integer({ min: 0, max: 1_000 }).map((mille) => mille / 1_000),
);

test("a chance belongs to the first grade that it reaches", () => {
	expect([1, 0.75, 0.7499, 0.45, 0.15, 0.1499, 0].map((p) => GRADES[gradeIndex(p, GRADES)!]!.word)).toEqual([
		"good",
		"good",
		"fair",
		"fair",
		"poor",
		"none",
		"none",
	]);
});

test("what is no chance has no grade and no shade", () => {
	for (const none of [Number.NaN, -0.001, 1.001, Number.POSITIVE_INFINITY, undefined]) {
		expect(gradeIndex(none, GRADES)).toBeNull();
		expect(shadeOf(none, GRADES)).toBeNull();
	}
});

test("ink never thins as chance grows, and a better grade is both darker and broader", () => {
	let graded = 0;
	fc.assert(
		fc.property(chance, chance, (a, b) => {
			const [low, high] = a < b ? [a, b] : [b, a];
			const [worse, better] = [gradeIndex(low, GRADES)!, gradeIndex(high, GRADES)!];
			expect(shadeOf(low, GRADES)).toBeLessThanOrEqual(shadeOf(high, GRADES)!);
			expect(gradeBreadth(worse, GRADES)).toBeLessThanOrEqual(gradeBreadth(better, GRADES));
			if (worse === better) return;
			graded++;
			// an eighth of the scale: what keeps grades apart in grey print
			expect(shadeOf(high, GRADES)! - shadeOf(low, GRADES)!).toBeGreaterThanOrEqual(0.124);
			expect(gradeBreadth(worse, GRADES)).toBeLessThan(gradeBreadth(better, GRADES));
		}),
		{ seed: 20_261_124, numRuns: 2_000 },
	);
	expect(graded).toBeGreaterThan(500);
});

test("no chance is bare paper, certainty is full ink", () => {
	expect(shadeOf(0, GRADES)).toBe(0);
	expect(shadeOf(1, GRADES)).toBe(1);
});

test.each(["paper", "lamp"] as const)("on %s, shades are told apart in grey alone", (name) => {
	const theme = REACH_THEMES[name];
	const greys = Array.from({ length: 101 }, (_, i) => Math.abs(greyOf(inkColour(shadeOf(i / 100, GRADES)!, theme)) - greyOf(theme.paper)));
	for (const [i, grey] of greys.entries()) expect(grey).toBeGreaterThanOrEqual(greys[i - 1] ?? 0);
	for (const edge of [15, 45, 75]) expect(greys[edge]! - greys[edge - 1]!).toBeGreaterThan(10);
});

test.each([
	["none", []],
	["not down to 0", [{ word: "good", from: 0.5 }]],
	[
		"not falling",
		[
			{ word: "a", from: 0.2 },
			{ word: "b", from: 0.2 },
			{ word: "c", from: 0 },
		],
	],
	[
		"over 1",
		[
			{ word: "a", from: 1.5 },
			{ word: "b", from: 0 },
		],
	],
	[
		"no number",
		[
			{ word: "a", from: Number.NaN },
			{ word: "b", from: 0 },
		],
	],
])("grades %s are refused", (_, grades) => {
	expect(() => checkGrades(grades)).toThrow("expected falling figures from 1 or less down to 0");
});

test("one grade alone is all of it", () => {
	const one = [{ word: "any", from: 0 }];
	expect(() => checkGrades(one)).not.toThrow();
	expect([0, 0.5, 1].map((p) => shadeOf(p, one))).toEqual([0, 0.5, 1]);
	expect(gradeBreadth(0, one)).toBe(1);
});
