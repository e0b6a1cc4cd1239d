import { describe, expect, it } from "vitest";
import { once, shippedRows } from "./shippedTable.ts";

const row = (cell: string) => shippedRows("x.csv", `a\n"${cell}"\n`, ["a"])[0]!;

describe("ShippedRow", () => {
	it("names file, line, column, value and what was expected", () => {
		expect(() => row("yess").oneOf("a", ["yes", "no"])).toThrow('x.csv line 2, a: expected one of yes, no, got "yess"');
		expect(() => row("1 4").someOf("a", ["1", "2"])).toThrow('expected words of 1, 2, got "1 4"');
		expect(() => row("4.5").whole("a")).toThrow('expected a whole number, got "4.5"');
		expect(() => row("4,5").khz("a")).toThrow(SyntaxError);
		expect(() => row("4").text("b")).toThrow("no column b");
	});

	it("reads kilohertz exactly and empty cells as null", () => {
		expect([row("8414.5").khz("a"), row(" ").text("a")]).toEqual([8_414_500, " "]);
		expect(shippedRows("x.csv", "a,b\n,1\n", ["a", "b"])[0]?.khzOrNull("a")).toBeNull();
		expect(shippedRows("x.csv", "a,b\n,1\n", ["a", "b"])[0]?.wholeOrNull("a")).toBeNull();
		expect(row("2 1").someOf("a", ["1", "2"])).toEqual(["2", "1"]);
	});
});

describe("once", () => {
	it("makes its value a single time", () => {
		let made = 0;
		const value = once(() => ++made);
		expect([value(), value(), made]).toEqual([1, 1, 1]);
	});
});
