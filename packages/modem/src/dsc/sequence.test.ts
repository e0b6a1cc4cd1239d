import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { charactersOf, eccOf, elementsOfCall } from "./sequence.ts";
import { elementsOf, SYMBOLS } from "./tenUnitCode.ts";

// ITU-R M.493 as restated by third parties; symbol lists, checks and elements computed from it apart from this program
const truth = JSON.parse(readFileSync(new URL("../../truth/dsc-vectors.json", import.meta.url), "utf8"));
const letters = (elements: readonly number[]) => elements.map((element) => (element === 1 ? "B" : "Y")).join("");

describe("ten-unit code", () => {
	it("has the ten elements of each of the 128 symbols (ITU-R M.493)", () => {
		expect(truth.symbols).toHaveLength(SYMBOLS);
		expect(truth.symbols.map((_: string, symbol: number) => letters(elementsOf(symbol)))).toEqual(truth.symbols);
	});

	it("shows any single wrong element: no two symbols differ in one alone", () => {
		const all = Array.from({ length: SYMBOLS }, (_, symbol) => elementsOf(symbol));
		const distances = all.flatMap((a, i) => all.slice(i + 1).map((b) => a.filter((element, place) => element !== b[place]).length));
		expect(distances).toHaveLength(8_128);
		expect(Math.min(...distances)).toBe(2);
	});

	it("refuses what is no symbol", () => {
		expect(() => elementsOf(128)).toThrow(/128 as a symbol/);
		expect(() => elementsOf(1.5)).toThrow(RangeError);
	});
});

describe("sequence of a call", () => {
	it("sends the worked examples: check, order of characters, every element", () => {
		let compared = 0;
		for (const example of truth.examples) {
			const symbols = example.message_symbols.slice(1, -3); // format once, to the first end of sequence
			expect(eccOf(symbols), example.name).toBe(example.ecc);
			expect(charactersOf(symbols), example.name).toEqual(example.sent_order);
			expect(letters(elementsOfCall(symbols, 0)), example.name).toBe(example.bits_BY);
			compared += example.bits_BY.length;
		}
		expect(truth.examples).toHaveLength(11);
		expect(compared).toBe(6_460);
	});

	it("lasts 7.2 s for a distress alert with the long dot pattern, as commonly quoted for 100 baud", () => {
		const alert = truth.examples.find(({ name }: { name: string }) => name === "distress-alert-sinking");
		const elements = elementsOfCall(alert.message_symbols.slice(1, -3), 200);
		expect(elements).toHaveLength(720);
		expect(letters(elements.slice(0, 6))).toBe("BYBYBY");
	});

	it("refuses a call without an end", () => {
		expect(() => charactersOf([112])).toThrow(/1 symbols/);
	});
});
