import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createIta2Printer, ITA2_FIGURES, ITA2_LETTERS, ita2Codes, LOST_CODE } from "./ita2.ts";

/**
 * ITU-T S.1 table 1 as commonly printed: letter, international figure, elements 1 to 5 in the order of sending, 1 the mark. From memory;
 * the letters and digits are held against a signal of another maker in teletypeMinimodem.test.ts.
 */
const S1 = `A - 11000, B ? 10011, C : 01110, D _ 10010, E 3 10000, F ! 10110, G & 01011, H # 00101, I 8 01100, J _ 11010, K ( 11110, L ) 01001,
M . 00111, N , 00110, O 9 00011, P 0 01101, Q 1 11101, R 4 01010, S ' 10100, T 5 00001, U 7 11100, V = 01111, W 2 11001, X / 10111, Y 6 10101, Z + 10001`;

function printed(codes: readonly number[]): string {
	const print = createIta2Printer();
	return codes.map(print).join("");
}

function codeOf(elements: string): number {
	return [...elements].reduce((sum, element, i) => sum + (element === "1" ? 1 << i : 0), 0);
}

describe("the five-unit alphabet", () => {
	it("is that of ITU-T S.1 in letters and figures", () => {
		const rows = S1.replaceAll("\n", " ")
			.split(/, (?=[A-Z] )/)
			.map((row) => row.split(" ") as [string, string, string]);
		expect(rows).toHaveLength(26);
		for (const [letter, figure, elements] of rows) {
			expect(printed([codeOf(elements)])).toBe(letter);
			expect(printed([ITA2_FIGURES, codeOf(elements)])).toBe(figure === "_" ? "" : figure);
		}
		expect(ita2Codes("A")).toEqual([codeOf("11111"), codeOf("11000")]);
		expect(ita2Codes("1")).toEqual([codeOf("11111"), codeOf("11011"), codeOf("11101")]);
		expect(ita2Codes("\n")).toEqual([codeOf("11111"), codeOf("00010"), codeOf("01000"), codeOf("11111")]);
		expect(printed([codeOf("00100"), codeOf("00000")])).toBe(" ");
	});

	it("prints what was sent, whatever the text", () => {
		const sign = fc.constantFrom(...`ABCDEFGHIJKLMNOPQRSTUVWXYZ 0123456789-?:!&#().,'=/+\n`);
		fc.assert(
			fc.property(fc.array(sign), (signs) => printed(ita2Codes(signs.join(""))) === signs.join("")),
			{ seed: 5, numRuns: 300 },
		);
	});

	it("keeps the shift over a lost character and marks it", () => {
		expect(printed([ITA2_FIGURES, codeOf("10000"), LOST_CODE, codeOf("01010"), ITA2_LETTERS, codeOf("01010")])).toBe("3*4R");
	});

	it("names the character that it cannot send", () => {
		expect(() => ita2Codes("FEES $5")).toThrow('Cannot send "$"');
	});
});
