import { readCsv } from "@skipwright/units";
import { IGRF13_CSV, WMM2025_CSV } from "./data.gen.ts";

/** Years from one epoch of IGRF-13 to the next. */
export const IGRF_STEP_YEARS = 5;
const IGRF_EPOCHS = Array.from({ length: 26 }, (_, i) => String(1900 + i * IGRF_STEP_YEARS));

/** One coefficient of IGRF-13; a negative order stands for h. */
export interface HarmonicByEpoch {
	readonly degree: number;
	readonly order: number;
	/** nT at 1900, 1905, ... 2025. */
	readonly nTByEpoch: readonly number[];
}

/** One coefficient of WMM2025 at 2025.0 and its change; a negative order stands for h. */
export interface HarmonicWithChange {
	readonly degree: number;
	readonly order: number;
	readonly nT: number;
	readonly nTPerYear: number;
}

let igrf: readonly HarmonicByEpoch[] | null = null;
let wmm: readonly HarmonicWithChange[] | null = null;

export function igrf13(): readonly HarmonicByEpoch[] {
	igrf ??= readCsv("igrf13.csv", IGRF13_CSV, { required: ["degree", "order", ...IGRF_EPOCHS] }).rows.map(({ cells }) => ({
		degree: Number(cells["degree"]),
		order: Number(cells["order"]),
		nTByEpoch: IGRF_EPOCHS.map((epoch) => Number(cells[epoch])),
	}));
	return igrf;
}

export function wmm2025(): readonly HarmonicWithChange[] {
	wmm ??= harmonicsWithChange("wmm2025.csv", WMM2025_CSV);
	return wmm;
}

export function harmonicsWithChange(source: string, csv: string): readonly HarmonicWithChange[] {
	return readCsv(source, csv, { required: ["degree", "order", "nT", "nT_per_year"] }).rows.map(({ cells }) => ({
		degree: Number(cells["degree"]),
		order: Number(cells["order"]),
		nT: Number(cells["nT"]),
		nTPerYear: Number(cells["nT_per_year"]),
	}));
}
