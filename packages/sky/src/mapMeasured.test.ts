import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { magneticField } from "@skipwright/sphere";
import { position, readCsv } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { pointMap } from "./mapPoint.ts";
import { middleOf } from "./solarMonth.ts";

/**
 * Monthly medians of foF2 of 2019 by five ionosondes (Lowell GIRO Data Center, CC BY-NC-SA 4.0). The file is no part of the repository:
 * it lies beside it where these figures are scored, and the test is skipped elsewhere.
 */
const FILE = join(import.meta.dirname, "../../../../shared/facts/propagation/measured-fof2-2019.csv");
const present = existsSync(FILE);
if (!present) console.info("measured medians of foF2 are not at hand (../shared/facts/propagation/measured-fof2-2019.csv): not scored");

const COLUMNS = ["station_code", "lat_deg", "lon_deg_east", "year", "month", "utc_hour", "R12_v2", "R12_v1_equiv", "days"];
const VALUES = ["foF2_median_MHz", "foF2_lower_decile_MHz", "foF2_upper_decile_MHz"];

describe.skipIf(!present)("foF2 against measured monthly medians of 2019", () => {
	it("lies within 0.85 MHz rms of all five ionosondes together, and within 0.45 MHz of the best", () => {
		const text = readFileSync(FILE, "utf8");
		const { rows } = readCsv("measured-fof2-2019.csv", text, { required: [...COLUMNS, ...VALUES] });
		expect(rows.length).toBe(1293);
		const errors = new Map<string, number[]>();
		for (const { cells } of rows) {
			const number = (column: string) => Number(cells[column]);
			const where = position(number("lat_deg"), number("lon_deg_east"));
			const month = number("month");
			const { modifiedDipDeg } = magneticField(where, 300, middleOf({ year: number("year"), month }));
			const map = pointMap({ month, r12: number("R12_v1_equiv"), position: where, modifiedDipDeg });
			const error = map.foF2MHz(number("utc_hour")) - number("foF2_median_MHz");
			for (const name of [cells["station_code"]!, "all"]) errors.set(name, [...(errors.get(name) ?? []), error]);
		}
		const rms = (name: string) => Math.sqrt(mean(errors.get(name)!.map((error) => error * error)));
		const lines = [...errors].map(
			([name, of]) => `${name}: ${of.length} rows, bias ${mean(of).toFixed(3)}, rms ${rms(name).toFixed(3)} MHz`,
		);
		console.info(`foF2, predicted less measured\n${lines.join("\n")}`);
		const stations = [...errors.keys()].filter((name) => name !== "all");
		expect(stations.length).toBe(5);
		expect(rms("all")).toBeLessThanOrEqual(0.85);
		expect(Math.min(...stations.map(rms))).toBeLessThanOrEqual(0.45);
	});
});

function mean(values: readonly number[]): number {
	return values.reduce((sum, value) => sum + value, 0) / values.length;
}
