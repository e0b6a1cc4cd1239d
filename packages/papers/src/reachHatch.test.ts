import { expect, test } from "vitest";
import { reachHatch } from "./reachHatch.ts";
import { REACH_THEMES } from "./reachTheme.ts";
import { pathParts, xmlElement } from "./reachXml.sample.ts";

const BOX = { x1: 12, x2: 70, y1: 33, y2: 63 };

function linesOf(boxes: readonly (typeof BOX)[]) {
	return pathParts(xmlElement(reachHatch(boxes, REACH_THEMES.paper)).attributes["d"]!);
}

test("covers the whole box, corners included, and nothing outside", () => {
	const lines = linesOf([BOX]);
	// a slanted line is the set of points of one x + y
	const sums = lines.map(({ x1, y2 }) => x1 + y2);
	let points = 0;
	for (let x = BOX.x1; x <= BOX.x2; x++) {
		for (let y = BOX.y1; y <= BOX.y2; y++) {
			expect(Math.min(...sums.map((sum) => Math.abs(sum - x - y)))).toBeLessThanOrEqual(5);
			points++;
		}
	}
	expect(points).toBe(59 * 31);
	for (const { x1, x2, y1, y2 } of lines) {
		expect(x2 - x1).toBeCloseTo(y2 - y1, 6);
		expect([x1 >= BOX.x1, x2 <= BOX.x2, y1 >= BOX.y1, y2 <= BOX.y2]).toEqual([true, true, true, true]);
	}
});

test("boxes side by side are hatched as one", () => {
	const [left, right] = [
		{ ...BOX, x2: 41.3 },
		{ ...BOX, x1: 41.3 },
	];
	const sums = (boxes: readonly (typeof BOX)[]) =>
		[...new Set(linesOf(boxes).map(({ x1, y2 }) => Math.round(x1 + y2)))].sort((a, b) => a - b);
	expect(sums([left, right])).toEqual(sums([BOX]));
});

test("a box without breadth has no lines", () => {
	expect(linesOf([{ ...BOX, x2: BOX.x1 }]).filter(({ x1, x2 }) => x1 < x2)).toEqual([]);
	expect(reachHatch([], REACH_THEMES.paper)).toBe("");
});
