import { readFileSync } from "node:fs";
import { join } from "node:path";
import { readCsv } from "@skipwright/units";
import { afterAll, describe, expect, it } from "vitest";
import { GROUNDS, type Ground } from "./groundConstants.ts";
import { groundWaveAt, groundWaveField } from "./groundWaveField.ts";

const lines: string[] = [];
afterAll(() => console.log(lines.join("\n")));

interface Row {
	readonly fMHz: number;
	readonly ground: Ground;
	readonly distanceKm: number;
	readonly fieldDb: number;
}

function truth(file: string, columns: readonly string[]): readonly Readonly<Record<string, string>>[] {
	const text = readFileSync(join(import.meta.dirname, "../truth", file), "utf8");
	return readCsv(file, text, { required: columns }).rows.map(({ cells }) => cells);
}

function rowOf(fMHz: string, conductivity: string, permittivity: string, distanceKm: string, fieldDb: string): Row {
	const ground = { conductivity: Number(conductivity), permittivity: Number(permittivity) };
	return { fMHz: Number(fMHz), ground, distanceKm: Number(distanceKm), fieldDb: Number(fieldDb) };
}

/** The largest difference, after every row has been found finite. */
function worst(rows: readonly Row[]): number {
	const differences = rows.map(({ fieldDb, ...point }) => Math.abs(groundWaveField(point) - fieldDb));
	expect(differences.every(Number.isFinite)).toBe(true);
	return Math.max(...differences);
}

describe("groundWaveField against others' figures", () => {
	const COLUMNS = ["f_MHz", "sigma_S_per_m", "eps_r", "distance_km", "kind", "E_dBuV_per_m_for_1kW_emrp", "tolerance_dB", "source"];
	const check = truth("groundwave-check.csv", COLUMNS);
	const rowsOf = (kind: string) =>
		check
			.filter((cells) => cells["kind"] === kind && cells["f_MHz"] !== "any")
			.map((cells) => {
				const { f_MHz = "", sigma_S_per_m = "", eps_r = "", distance_km = "", E_dBuV_per_m_for_1kW_emrp = "" } = cells;
				return rowOf(f_MHz, sigma_S_per_m, eps_r, distance_km, E_dBuV_per_m_for_1kW_emrp);
			});

	it("four readings of the CCIR/ITU curves at 138.8 kHz and 500 km, within the 1.5 dB of the readings", () => {
		const rows = rowsOf("published");
		expect(rows).toHaveLength(4);
		lines.push(`published readings: worst ${worst(rows).toFixed(2)} dB of ${rows.length}`);
		expect(worst(rows)).toBeLessThanOrEqual(1.5);
	});

	it("ITU-R P.368's reference radiator: 300 mV/m at 1 km over a perfect conductor", () => {
		const reference = check.filter((cells) => cells["f_MHz"] === "any");
		expect(reference).toHaveLength(1);
		const perfect = { conductivity: 1e12, permittivity: 1 };
		for (const fMHz of [0.5, 2, 10, 30]) {
			const field = groundWaveField({ fMHz, distanceKm: 1, ground: perfect });
			expect(Math.abs(field - Number(reference[0]?.["E_dBuV_per_m_for_1kW_emrp"]))).toBeLessThanOrEqual(0.1);
		}
	});

	it("132 rows of independent code (residue and small-curvature series), within their 0.3 dB", () => {
		const rows = rowsOf("computed");
		expect(rows).toHaveLength(132);
		lines.push(`computed rows: worst ${worst(rows).toFixed(3)} dB of ${rows.length}`);
		expect(worst(rows)).toBeLessThanOrEqual(0.3);
		expect(check).toHaveLength(4 + 1 + 132);
	});

	it.each([
		[50, 74.98],
		[100, 67.98],
		[200, 59.34],
		[500, 40.63],
		[1000, 13.24],
	])("2 MHz over sea at %d km: %d dB, of the same independent code", (distanceKm, fieldDb) => {
		expect(Math.abs(groundWaveField({ fMHz: 2, distanceKm, ground: GROUNDS.sea }) - fieldDb)).toBeLessThan(0.01);
	});

	it("120 random rows of the diffraction integral itself (tools/oracles/groundwave.py), within 0.003 dB", () => {
		const columns = ["f_mhz", "sigma_s_per_m", "permittivity", "distance_km", "field_dbuv_per_m"];
		const rows = truth("groundwave-series.csv", columns).map((cells) => {
			const [fMHz = "", conductivity = "", permittivity = "", distanceKm = "", fieldDb = ""] = columns.map((column) => cells[column]);
			return rowOf(fMHz, conductivity, permittivity, distanceKm, fieldDb);
		});
		expect(rows).toHaveLength(120);
		lines.push(`diffraction integral: worst ${worst(rows).toFixed(4)} dB of ${rows.length}`);
		expect(worst(rows)).toBeLessThanOrEqual(0.003);
	});
});

describe("groundWaveField over a dense grid", () => {
	it("falls with every step of distance and stays finite, 0.4 to 30 MHz, 1 to 3000 km, all grounds", () => {
		let compared = 0;
		for (const ground of Object.values(GROUNDS)) {
			for (let fMHz = 0.4; fMHz <= 30; fMHz *= 1.13) {
				const at = groundWaveAt(fMHz, ground);
				let before = at(1);
				for (let distanceKm = 1.03; distanceKm <= 3000; distanceKm *= 1.03) {
					const field = at(distanceKm);
					if (!(field < before)) throw new Error(`${fMHz} MHz, ${distanceKm} km: ${field} dB after ${before} dB`);
					before = field;
					compared++;
				}
			}
		}
		expect(compared).toBeGreaterThan(70_000);
	});

	it("loses more over worse ground and at higher frequencies", () => {
		const grounds = [GROUNDS.sea, GROUNDS.lowSalinitySea, GROUNDS.wetGround, GROUNDS.land, GROUNDS.mediumDryGround];
		const fields = grounds.map((ground) => groundWaveField({ fMHz: 2.182, distanceKm: 100, ground }));
		expect(fields).toEqual(fields.toSorted((a, b) => b - a));
		const byFrequency = [0.518, 2, 4, 8, 16, 30].map((fMHz) => groundWaveField({ fMHz, distanceKm: 300, ground: GROUNDS.sea }));
		expect(byFrequency).toEqual(byFrequency.toSorted((a, b) => b - a));
	});
});

describe("groundWaveField refuses", () => {
	it.each([0.1, 31, Number.NaN])("%d MHz", (fMHz) => {
		expect(() => groundWaveField({ fMHz, distanceKm: 10, ground: GROUNDS.sea })).toThrow(/MHz: expected 0.13 to 30 MHz/);
	});

	it.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])("%d km", (distanceKm) => {
		expect(() => groundWaveField({ fMHz: 2, distanceKm, ground: GROUNDS.sea })).toThrow(/expected a distance above 0 km/);
	});
});
