import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BadInputError, type CsvFault, readCsv, writeCsv } from "./csv.ts";

const PROPERTY = { seed: 4180, numRuns: 2_000 };
const SHAPE = { required: ["place", "tag"], optional: ["mode"] };

/** Text that a CSV may carry: no NUL and no replacement character, which mark a wrong encoding. */
const anyCell = fc
	.oneof(
		fc.string(),
		fc.string({ unit: "grapheme" }),
		fc.string({ unit: fc.constantFrom(..."a,\"\n\r\t#'=+-@ 0.;\uFEFF") }),
		fc.constantFrom("=1+1", "-33.9,18.43", "'=x", "''-5", "-5", "#1", "'", "\r\n", "﻿", "＝A1"),
	)
	.filter((text) => !/[\0\uFFFD]/.test(text));

function faultsOf(text: string, shape: { required: string[]; optional?: string[] } = SHAPE): readonly CsvFault[] {
	try {
		readCsv("list.csv", text, shape);
	} catch (error) {
		if (error instanceof BadInputError) return error.faults;
		throw error;
	}
	return [];
}

describe("readCsv", () => {
	it("takes columns in any order and gives absent optional ones as empty text", () => {
		const { rows, columns } = readCsv("list.csv", "tag,place\nCAPE TOWN,1\n", SHAPE);
		expect(rows).toEqual([{ line: 2, cells: { place: "1", tag: "CAPE TOWN", mode: "" } }]);
		expect(columns).toEqual(["tag", "place"]);
	});

	it("reads the same table from LF, CRLF, CR or mixed line ends, with or without a byte order mark", () => {
		const wanted = readCsv("list.csv", "place,tag\n1,A\n\n2,B", SHAPE).rows;
		expect(wanted.map(({ line }) => line)).toEqual([2, 4]);
		for (const text of ["place,tag\r\n1,A\r\n\r\n2,B\r\n", "place,tag\r1,A\r\r2,B\r", "place,tag\r\n1,A\n\r2,B\n"]) {
			expect(readCsv("list.csv", text, SHAPE).rows).toEqual(wanted);
			expect(readCsv("list.csv", `\uFEFF${text}`, SHAPE).rows).toEqual(wanted);
		}
		expect(readCsv("list.csv", '\uFEFF"place",tag\n', SHAPE).columns).toEqual(["place", "tag"]);
	});

	it("skips comment lines, but keeps a quoted first cell that starts with #", () => {
		const text = '# made, by "hand\nplace,tag\n#1,A\n"#1",B\n2,# C\n # 3,D\n';
		expect(readCsv("list.csv", text, SHAPE).rows.map(({ cells, line }) => [line, cells["place"], cells["tag"]])).toEqual([
			[4, "#1", "B"],
			[5, "2", "# C"],
			[6, " # 3", "D"],
		]);
	});

	it("counts lines through line breaks inside quotes", () => {
		const text = 'place,tag\r\n1,"two\r\nlines"\r\n2,"a\nb\rc"\r\n3,C';
		expect(readCsv("list.csv", text, SHAPE).rows.map(({ cells, line }) => [line, cells["tag"]])).toEqual([
			[2, "two\r\nlines"],
			[4, "a\nb\rc"],
			[7, "C"],
		]);
	});

	it("takes the guarding apostrophe off a formula and leaves every other apostrophe", () => {
		const { rows } = readCsv("list.csv", "place,tag\n'=1+1,'tis\n''+1,'5\n", SHAPE);
		expect(rows.map(({ cells }) => [cells["place"], cells["tag"]])).toEqual([
			["=1+1", "'tis"],
			["'+1", "'5"],
		]);
	});

	it("takes 100 000 rows", () => {
		const text = writeCsv(
			["place", "tag"],
			Array.from({ length: 100_000 }, (_, i) => [String(i), `TAG ${i}`]),
		);
		const { rows } = readCsv("list.csv", text, SHAPE);
		expect(rows.length).toBe(100_000);
		expect(rows[99_999]).toEqual({ line: 100_001, cells: { place: "99999", tag: "TAG 99999", mode: "" } });
	});
});

describe("readCsv refuses", () => {
	it("a missing, an unknown and a repeated column, all at once", () => {
		expect(faultsOf("tag,Place,tag,\n1,2,3,4\n")).toEqual([
			{ line: 1, column: "place", value: "tag,Place,tag,", expected: "a column place in the header" },
			{ line: 1, column: "Place", value: "tag,Place,tag,", expected: "only the columns place,tag,mode" },
			{ line: 1, column: "tag", value: "tag,Place,tag,", expected: "the column tag once" },
			{ line: 1, column: null, value: "tag,Place,tag,", expected: "only the columns place,tag,mode" },
		]);
	});

	it("a file with no header", () => {
		for (const text of ["", "\uFEFF", "\n\n", "# only a comment"]) {
			expect(faultsOf(text)).toEqual([{ line: 1, column: null, value: "", expected: "a header with place,tag" }]);
		}
	});

	it("semicolons or tabs between cells", () => {
		for (const text of ["place;tag\n1;A\n", "place\ttag\n1\tA\n"]) {
			expect(faultsOf(text)).toMatchObject([{ line: 1, column: null, expected: "cells separated by commas" }]);
		}
	});

	it("every uneven row, and imports none of the others", () => {
		expect(faultsOf('place,tag\n1,A\n2\n"3\n",C,x\n4,D\n')).toEqual([
			{ line: 3, column: null, value: "2", expected: "2 cells as in the header, not 1" },
			{ line: 4, column: null, value: "3\n,C,x", expected: "2 cells as in the header, not 3" },
		]);
	});

	it("bad quotes, naming line and column", () => {
		expect(faultsOf('place,tag\n1,A\n2,5" whip\n')).toMatchObject([{ line: 3, column: "tag", value: '5" whip' }]);
		expect(faultsOf('place,tag\n"1"x,A\n')).toMatchObject([{ line: 2, column: "place", value: '"1"x,A' }]);
		expect(faultsOf('place,tag\n1,"A\n2,B\n')).toEqual([
			{ line: 2, column: "tag", value: '"A', expected: "a closing quote for the one that opens this cell" },
		]);
		expect(faultsOf('place,"tag\n1,A\n')).toMatchObject([{ line: 1, column: null, value: '"tag' }]);
	});

	it("UTF-16, another encoding or NUL bytes, saying what to do", () => {
		const utf16 = new TextDecoder().decode(Uint8Array.from(Buffer.from("\uFEFFplace,tag\n1,A\n", "utf16le")));
		const latin1 = new TextDecoder().decode(Uint8Array.from(Buffer.from("place,tag\n1,Café\n", "latin1")));
		expect(faultsOf(utf16)).toMatchObject([{ line: 1, column: null, expected: expect.stringContaining("save it as CSV UTF-8") }]);
		expect(faultsOf(latin1)).toMatchObject([{ line: 2, column: null, expected: expect.stringContaining("UTF-8") }]);
		expect(faultsOf("place,tag\r\n1,A\0\r\n")).toMatchObject([{ line: 2, value: "\0", expected: expect.stringContaining("NUL") }]);
	});

	it("any text, if at all, with faults that are complete", () => {
		const texts = fc.oneof(
			fc.string(),
			fc.string({ unit: fc.constantFrom(...'a,"\n\r#') }).map((body) => `place,tag\n${body}`),
			fc.string({ unit: fc.constantFrom("place", "tag", "mode", ",", "\n", '"', "\0", "x") }),
		);
		let read = 0;
		let refused = 0;
		fc.assert(
			fc.property(texts, (text) => {
				const faults = faultsOf(text);
				if (faults.length === 0) read++;
				else refused++;
				const lines = text.split(/\r\n|\r|\n/).length;
				for (const { line, column, value, expected } of faults) {
					expect(line >= 1 && line <= lines && expected !== "" && column !== "").toBe(true);
					expect(typeof value).toBe("string");
				}
			}),
			PROPERTY,
		);
		expect(read).toBeGreaterThan(100);
		expect(refused).toBeGreaterThan(100);
	});
});

describe("BadInputError", () => {
	it("says file, line, column, expectation and value, and no more than twenty of them", () => {
		const message = (rows: number) => {
			try {
				readCsv("list.csv", `place,tag\n${"x\n".repeat(rows)}`, SHAPE);
			} catch (error) {
				return (error as Error).message.split("\n");
			}
			return [];
		};
		expect(message(1)).toEqual(['list.csv: line 2: expected 2 cells as in the header, not 1, got "x"']);
		expect(message(50).length).toBe(21);
		expect(message(50)[20]).toBe("... and 30 more");
		const oneCell = new BadInputError("list.csv", [{ line: 7, column: "place", value: "x".repeat(500), expected: "a whole number" }]);
		expect(oneCell.message).toBe(`list.csv: line 7, column place: expected a whole number, got "${"x".repeat(80)}"`);
	});
});

describe("writeCsv", () => {
	it("writes what readCsv reads back, whatever the cells hold, with every row on its line", () => {
		fc.assert(
			fc.property(fc.array(fc.tuple(anyCell, anyCell, anyCell), { maxLength: 8 }), (rows) => {
				const text = writeCsv(["place", "tag", "mode"], rows);
				const back = readCsv("list.csv", text, SHAPE).rows;
				expect(back.map(({ cells }) => [cells["place"], cells["tag"], cells["mode"]])).toEqual(rows);
				let line = 2;
				for (const [i, row] of rows.entries()) {
					expect(back[i]?.line).toBe(line);
					line += writeCsv(row, []).split(/\r\n|\r|\n/).length - 1;
				}
			}),
			PROPERTY,
		);
		fc.assert(
			fc.property(fc.array(anyCell), (cells) => {
				const back = readCsv(
					"one.csv",
					writeCsv(
						["tag"],
						cells.map((cell) => [cell]),
					),
					{ required: ["tag"] },
				).rows;
				expect(back.map((row) => row.cells["tag"])).toEqual(cells);
			}),
			PROPERTY,
		);
	});

	it("never starts a cell as a formula (starts after OWASP, CSV injection)", () => {
		const cell = (text: string) => writeCsv([text], []).replace(/^"|"?\n$/g, "");
		for (const text of ["=1+1", "+1", "-1+1", "@SUM(A1)", "\t=1", "\r=1", "\n=1", "＝1", "--5", "-33.9,18.43", "-5."]) {
			expect(cell(text)).toBe(`'${text}`);
		}
		expect(["-5", "-33.9", "0", "CH 401", "a=b"].map(cell)).toEqual(["-5", "-33.9", "0", "CH 401", "a=b"]);
		fc.assert(
			fc.property(anyCell, (text) => {
				expect(/^[=+@\t\r\n＝＋－＠]|^-(?!\d+(\.\d+)?$)/.test(cell(text))).toBe(false);
			}),
			PROPERTY,
		);
	});
});
