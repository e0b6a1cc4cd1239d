import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { printable, type TypstData, typstValue } from "./typstValue.ts";

const STRING_LITERAL = /"(?:[^"\\]|\\["\\])*"/g;

const anyData = fc.letrec<{ data: TypstData }>((tie) => ({
	data: fc.oneof(
		{ maxDepth: 4 },
		fc.string({ unit: "binary" }),
		fc.string({ unit: fc.constantFrom('"', "\\", "#", "[", "]", "$", "`", "*", "\n", "u{41}", "(", ")", ":", ",") }),
		fc.integer(),
		fc.boolean(),
		fc.constant(null),
		fc.array(tie("data")),
		fc.dictionary(fc.string(), tie("data")),
	),
})).data;

describe("typstValue", () => {
	test("nothing of a text stands outside a quoted string", () => {
		fc.assert(
			fc.property(anyData, (data) => {
				const outside = typstValue(data).replaceAll(STRING_LITERAL, "");
				expect(outside).toMatch(/^(?:none|true|false|-?\d+|[(),:\n ])*$/);
			}),
			{ seed: 20_261_124, numRuns: 2_000 },
		);
	});

	test("a quoted string reads back as the printable text", () => {
		fc.assert(
			fc.property(fc.string({ unit: "binary" }), (text) => {
				const literal = typstValue(text);
				expect(literal.match(STRING_LITERAL)).toEqual([literal]);
				expect(literal.slice(1, -1).replace(/\\(["\\])/g, "$1")).toBe(printable(text));
			}),
			{ seed: 20_261_124, numRuns: 2_000 },
		);
	});

	test("empty array and empty dictionary differ", () => {
		expect(typstValue([])).toBe("()");
		expect(typstValue({})).toBe("(:)");
		expect(typstValue([1])).toBe("(1,)");
	});

	test("a number that is not finite is refused", () => {
		expect(() => typstValue({ minutes: Number.NaN })).toThrow("Cannot write NaN into a Typst document");
	});
});

describe("printable", () => {
	test.each([
		["two\nlines\tof\r\ntext", "two lines of text"],
		["NUL\0here", "NUL\ufffdhere"],
		["abc\u202egnp.exe", "abc\ufffdgnp.exe"],
		["half \ud800 pair", "half \ufffd pair"],
		["São Tomé, Ålesund, Ωμέγα, Владивосток", "São Tomé, Ålesund, Ωμέγα, Владивосток"],
	])("%j prints as %j", (text, printed) => {
		expect(printable(text)).toBe(printed);
	});
});
