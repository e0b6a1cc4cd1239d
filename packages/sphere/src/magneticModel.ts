import { daysBetween, type IsoDate, isoDate } from "@skipwright/units";
import { IGRF_STEP_YEARS, igrf13, wmm2025 } from "./magneticCoefficients.ts";

/** Highest degree of the harmonics held: IGRF-13 has 13, WMM2025 has 12. */
export const LARGEST_DEGREE = 13;
/** Coefficients of degree n and order m stand at `m * MODEL_STRIDE + n`. */
export const MODEL_STRIDE = LARGEST_DEGREE + 1;

/** Decimal year from which IGRF-13 holds. */
export const FIRST_FIELD_YEAR = 1900;
/** Decimal year at which WMM2025 takes over: its epoch, and the last of IGRF-13. */
export const WMM_EPOCH = 2025;
/** Decimal year up to which WMM2025 holds, by its publishers. */
export const LAST_FIELD_YEAR = 2030;

/** The Earth's main field at one time: coefficients of spherical harmonics, Schmidt semi-normalised. */
export interface MagneticModel {
	readonly name: string;
	/** Decimal year. */
	readonly year: number;
	readonly degree: number;
	/** nT, at `m * MODEL_STRIDE + n`. */
	readonly g: Float64Array;
	/** nT, at `m * MODEL_STRIDE + n`. */
	readonly h: Float64Array;
	/** True after `LAST_FIELD_YEAR`: a straight line carried on, and an answer that rests on it should say so. */
	readonly pastLastEpoch: boolean;
}

/** One coefficient; a negative order stands for h. */
export interface Harmonic {
	readonly degree: number;
	readonly order: number;
	readonly nT: number;
}

/**
 * The field at a time: IGRF-13 by straight lines between its five-year epochs up to 2025.0, WMM2025 with its yearly change from
 * there on. At 2025.0 the field steps by up to 142 nT and the dip by up to 0.35 degree, as the tests measure: the older model foresaw
 * that year from 2019.
 * @param when decimal year, or a day
 * @throws RangeError before 1900
 */
export function magneticModel(when: number | IsoDate): MagneticModel {
	const year = typeof when === "number" ? when : decimalYear(when);
	if (!(year >= FIRST_FIELD_YEAR && year < Number.POSITIVE_INFINITY)) {
		throw new RangeError(`Cannot take ${when} as a time of the magnetic field: expected ${FIRST_FIELD_YEAR} or later`);
	}
	const older = year < WMM_EPOCH;
	return modelOf(older ? "IGRF-13" : "WMM2025", year, older ? igrf13At(year) : wmm2025At(year));
}

/** Year and the part of it gone by at the start of a day: `2028-07-01` is 2028 and 182/366. */
export function decimalYear(date: IsoDate): number {
	const year = date.slice(0, 4);
	const length = daysBetween(isoDate(`${year}-01-01`), isoDate(`${year}-12-31`)) + 1;
	return Number(year) + daysBetween(isoDate(`${year}-01-01`), date) / length;
}

export function modelOf(name: string, year: number, harmonics: readonly Harmonic[]): MagneticModel {
	const g = new Float64Array(MODEL_STRIDE * MODEL_STRIDE);
	const h = new Float64Array(MODEL_STRIDE * MODEL_STRIDE);
	let highest = 0;
	for (const { degree, order, nT } of harmonics) {
		if (order < 0) h[-order * MODEL_STRIDE + degree] = nT;
		else g[order * MODEL_STRIDE + degree] = nT;
		highest = Math.max(highest, degree);
	}
	return { name, year, degree: highest, g, h, pastLastEpoch: year > LAST_FIELD_YEAR };
}

function igrf13At(year: number): readonly Harmonic[] {
	const steps = (year - FIRST_FIELD_YEAR) / IGRF_STEP_YEARS;
	const before = Math.floor(steps);
	const part = steps - before;
	return igrf13().map(({ degree, order, nTByEpoch }) => {
		const from = nTByEpoch[before]!; // year lies before the last epoch
		return { degree, order, nT: from + (nTByEpoch[before + 1]! - from) * part };
	});
}

function wmm2025At(year: number): readonly Harmonic[] {
	return wmm2025().map(({ degree, order, nT, nTPerYear }) => ({ degree, order, nT: nT + nTPerYear * (year - WMM_EPOCH) }));
}
