import { readCsv } from "@skipwright/units";
import { CCIR_CSV } from "./data.gen.ts";
import { FOF2_SHAPE, M3000_SHAPE, type MapShape } from "./mapFunctions.ts";

/** R12 at which the two sets of coefficients stand. */
export const LOW_R12 = 0;
export const HIGH_R12 = 100;

/** Coefficients of one map in one month, at `j * geographic + k` for function j of the hour and k of the place, in `mapFunctions`' order. */
export interface MapCoefficients {
	readonly low: Float64Array;
	readonly high: Float64Array;
}

export interface MonthCoefficients {
	readonly foF2: MapCoefficients;
	readonly m3000F2: MapCoefficients;
}

let months: readonly MonthCoefficients[] | null = null;

/** The CCIR coefficients of a month. @param month 1 to 12 */
export function monthCoefficients(month: number): MonthCoefficients {
	months ??= parse();
	const found = months[month - 1];
	if (found === undefined) throw new RangeError(`Cannot take ${month} as a month: expected a whole number from 1 to 12`);
	return found;
}

const UNITS = Array.from({ length: 13 }, (_, j) => `u${j}`);

function parse(): readonly MonthCoefficients[] {
	const parsed = Array.from({ length: 12 }, () => ({ foF2: emptyMap(FOF2_SHAPE), m3000F2: emptyMap(M3000_SHAPE) }));
	for (const { cells } of readCsv("ccir.csv", CCIR_CSV, { required: ["month", "map", "R12", "function", ...UNITS] }).rows) {
		const month = parsed[Number(cells["month"]) - 1]!; // the file has months 1 to 12
		const [shape, map] = cells["map"] === "foF2" ? [FOF2_SHAPE, month.foF2] : [M3000_SHAPE, month.m3000F2];
		const level = Number(cells["R12"]) === LOW_R12 ? map.low : map.high;
		const k = shape.publishedGeographic.indexOf(Number(cells["function"]));
		for (const [j, published] of shape.publishedDiurnal.entries()) level[j * shape.geographic + k] = Number(cells[`u${published}`]);
	}
	return parsed;
}

function emptyMap({ geographic, publishedDiurnal }: MapShape): MapCoefficients {
	const size = geographic * publishedDiurnal.length;
	return { low: new Float64Array(size).fill(Number.NaN), high: new Float64Array(size).fill(Number.NaN) };
}
