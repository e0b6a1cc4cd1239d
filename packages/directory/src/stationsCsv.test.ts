import { BadInputError } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { directory } from "./directory.ts";
import { readStationsCsv, writeStationsCsv } from "./stationsCsv.ts";

const HEADER = "id,name,as_of,source,lat,lon,mmsi,administration,power_kw,status";

describe("readStationsCsv", () => {
	it("reads a row, empty cells as not known", () => {
		const [full, bare] = readStationsCsv(
			"x.csv",
			`${HEADER}\nza-x,"X, the",2026,(official),-33.69,18.71,006010001,ZA,0.4,active\nza-y,Y,2026,,,,,,,\n`,
		);
		expect(full).toMatchObject({
			name: "X, the",
			position: { latDeg: -33.69, lonDeg: 18.71 },
			mmsi: "006010001",
			administration: "ZA",
			powerKw: 0.4,
			confidence: "official",
			status: "active",
		});
		expect(bare).toMatchObject({ position: null, mmsi: null, administration: "", powerKw: null, confidence: "memory", status: "unknown" });
	});

	it.each([
		["lat", "-91", "18.71"],
		["lat", "", "18.71"],
		["lon", "10", "E18"],
		["lon", "10", "18,7"],
	])("refuses a position with a bad %s", (column, lat, lon) => {
		const text = `${HEADER}\nza-x,X,2026,,"${lat}","${lon}",,,,\n`;
		expect(() => readStationsCsv("x.csv", text)).toThrow(`line 2, column ${column}`);
	});

	it("refuses a short MMSI, a long country, a power in words and a repeated id", () => {
		const bad = `${HEADER}\na,A,2026,,,,6010001,ZAF,1 kW,off\na,A,2026,,,,,,,\n`;
		expect(() => readStationsCsv("x.csv", bad)).toThrow(BadInputError);
		try {
			readStationsCsv("x.csv", bad);
		} catch (error) {
			const columns = (error as BadInputError).faults.map(({ line, column }) => `${line} ${column}`);
			expect(columns.sort()).toEqual(["2 administration", "2 mmsi", "2 power_kw", "2 status", "3 id"]);
		}
	});

	it("reads back the 366 shipped stations as written, and any other text whole or not at all", () => {
		const { stations } = directory();
		expect(readStationsCsv("x.csv", writeStationsCsv(stations))).toEqual(stations);
		const csv = writeStationsCsv(stations.slice(0, 4));
		let refused = 0;
		fc.assert(
			fc.property(
				fc.oneof(
					fc.string(),
					fc.tuple(fc.nat(csv.length), fc.string({ maxLength: 3 })).map(([at, cut]) => csv.slice(0, at) + cut),
				),
				(text) => {
					try {
						readStationsCsv("x.csv", text);
					} catch (error) {
						expect(error).toBeInstanceOf(BadInputError);
						refused++;
					}
				},
			),
			{ seed: 43, numRuns: 500 },
		);
		expect(refused).toBeGreaterThan(100);
	});
});
