import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lineAndColumn, mapJson, pathText } from "./jsonText.ts";

describe("mapJson", () => {
	it("agrees with JSON.parse on which texts are JSON (RFC 8259), but for repeated names", () => {
		const broken = fc.tuple(fc.json(), fc.nat(), fc.string({ maxLength: 2 })).map(([text, cut, put]) => {
			const at = cut % (text.length + 1);
			return text.slice(0, at) + put + text.slice(at + (cut % 3));
		});
		let sound = 0;
		let faulty = 0;
		fc.assert(
			fc.property(fc.oneof(fc.json(), broken, fc.string()), (text) => {
				const { fault } = mapJson(text);
				if (parses(text)) {
					sound++;
					if (fault !== null) expect(fault.expected).toMatch(/once in this object|levels of nesting/);
				} else {
					faulty++;
					expect(fault).not.toBeNull();
					expect(fault?.offset).toBeLessThanOrEqual(text.length);
				}
			}),
			{ seed: 20261124, numRuns: 3_000 },
		);
		expect(sound).toBeGreaterThan(500);
		expect(faulty).toBeGreaterThan(500);
	});

	it("tells where a value stands", () => {
		const text = '{\n  "pins": [\n    { "place": 7 }\n  ]\n}';
		const { offsets, fault } = mapJson(text);
		expect(fault).toBeNull();
		expect(lineAndColumn(text, offsets.get("pins[0].place") ?? -1)).toEqual({ line: 3, column: 16 });
	});

	it("tells where a comma is missing and where a name comes again", () => {
		expect(mapJson('{"a": 1\n "b": 2}').fault).toEqual({ offset: 9, expected: "a comma or } after the value" });
		expect(mapJson('{"a": 1, "a": 2}').fault).toEqual({ offset: 9, expected: 'the name "a" once in this object' });
	});

	it("refuses endless nesting instead of running out of stack", () => {
		expect(mapJson("[".repeat(200_000)).fault?.expected).toBe("at most 64 levels of nesting");
	});
});

describe("pathText", () => {
	it("writes indices in brackets and odd names in quotes", () => {
		expect(pathText(["wants", "weather-charts"])).toBe("wants.weather-charts");
		expect(pathText(["options", "reserve places", 2])).toBe('options["reserve places"][2]');
	});
});

function parses(text: string): boolean {
	try {
		JSON.parse(text);
		return true;
	} catch {
		return false;
	}
}
