import { expect, test } from "vitest";
import { faultOfGenerated } from "./check-generated.ts";

test("a generated file is the same bytes, or a fault that says what to do", () => {
	expect(faultOfGenerated("rules", "a", "a")).toBe(null);
	expect(faultOfGenerated("units", null, null)).toBe(null);
	expect(faultOfGenerated("rules", "a", "b")).toMatch(/^packages\/rules\/src\/data\.gen\.ts: differs/);
	expect(faultOfGenerated("rules", null, "b")).toMatch(/is missing/);
	expect(faultOfGenerated("rules", "a", null)).toMatch(/is left over/);
});
