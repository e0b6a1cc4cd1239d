import { readFileSync } from "node:fs";
import { join } from "node:path";
import { BadInputError, type CsvFault, readCsv, writeCsv } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { skyRows } from "./skyRows.ts";

const HEAD = "month,utc_hour,lat_deg,lon_deg_east,R12";
const ASKED = ["month", "utc_hour", "lat_deg", "lon_deg_east", "R12", "field_epoch"];

function faultsOf(text: string): readonly CsvFault[] {
	try {
		skyRows(text, "rows.csv");
	} catch (error) {
		if (error instanceof BadInputError) return error.faults;
		throw error;
	}
	return [];
}

describe("skyRows", () => {
	for (const [file, count] of [
		["maps-2020.csv", 240],
		["maps-1960.csv", 48],
	] as const) {
		it(`works ${file} out again from its places alone, within 0.02, with every other cell as it was`, () => {
			const text = readFileSync(join(import.meta.dirname, "../truth", file), "utf8");
			const blanked = text.replace(/,[^,]*,[^,\n]*$/gm, (end) => (end.includes("foF2") ? end : ",,")); // the answers taken out
			const [before, after] = [text, skyRows(blanked, file)].map((csv) => {
				const columns = [...ASKED, "dip_300km_deg", "modip_300km_deg", "foF2_MHz", "M3000F2"];
				return readCsv(file, csv, { required: columns });
			}) as [ReturnType<typeof readCsv>, ReturnType<typeof readCsv>];
			expect(after.columns).toEqual(before.columns);
			expect(after.rows.length).toBe(count);
			for (const [i, { cells }] of after.rows.entries()) {
				const was = before.rows[i]!.cells;
				for (const column of [...ASKED, "dip_300km_deg", "modip_300km_deg"]) expect(cells[column]).toBe(was[column]);
				for (const column of ["foF2_MHz", "M3000F2"]) {
					expect(cells[column]).toMatch(/^\d+\.\d{4,}$/);
					expect(Math.abs(Number(cells[column]) - Number(was[column]))).toBeLessThan(0.02);
				}
			}
		});
	}

	it("takes columns in any order, half hours, comments, CRLF and a byte order mark; adds the two columns at the end", () => {
		const text = `\uFEFF# places\r\nnote,R12,lon_deg_east,lat_deg,utc_hour,month\r\n"a, b",50,-5.5,50.1,5.5,1\r\n# more\r\n=1,50,354.5,50.1,6,1\r\n`;
		const { rows, columns } = readCsv("out", skyRows(text), { required: ["note", ...ASKED.slice(0, 5), "foF2_MHz", "M3000F2"] });
		expect(columns).toEqual(["note", "R12", "lon_deg_east", "lat_deg", "utc_hour", "month", "foF2_MHz", "M3000F2"]);
		expect(rows.map(({ cells }) => cells["note"])).toEqual(["a, b", "=1"]);
		expect(rows[0]!.cells["utc_hour"]).toBe("5.5");
	});

	it("takes the epoch of the row, else the one it is told, else 2020", () => {
		const values = (text: string, epoch?: number) => skyRows(text, "rows", epoch).trim().split("\n").slice(1);
		const row = "6,13,-22.7,-45,50";
		const told = values(`${HEAD}\n${row}\n`, 1960)[0]!.split(",").slice(-2);
		expect(values(`${HEAD},field_epoch\n${row},1960\n`)[0]!.split(",").slice(-2)).toEqual(told);
		expect(values(`${HEAD},field_epoch\n${row},\n`, 1960)[0]!.split(",").slice(-2)).toEqual(told);
		const usual = values(`${HEAD}\n${row}\n`)[0]!.split(",").slice(-2);
		expect(values(`${HEAD},field_epoch\n${row},2020.0\n`)[0]!.split(",").slice(-2)).toEqual(usual);
		expect(usual).not.toEqual(told);
	});

	it("gives no rows for none", () => {
		expect(skyRows(`${HEAD}\n`)).toBe(`${HEAD},foF2_MHz,M3000F2\n`);
	});
});

describe("skyRows refuses", () => {
	it("every bad cell at once, by line, column and value", () => {
		const text = `${HEAD},field_epoch\n13,24.5,91,361,-1,1899\n1,12,0,0,50,2020\n1.5,x,,1e2,NaN,2 020\n`;
		expect(faultsOf(text).map(({ line, column, value }) => `${line} ${column} ${value}`)).toEqual([
			"2 month 13",
			"2 utc_hour 24.5",
			"2 lat_deg 91",
			"2 lon_deg_east 361",
			"2 R12 -1",
			"2 field_epoch 1899",
			"4 month 1.5",
			"4 utc_hour x",
			"4 lat_deg ",
			"4 lon_deg_east 1e2",
			"4 R12 NaN",
			"4 field_epoch 2 020",
		]);
	});

	it("a missing or repeated column, an uneven row, another encoding, and a column that no record can hold", () => {
		expect(faultsOf("month,utc_hour,lat_deg,R12\n1,1,1,1\n")).toMatchObject([{ line: 1, column: "lon_deg_east" }]);
		expect(faultsOf(`${HEAD},R12\n1,1,1,1,1,1\n`)).toMatchObject([{ line: 1, column: "R12" }]);
		expect(faultsOf(`${HEAD}\n1,1,1,1\n`)).toMatchObject([{ line: 2 }]);
		expect(faultsOf(`${HEAD}\n1,1,1,1,1\0\n`)).toMatchObject([{ line: 2 }]);
		expect(faultsOf(`${HEAD},__proto__\n1,1,1,1,1,x\n`)).toMatchObject([{ line: 1, column: "__proto__" }]);
		for (const empty of ["", "\n", "#\n"]) expect(faultsOf(empty)).toMatchObject([{ line: 1 }]);
	});

	it("any text, if at all, with faults that are complete; what it takes, it gives back with as many rows", () => {
		const cell = fc.oneof(
			fc.double({ min: -100, max: 400, noNaN: true }).map((value) => value.toFixed(2)),
			fc.integer({ min: 1, max: 12 }).map(String),
			fc.constantFrom("", "x", "-0", ".5", "constructor", "=1+1", '"', "a,b"),
		);
		const column = fc.constantFrom(...ASKED, "foF2_MHz", "note", "constructor", "toString", "");
		const table = fc
			.tuple(fc.array(column, { maxLength: 4 }), fc.array(fc.array(cell, { minLength: 5, maxLength: 9 }), { maxLength: 4 }))
			.map(([columns, rows]) => {
				const all = [...new Set([...ASKED.slice(0, 5), ...columns])];
				return writeCsv(
					all,
					rows.map((row) => all.map((_, i) => row[i % row.length]!)),
				);
			});
		const good = fc
			.array(fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 48 }), fc.integer({ min: -90, max: 90 }), cell))
			.map(
				(rows) =>
					`${HEAD},note\n${rows.map(([m, h, lat, note]) => `${m},${h / 2},${lat},${2 * lat},${Math.abs(lat)},${writeCsv([note], []).trim()}\n`).join("")}`,
			);
		let [read, refused] = [0, 0];
		fc.assert(
			fc.property(
				fc.oneof(
					table,
					good,
					fc.string(),
					fc.string().map((body) => `${HEAD}\n${body}`),
				),
				(text) => {
					const faults = faultsOf(text);
					for (const { line, expected } of faults) expect(line >= 1 && expected !== "").toBe(true);
					if (faults.length > 0) {
						refused++;
						return;
					}
					read++;
					const again = skyRows(skyRows(text));
					expect(again).toBe(skyRows(text));
					expect(again).not.toContain("NaN");
				},
			),
			{ seed: 4180, numRuns: 2_000 },
		);
		expect(read).toBeGreaterThan(300);
		expect(refused).toBeGreaterThan(300);
	});
});
