import { hz } from "@skipwright/units";
import { expect, test } from "vitest";
import { shortTurns } from "./shortTurns.ts";

test("8113 to 8161 kHz in steps of 10 and 1 kHz is five up and two down", () => {
	expect(
		shortTurns([
			{ stepHz: hz(10_000), clicks: 5 },
			{ stepHz: hz(1_000), clicks: -2 },
		]),
	).toBe("+5×10k −2×1k");
});

test.each([
	[1_000_000, 3, "+3×1M"],
	[100, -7, "−7×0.1k"],
	[10, 1, "+1×0.01k"],
	[2_500, 2, "+2×2.5k"],
])("%d Hz, %d clicks is %s", (stepHz, clicks, text) => {
	expect(shortTurns([{ stepHz: hz(stepHz), clicks }])).toBe(text);
});

test("a dial that is not turned stays", () => {
	expect(shortTurns([])).toBe("stays");
	expect(shortTurns([{ stepHz: hz(10), clicks: 0 }])).toBe("stays");
});
