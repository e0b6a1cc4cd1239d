import { MODES } from "@skipwright/rules";
import { BadInputError, type CsvFault, hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readList, writeList } from "./list.ts";
import type { Profile } from "./profile.ts";
import { shippedProfiles } from "./shippedProfiles.ts";
import type { Row } from "./types.ts";

const [twin] = shippedProfiles() as [Profile];
const HEADER = "bank,place,tag,receive_khz,transmit_khz,mode";

function faultsOf(text: string, profile: Profile | null = null): readonly CsvFault[] {
	try {
		readList("found.csv", text, profile);
		return [];
	} catch (error) {
		if (error instanceof BadInputError) return error.faults;
		throw error;
	}
}

describe("readList", () => {
	it("reads places exactly: decimals, receive only, the line each came from", () => {
		expect(readList("found.csv", `${HEADER}\nvoice,1,SHIP 4A,4146,4146,USB\ndata,2,DSC 2,2187.5,,FSK\n`, null)).toEqual([
			{ bank: "voice", place: 1, tag: "SHIP 4A", receive: 4_146_000, transmit: 4_146_000, mode: "USB", line: 2 },
			{ bank: "data", place: 2, tag: "DSC 2", receive: 2_187_500, transmit: null, mode: "FSK", line: 3 },
		]);
	});

	it("takes columns in any order, a BOM and CRLF, and the maker's words for modes", () => {
		const text = "\uFEFFmode,tag,place,transmit_khz,receive_khz,bank\r\nH3E,TIME,7,,10000,voice\r\n";
		expect(readList("found.csv", text, twin)).toEqual([
			{ bank: "voice", place: 7, tag: "TIME", receive: 10_000_000, transmit: null, mode: "AM", line: 2 },
		]);
	});

	it("reads what a check is to find: places out of range, used twice, long tags, odd dials", () => {
		const text = `${HEADER}\nnowhere,0,A VERY LONG TAG INDEED,0.001,,USB\nvoice,999999999,,4146,,USB\nvoice,999999999,,999999.999,,USB\n`;
		expect(readList("found.csv", text, twin)).toHaveLength(3);
	});

	it("reads a spreadsheet formula in a tag as a tag", () => {
		const [row] = readList("found.csv", `${HEADER}\nvoice,1,"=HYPERLINK(""x"")",4146,,USB\n`, null);
		expect(row?.tag).toBe('=HYPERLINK("x")');
	});

	it("names line, column, value and expectation of every bad cell at once, and imports nothing", () => {
		const text = `${HEADER}\n,1,A,4146,,USB\nvoice,one,B,"4146,5",,FM\nvoice,3,C,,4146,USB\nvoice,4,D,4146,-1,USB\nvoice,5,E,4146,,USB\n`;
		const faults = faultsOf(text, twin);
		expect(faults.map(({ line, column, value }) => [line, column, value])).toEqual([
			[2, "bank", ""],
			[3, "place", "one"],
			[3, "receive_khz", "4146,5"],
			[3, "mode", "FM"],
			[4, "receive_khz", ""],
			[5, "transmit_khz", "-1"],
		]);
		expect(faults.every(({ expected }) => expected.length > 5)).toBe(true);
		expect(faults[3]?.expected).toMatch(/^one of USB, LSB, AM, CW, FSK, or the maker's J3E/);
	});

	it.each([
		"4146,5",
		"4.146.5",
		"4,146.5",
		"4146.1234",
		"4e3",
		"1E3",
		"-4146",
		"+4146",
		"4 146",
		"0x10",
		"NaN",
		"Infinity",
		"4146kHz",
		"4146.",
		".5",
		"1234567",
		"４１４６",
		"",
	])("refuses %j as receive kilohertz, never guessing", (figure) => {
		const faults = faultsOf(`${HEADER}\nvoice,1,A,"${figure}",,USB\n`);
		expect(faults).toHaveLength(1);
		expect(faults[0]).toMatchObject({ line: 2, column: "receive_khz", value: figure });
	});

	it("reads a place that no set has: that is a finding of a check, not bad input", () => {
		const [row] = readList("list.csv", `${HEADER}\nvoice,-1,A,4146,,USB\n`, twin);
		expect(row?.place).toBe(-1);
	});

	it.each(["--1", "1.5", "1e2", "", " ", "first", "12345678901"])("refuses %j as a place", (place) => {
		expect(faultsOf(`${HEADER}\nvoice,"${place}",A,4146,,USB\n`)).toMatchObject([{ line: 2, column: "place" }]);
	});

	it("allows spaces around a figure, a place, a bank and a mode", () => {
		expect(readList("found.csv", `${HEADER}\n voice , 1 ,A, 4146.5 ,  , USB \n`, null)).toMatchObject([
			{ bank: "voice", place: 1, receive: 4_146_500, transmit: null, mode: "USB" },
		]);
	});

	const broken: readonly [string, string, Partial<CsvFault>][] = [
		["a missing column", "bank,place,tag,receive_khz,mode\nvoice,1,A,4146,USB\n", { line: 1, column: "transmit_khz" }],
		["an extra column", `${HEADER},colour\nvoice,1,A,4146,,USB,red\n`, { line: 1, column: "colour" }],
		["a column twice", `${HEADER},tag\nvoice,1,A,4146,,USB,A\n`, { line: 1, column: "tag" }],
		["no header", "voice,1,A,4146,,USB\n", { line: 1 }],
		["an empty file", "", { line: 1 }],
		["a short row", `${HEADER}\nvoice,1,A,4146,USB\n`, { line: 2, column: null }],
		["a NUL byte", `${HEADER}\nvoice,1,A\0,4146,,USB\n`, { line: 2, value: "\0" }],
		["another encoding", `${HEADER}\nvoice,1,A\uFFFDORES,4146,,USB\n`, { line: 2 }],
		["an open quote", `${HEADER}\nvoice,1,"A,4146,,USB\n`, { line: 2 }],
	];
	it.each(broken)("refuses %s", (_, text, fault) => {
		const faults = faultsOf(text);
		expect(faults.length).toBeGreaterThan(0);
		expect(faults).toContainEqual(expect.objectContaining(fault));
	});

	it("reads 100 000 rows, and finds the one bad cell among them", () => {
		const rows = Array.from({ length: 100_000 }, (_, i) => `voice,${i},TAG ${i % 97},${4_000 + (i % 20_000)}.${i % 10},,USB`);
		expect(readList("found.csv", `${HEADER}\n${rows.join("\n")}\n`, null)).toHaveLength(100_000);
		rows[77_776] = "voice,77776,X,4146.x,,USB";
		expect(faultsOf(`${HEADER}\n${rows.join("\n")}\n`)).toMatchObject([{ line: 77_778, column: "receive_khz", value: "4146.x" }]);
	});

	it("takes any text without surprises: rows, or faults that name a line", () => {
		const cell = fc.oneof(fc.string(), fc.constantFrom("voice", "1", "4146", "USB", "", "-1", '"', "4,5"));
		const line = fc.array(cell, { minLength: 5, maxLength: 7 }).map((cells) => cells.join(","));
		const text = fc.array(line).map((lines) => [HEADER, ...lines].join("\n"));
		let refused = 0;
		fc.assert(
			fc.property(fc.oneof(text, fc.string()), (input) => {
				const faults = faultsOf(input, twin);
				if (faults.length > 0) refused++;
				for (const fault of faults) expect(fault.line).toBeGreaterThanOrEqual(1);
			}),
			{ seed: 20261124, numRuns: 2_000 },
		);
		expect(refused).toBeGreaterThan(1_000);
	});
});

describe("writeList", () => {
	const anyRow = fc.record({
		bank: fc.constantFrom("voice", "data", "#odd", "=bank", "memory-1"),
		place: fc.nat(999_999_999),
		tag: fc.oneof(
			fc.string().map((tag) => tag.replaceAll("\0", "")),
			fc.constantFrom("=1+1", "'=1", "''@x", "+5", "-5", "-5x", "@a", "\tx", "a,b", 'a"b', " a ", "a\nb", "a\r\nb", "'", "'5", "#x"),
		),
		receive: fc.nat(999_999_999).map(hz),
		transmit: fc.option(fc.nat(999_999_999).map(hz)),
		mode: fc.constantFrom(...MODES),
	});

	it("and readList are there and back, for any tag", () => {
		let compared = 0;
		fc.assert(
			fc.property(fc.array(anyRow), (contents) => {
				const rows: readonly Row[] = contents.map((content) => ({ ...content, line: 0 }));
				const back = readList("list.csv", writeList(rows), null).map((row) => ({ ...row, line: 0 }));
				expect(back).toEqual(rows);
				compared += rows.length;
			}),
			{ seed: 20261124, numRuns: 500 },
		);
		expect(compared).toBeGreaterThan(1_000);
	});

	it("never starts a cell with a formula", () => {
		const row: Row = { bank: "voice", place: 1, tag: "=1+1", receive: hz(4_146_000), transmit: null, mode: "USB", line: 2 };
		const tags = ["=1+1", "+5x", "-5x", "@sum", "\t=1", "-"];
		const text = writeList(tags.map((tag) => ({ ...row, tag })));
		const cells = text
			.split("\n")
			.slice(1, -1)
			.map((line) => line.split(",")[2] ?? "");
		expect(cells).toHaveLength(tags.length);
		for (const cell of cells) expect(cell).toMatch(/^"?'/);
	});

	it("writes exact figures and an empty transmit for receive only", () => {
		expect(writeList([{ bank: "data", place: 3, tag: "WX", receive: hz(8_680_100), transmit: null, mode: "USB", line: 0 }])).toBe(
			`${HEADER}\ndata,3,WX,8680.1,,USB\n`,
		);
	});
});
