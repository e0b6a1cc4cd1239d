import { expect, it } from "vitest";
import { type FromMemory, MEMORY } from "./fromMemory.ts";

it("every constant from memory has its own name as id, a mark, words and a unit", () => {
	const entries = Object.entries<FromMemory>(MEMORY);
	expect(entries.length).toBeGreaterThan(15);
	for (const [name, { id, mark, what, unit, value }] of entries) {
		expect(id).toBe(name);
		expect(["M", "own"]).toContain(mark);
		expect(what.length).toBeGreaterThan(20);
		expect(unit.length).toBeGreaterThan(0);
		expect(value).toBeDefined();
	}
});
