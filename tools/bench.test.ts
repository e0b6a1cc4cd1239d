import { expect, test } from "vitest";
import { benchRow, table } from "./bench.ts";
import { measure } from "./measure.ts";

const result = { what: "check", floor: "parse", count: 20_000, unit: "rows", seconds: [0.5, 0.4, 0.6], floorSeconds: [0.1, 0.1, 0.2] };

test("a row gives medians, spreads, the rate and the ratio to the floor", () => {
	expect(benchRow("list", result)).toEqual([
		"list",
		"check",
		"500 ms",
		"400 ms to 600 ms",
		"40,000 rows/s",
		"parse",
		"100 ms",
		"5.00 x",
		"3.00 x to 5.00 x",
	]);
});

test("runs that cannot be compared are refused", () => {
	expect(() => benchRow("list", { ...result, floorSeconds: [0.1] })).toThrow(RangeError);
	expect(() => benchRow("list", { ...result, seconds: [], floorSeconds: [] })).toThrow(RangeError);
});

test("a table lines its columns up", () => {
	const lines = table([benchRow("list", result)]).split("\n");
	expect(lines.length).toBe(3);
	expect(lines[0]?.indexOf("median")).toBe(lines[2]?.indexOf("500 ms"));
});

test("measure runs work and floor in turn, after one unmeasured run of each", () => {
	const calls: string[] = [];
	const { seconds, floorSeconds } = measure(
		() => calls.push("work"),
		() => calls.push("floor"),
		2,
	);
	expect(calls.join(" ")).toBe("work floor work floor work floor");
	expect([seconds.length, floorSeconds.length]).toEqual([2, 2]);
});
