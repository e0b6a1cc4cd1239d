import fc from "fast-check";
import { expect, test } from "vitest";
import { wrappable } from "./wrappable.ts";

test("a word longer than the column can break between any two characters, a shorter one nowhere", () => {
	expect(wrappable("Cape ABCDE", 4)).toBe("Cape A\u200bB\u200bC\u200bD\u200bE");
	expect(wrappable("Cape Town Radio")).toBe("Cape Town Radio");
});

test("an accent stays with its letter", () => {
	expect(wrappable("e\u0301e\u0301e\u0301", 2)).toBe("e\u0301\u200be\u0301\u200be\u0301");
});

test("no character is lost or moved", () => {
	fc.assert(
		fc.property(fc.string({ unit: "binary" }), fc.integer({ min: 1, max: 30 }), (text, longest) => {
			expect(wrappable(text, longest).replaceAll("\u200b", "")).toBe(text.toWellFormed().replaceAll("\u200b", ""));
		}),
		{ seed: 20_261_124, numRuns: 1_000 },
	);
});
