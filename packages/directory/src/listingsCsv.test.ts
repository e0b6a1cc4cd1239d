import { BadInputError, hz } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory } from "./directory.ts";
import { LISTING_COLUMNS, readListingsCsv, writeListingsCsv } from "./listingsCsv.ts";
import type { Listing } from "./types.ts";

const HEADER = "station,service,khz,means,emission,schedule,as_of,source";
const ROW = "za-capetown,fax,4014,centre,F3C,0430-0530,2026-05,Port notice (official)";

function faultsOf(read: () => unknown): readonly [line: number, column: string | null, value: string][] {
	try {
		read();
	} catch (error) {
		if (error instanceof BadInputError) return error.faults.map(({ line, column, value }) => [line, column, value]);
		throw error;
	}
	return [];
}

describe("readListingsCsv", () => {
	it("reads a row with the required columns alone and says what is taken for the rest", () => {
		expect(readListingsCsv("x.csv", `${HEADER}\n${ROW}\n`)).toEqual([
			{
				id: "za-capetown/fax/4014",
				stationId: "za-capetown",
				service: "fax",
				hz: hz(4_014_000),
				means: "centre",
				coastTx: null,
				shipTx: null,
				channel: null,
				emission: "F3C",
				schedule: "0430-0530",
				coverage: "",
				notes: "",
				receiveOnly: true,
				sideband: "upper",
				source: "Port notice (official)",
				asOf: "2026-05",
				confidence: "official",
				status: "active",
				origin: "shop",
			},
		]);
	});

	it("numbers a figure that a station lists again", () => {
		const ids = readListingsCsv("x.csv", `${HEADER}\n${ROW}\n${ROW}\n${ROW}\n`).map(({ id }) => id);
		expect(ids).toEqual(["za-capetown/fax/4014", "za-capetown/fax/4014/2", "za-capetown/fax/4014/3"]);
	});

	it("reads 100 000 rows of one figure, and tells all 100 000 faults of a file", () => {
		const rows = (row: string) => `${HEADER}\n${`${row}\n`.repeat(100_000)}`;
		const ids = readListingsCsv("x.csv", rows(ROW)).map(({ id }) => id);
		expect(ids.at(-1)).toBe("za-capetown/fax/4014/100000");
		expect(new Set(ids).size).toBe(100_000);
		expect(faultsOf(() => readListingsCsv("x.csv", rows(ROW.replace("4014", "?"))))).toHaveLength(100_000);
	});

	it("takes columns in any order, a BOM, CRLF and comment lines", () => {
		const text = `\uFEFF# ours\r\nkhz,station,service,means,emission,schedule,as_of,source\r\n4014,za-capetown,fax,centre,F3C,unknown,2026,(official)\r\n`;
		expect(readListingsCsv("x.csv", text)[0]).toMatchObject({ id: "za-capetown/fax/4014", status: "unknown" });
	});

	it.each([
		["station", "za capetown"],
		["service", "wefax"],
		["khz", "4014000"],
		["khz", "4,014"],
		["khz", "5"],
		["khz", "30001"],
		["khz", "2182.1234"],
		["means", "center"],
		["emission", "USB"],
		["schedule", "8 o'clock"],
		["as_of", "May 2026"],
		["as_of", "2026-13"],
		["as_of", "2026-02-30"],
	])("names line, column, value and expectation of a bad %s: %j", (column, value) => {
		const cells = ROW.split(",");
		cells[HEADER.split(",").indexOf(column)] = `"${value}"`;
		const text = `${HEADER}\n${ROW.replace("4014", "4015")}\n${cells.join(",")}\n`;
		expect(faultsOf(() => readListingsCsv("x.csv", text))).toEqual([[3, column, value]]);
		expect(() => readListingsCsv("x.csv", text)).toThrow(`x.csv: line 3, column ${column}: expected `);
	});

	it("tells all faults at once and imports nothing", () => {
		const text = `${HEADER},receive_only,channel\n${ROW},yes,\nza-capetown,fax,1e3,centre,F3C,0430,2026,x,true,12x\n`;
		expect(faultsOf(() => readListingsCsv("x.csv", text))).toEqual([
			[2, "receive_only", "yes"],
			[3, "khz", "1e3"],
			[3, "channel", "12x"],
		]);
	});

	it("refuses a missing, an unknown and a repeated column, and a repeated id", () => {
		expect(() => readListingsCsv("x.csv", `${HEADER.replace(",means", "")}\n`)).toThrow("a column means");
		expect(() => readListingsCsv("x.csv", `${HEADER},colour\n`)).toThrow("colour");
		expect(() => readListingsCsv("x.csv", `${HEADER},khz\n`)).toThrow("khz");
		expect(faultsOf(() => readListingsCsv("x.csv", `${HEADER},id\n${ROW},a/fax/1\n${ROW},a/fax/1\n`))).toEqual([[3, "id", "a/fax/1"]]);
	});
});

describe("writeListingsCsv", () => {
	it("exports everything so that importing it gives the same", () => {
		const { listings } = directory();
		expect(readListingsCsv("export.csv", writeListingsCsv(listings))).toEqual(listings);
	});

	it("never starts a cell with a formula, and reads back what it wrote, whatever the words", () => {
		const text = fc.oneof(
			fc.string({ unit: "grapheme" }),
			fc.string().map((rest) => `=${rest}`),
			fc.constantFrom("=1+1", "@SUM(A1)", "-2+3", "+44", "'=x", "''", '"', ",", "\n", "#", " a ", "\t=", "\r"),
		);
		const plain = text.filter((cell) => !/[\0\uFFFD]/.test(cell) && cell.isWellFormed());
		const words = fc.record({ coverage: plain, notes: plain, source: plain });
		let checked = 0;
		fc.assert(
			fc.property(fc.array(fc.tuple(fc.nat(855), words), { maxLength: 5 }), (picks) => {
				const given: Listing[] = picks.map(([index, change], place) => ({ ...directory().listings[index]!, ...change, id: `x/${place}` }));
				const csv = writeListingsCsv(given);
				expect(readListingsCsv("x.csv", csv)).toEqual(given);
				for (const { coverage, notes, source } of given) {
					// a comma, quote or line break within a cell would look like the start of one below
					if (!/[",\r\n]/.test(coverage + notes + source)) checked++;
					else return;
				}
				expect(csv).not.toMatch(/(^|,)"?[=+@\t]/m);
			}),
			{ seed: 41, numRuns: 300 },
		);
		expect(checked).toBeGreaterThan(100);
	});

	it("reads any text either whole or not at all, with faults that name a line", () => {
		const broken = fc.tuple(fc.nat(LISTING_COLUMNS.length - 1), fc.string({ maxLength: 12 })).map(([column, cell]) =>
			writeListingsCsv([directory().listings[0]!])
				.replace(directory().listings[0]!.id, column % 2 ? cell : "")
				.concat(cell),
		);
		const edited = fc
			.tuple(fc.nat(600), fc.string({ maxLength: 4 }))
			.map(([at, cut]) => writeListingsCsv(directory().listings.slice(0, 3)).slice(0, at) + cut);
		let refused = 0;
		fc.assert(
			fc.property(fc.oneof(fc.string(), broken, edited), (text) => {
				try {
					readListingsCsv("x.csv", text);
				} catch (error) {
					expect(error).toBeInstanceOf(BadInputError);
					for (const { line } of (error as BadInputError).faults) expect(line).toBeGreaterThan(0);
					refused++;
				}
			}),
			{ seed: 42, numRuns: 1000 },
		);
		expect(refused).toBeGreaterThan(300);
	});
});
