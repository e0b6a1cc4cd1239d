import { isoDate, position } from "@skipwright/units";
import { afterAll, describe, expect, it } from "vitest";
import { type FieldRow, fieldCheckRows, fieldRows, truthText } from "../truth/readTruth.ts";
import { wrap180 } from "./angle.ts";
import { harmonicsWithChange, igrf13, wmm2025 } from "./magneticCoefficients.ts";
import { type MagneticField, magneticField, modifiedDipDeg } from "./magneticField.ts";
import { decimalYear, type MagneticModel, magneticModel, modelOf } from "./magneticModel.ts";

const report: string[] = [];
afterAll(() => console.info(`worst errors of the magnetic field\n${report.join("\n")}`));

/** Largest differences from rows: of any component in nT, of dip and declination in degrees. */
function worstOf(rows: readonly FieldRow[], modelAt: (year: number) => MagneticModel | number) {
	const worst = { nT: 0, deg: 0 };
	for (const row of rows) {
		const field = magneticField(row.where, row.heightKm, modelAt(row.year));
		for (const name of ["northNt", "eastNt", "downNt", "totalNt"] as const) worst.nT = larger(worst.nT, field[name] - row[name]);
		worst.deg = larger(worst.deg, field.dipDeg - row.dipDeg);
		worst.deg = larger(worst.deg, wrap180(field.declinationDeg - row.declinationDeg));
	}
	return worst;
}

/** The larger of `worst` and |error|; NaN wins in Math.max, so that it cannot hide. */
function larger(worst: number, error: number): number {
	return Math.max(worst, Math.abs(error));
}

function tell(what: string, rows: number, worst: { nT: number; deg: number }): void {
	report.push(`${what}: ${rows} rows, ${worst.nT.toPrecision(3)} nT, ${worst.deg.toPrecision(3)} degree`);
}

function wmm2020At(year: number): MagneticModel {
	const table = harmonicsWithChange("wmm2020.csv", truthText("wmm2020.csv"));
	return modelOf(
		"WMM2020",
		year,
		table.map(({ degree, order, nT, nTPerYear }) => ({ degree, order, nT: nT + nTPerYear * (year - 2020) })),
	);
}

describe("the magnetic field", () => {
	it("meets NOAA's test values of WMM2020 to the decimal they are printed with", () => {
		const rows = fieldRows("wmmTestValues.csv").filter(({ year }) => year < 2025);
		const worst = worstOf(rows, wmm2020At);
		expect(rows.length).toBe(100);
		tell("WMM2020 test values", rows.length, worst);
		expect(worst.nT).toBeLessThan(0.051);
		expect(worst.deg).toBeLessThan(0.0051);
	});

	it("meets NOAA's test values of WMM2025", () => {
		const rows = fieldRows("wmmTestValues.csv").filter(({ year }) => year >= 2025);
		const worst = worstOf(rows, (year) => year);
		expect(rows.length).toBe(100);
		tell("WMM2025 test values", rows.length, worst);
		expect(worst.nT).toBeLessThan(0.001); // they hold six decimals
		expect(worst.deg).toBeLessThan(0.0051);
	});

	it("meets the npm package geomagnetism 0.2.0 from 2025 to 2029", () => {
		const rows = fieldRows("geomagnetism.csv");
		const worst = worstOf(rows, (year) => year);
		expect(rows.length).toBe(250);
		expect(new Set(rows.map(({ year }) => Math.floor(year)))).toEqual(new Set([2025, 2026, 2027, 2028, 2029]));
		tell("geomagnetism", rows.length, worst);
		expect(worst.nT).toBeLessThan(0.01);
		expect(worst.deg).toBeLessThan(1e-5);
	});

	it("meets an independent evaluation of IGRF-13 at 2020.0 within 5 nT, 0.01 degree and 0.0005 MHz (fieldCheck.csv)", () => {
		const rows = fieldCheckRows();
		const worst = worstOf(rows, (year) => year);
		expect(rows.length).toBe(68);
		let modified = 0;
		let gyro = 0;
		for (const row of rows) {
			const field = magneticField(row.where, row.heightKm, row.year);
			modified = larger(modified, field.modifiedDipDeg - row.modifiedDipDeg);
			gyro = larger(gyro, field.gyroMHz - row.gyroMHz);
			gyro = larger(gyro, field.longitudinalGyroMHz - row.longitudinalGyroMHz);
		}
		tell("IGRF-13", rows.length, worst);
		report.push(`IGRF-13: modified dip ${modified.toPrecision(3)} degree, gyrofrequencies ${gyro.toPrecision(3)} MHz`);
		expect(worst.nT).toBeLessThan(0.1); // 5 would do; the rows hold one decimal
		expect(Math.max(worst.deg, modified)).toBeLessThan(0.01);
		expect(gyro).toBeLessThan(0.0005);
	});

	it("is at 80 N, 0 E what WMM2020 and IGRF-13 print for 2020.0", () => {
		const components = ({ northNt, eastNt, downNt }: MagneticField) => [northNt, eastNt, downNt].map((nT) => Number(nT.toFixed(1)));
		expect(components(magneticField(position(80, 0), 0, wmm2020At(2020)))).toEqual([6570.4, -146.3, 54606]);
		expect(components(magneticField(position(80, 0), 0, 2020))).toEqual([6576.3, -149.5, 54609]);
	});
});

describe("the magnetic field over the globe and over time", () => {
	const everywhere = (visit: (lat: number, lon: number) => void) => {
		for (let lat = -90; lat <= 90; lat += 5) for (let lon = -180; lon < 180; lon += 10) visit(lat, lon);
	};

	it("steps from IGRF-13 to WMM2025 by no more than 150 nT and 0.4 degree of dip", () => {
		const before = magneticModel(2025 - 1e-9);
		const after = magneticModel(2025);
		const worst = { nT: 0, dip: 0, modified: 0, places: 0 };
		everywhere((lat, lon) => {
			const [old, fresh] = [before, after].map((model) => magneticField(position(lat, lon), 300, model)) as [MagneticField, MagneticField];
			worst.nT = larger(worst.nT, fresh.totalNt - old.totalNt);
			worst.dip = larger(worst.dip, fresh.dipDeg - old.dipDeg);
			worst.modified = larger(worst.modified, fresh.modifiedDipDeg - old.modifiedDipDeg);
			worst.places++;
		});
		expect(worst.places).toBe(37 * 36);
		expect([before.name, after.name]).toEqual(["IGRF-13", "WMM2025"]);
		report.push(
			`step at 2025.0: ${worst.nT.toFixed(1)} nT, dip ${worst.dip.toFixed(3)}, modified dip ${worst.modified.toFixed(3)} degree over ${worst.places} places`,
		);
		expect(worst.nT).toBeLessThan(150);
		expect(Math.max(worst.dip, worst.modified)).toBeLessThan(0.4);
	});

	it("has no step between the epochs of IGRF-13, nor across 180 degrees", () => {
		let compared = 0;
		for (let year = 1905; year < 2025; year += 5) {
			const there = (when: number) => magneticField(position(-17.5, 178), 100, when).totalNt;
			expect(Math.abs(there(year) - there(year - 1e-9))).toBeLessThan(1e-4);
			compared++;
		}
		expect(compared).toBe(24);
		const model = magneticModel(2027);
		for (let lat = -90; lat <= 90; lat += 10) {
			const [west, east] = [-180, 180 - 1e-9].map((lonDeg) => magneticField({ latDeg: lat, lonDeg }, 300, model)) as [
				MagneticField,
				MagneticField,
			];
			expect(Math.abs(west.totalNt - east.totalNt)).toBeLessThan(1e-3);
			expect(Math.abs(west.declinationDeg - east.declinationDeg)).toBeLessThan(1e-4);
		}
	});

	it("has one dip and one strength at a pole whatever the longitude, and turns its compass with it", () => {
		const model = magneticModel(2027);
		for (const lat of [-90, 90]) {
			const zero = magneticField(position(lat, 0), 100, model);
			expect(zero.modifiedDipDeg).toBeCloseTo(Math.sign(lat) * 90, 5);
			for (const lon of [-170, -90, 10, 120]) {
				const field = magneticField(position(lat, lon), 100, model);
				expect(Math.abs(field.totalNt - zero.totalNt)).toBeLessThan(1e-6);
				expect(Math.abs(field.dipDeg - zero.dipDeg)).toBeLessThan(1e-9);
				const turn = wrap180(field.declinationDeg - zero.declinationDeg - Math.sign(lat) * lon);
				expect(Math.abs(turn)).toBeLessThan(1e-6);
				const near = magneticField({ latDeg: lat * (1 - 1e-9), lonDeg: lon }, 100, model);
				expect(Math.abs(near.northNt - field.northNt) + Math.abs(near.eastNt - field.eastNt)).toBeLessThan(1e-3);
			}
		}
	});

	it("has no divergence: flux out through a sphere-like shell is nothing (Gauss's law)", () => {
		const model = magneticModel(2027);
		let flux = 0;
		let gross = 0;
		for (let i = 0; i < 180; i++) {
			const lat = -89.5 + i;
			for (let lon = -180; lon < 180; lon += 2) {
				// the shell of equal geodetic height: down is along its normal; weight is the ellipsoid's area, to which height adds little
				const { downNt } = magneticField(position(lat, lon), 0, model);
				const s = Math.sin((lat * Math.PI) / 180);
				const area = Math.cos((lat * Math.PI) / 180) / (1 - 0.00669437999 * s * s) ** 2;
				flux += downNt * area;
				gross += Math.abs(downNt) * area;
			}
		}
		report.push(`net flux through the ellipsoid: ${((flux / gross) * 1e6).toFixed(2)} millionths of the whole`);
		expect(Math.abs(flux / gross)).toBeLessThan(1e-4);
	});

	it("flags years past 2030.0 and refuses those before 1900", () => {
		expect([2024.9, 2027, 2030, 2030.01, 2040].map((year) => magneticModel(year).pastLastEpoch)).toEqual([false, false, false, true, true]);
		expect(magneticField(position(0, 0), 100, isoDate("2031-05-01")).pastLastEpoch).toBe(true);
		for (const year of [1899.9, Number.NaN, Number.POSITIVE_INFINITY]) expect(() => magneticModel(year)).toThrow(RangeError);
		expect(() => magneticField(position(0, 0), 5000, 2027)).toThrow(/5000 km/);
	});

	it("takes a day, a decimal year or a model alike", () => {
		const where = position(-33.9, 18.43);
		expect(decimalYear(isoDate("2028-07-01"))).toBe(2028 + 182 / 366);
		expect(decimalYear(isoDate("2027-01-01"))).toBe(2027);
		const byDay = magneticField(where, 300, isoDate("2028-07-01"));
		expect(magneticField(where, 300, 2028 + 182 / 366)).toEqual(byDay);
		expect(magneticField(where, 300, magneticModel(2028 + 182 / 366))).toEqual(byDay);
	});
});

describe("coefficients", () => {
	it("are 195 of IGRF-13 by 26 epochs and 168 of WMM2025, all numbers", () => {
		expect(igrf13().length).toBe(13 * 15);
		expect(igrf13().every(({ nTByEpoch }) => nTByEpoch.length === 26 && nTByEpoch.every(Number.isFinite))).toBe(true);
		expect(wmm2025().length).toBe(12 * 14);
		expect(wmm2025().every(({ nT, nTPerYear }) => Number.isFinite(nT) && Number.isFinite(nTPerYear))).toBe(true);
	});

	it("begin with the dipole that IAGA and NOAA print (g10, g11, h11 of 2020 and 2025)", () => {
		const epoch2020 = igrf13().slice(0, 3);
		expect(epoch2020.map(({ nTByEpoch }) => nTByEpoch[24])).toEqual([-29404.8, -1450.9, 4652.5]);
		const epoch2025 = wmm2025().slice(0, 3);
		expect(epoch2025.map(({ nT, nTPerYear }) => [nT, nTPerYear])).toEqual([
			[-29351.8, 12],
			[-1410.8, 9.7],
			[4545.4, -21.5],
		]);
	});
});

describe("modifiedDipDeg", () => {
	it("is atan(I / sqrt(cos latitude)) with I in radians (ITU-R P.1239)", () => {
		expect(modifiedDipDeg(0, 40)).toBe(0);
		expect(modifiedDipDeg(45, 60)).toBeCloseTo((Math.atan(Math.PI / 4 / Math.sqrt(0.5)) * 180) / Math.PI, 12);
		expect(modifiedDipDeg(-45, 60)).toBe(-modifiedDipDeg(45, 60));
		expect(modifiedDipDeg(88, 90)).toBeCloseTo(90, 5);
	});
});
