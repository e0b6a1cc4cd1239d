import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { codeOnly, importsOf, lineOf } from "./code.ts";

describe("codeOnly", () => {
	const cases: readonly (readonly [string, string])[] = [
		["a // Math.sin\nb", "a            \nb"],
		["a /* x\ny */ b", "a     \n     b"],
		["'it''s'", "'  '' '"],
		['"a\\"b" + c', '"    " + c'],
		["`x ${Math.sin(`y${z}`)} w` + v", "`  ${Math.sin(` ${z}`)}  ` + v"],
		["`${{ a: 1 }.a}` / b", "`${{ a: 1 }.a}` / b"],
		["a / b / c", "a / b / c"],
		["x = /[/'\"]\\//g.test(y) / 2", "x = /       /g.test(y) / 2"],
		["return /x'/", "return /  /"],
		["f(/`/, '`')", "f(/ /, ' ')"],
		["(a) / 2 // b", "(a) / 2     "],
	];
	test.each(cases)("%s", (source, expected) => {
		expect(codeOnly(source)).toBe(expected);
	});

	test("unclosed text ends at the end of the source", () => {
		for (const source of ["'abc", "`abc", "`a${", "/* abc", "x = /abc", "// abc", '"abc\\']) {
			expect(codeOnly(source).length).toBe(source.length);
		}
	});

	test("keeps every line of this very file", () => {
		const source = readFileSync(fileURLToPath(import.meta.url), "utf8");
		expect(codeOnly(source).split("\n").length).toBe(source.split("\n").length);
	});
});

describe("importsOf", () => {
	const cases: readonly (readonly [string, readonly (string | null)[]])[] = [
		['import { a,\n\tb } from "x";', ["x"]],
		['import type { A } from "x"; import y, * as z from "y";', ["x", "y"]],
		['export * from "x"; export { a } from "./y.ts";', ["x", "./y.ts"]],
		['import "x";', ["x"]],
		['const { a } = await import("x");', ["x"]],
		["await import(`x`)", ["x"]],
		["await import(name)", [null]],
		['type A = import("x").A;', ["x"]],
		['require("x")', ["x"]],
		['// import "x"\n/* import a from "y" */ const s = \'import "z"\';', []],
		['export const a = "from"; const b = from("x");', []],
		["a.import(b); import.meta.dirname;", []],
	];
	test.each(cases)("%s", (source, expected) => {
		expect(importsOf(source).map((found) => found.specifier)).toEqual(expected);
	});

	test("gives the line", () => {
		expect(importsOf('\n\nimport "x";')).toEqual([{ specifier: "x", line: 3 }]);
		expect(lineOf("a\nb", 2)).toBe(2);
	});
});
