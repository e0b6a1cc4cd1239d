import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Position, position, readCsv } from "@skipwright/units";

/** A place and time with what somebody else found there. */
export interface MapRow {
	readonly month: number;
	readonly utcHour: number;
	readonly where: Position;
	readonly r12: number;
	/** Decimal year. */
	readonly fieldEpoch: number;
	readonly modifiedDipDeg: number;
	readonly foF2MHz: number;
	readonly m3000F2: number;
}

/** As `MapRow`, at the two solar levels of the maps. */
export interface LevelsRow extends Omit<MapRow, "foF2MHz" | "m3000F2"> {
	readonly foF2MHz: { readonly low: number; readonly high: number };
	readonly m3000F2: { readonly low: number; readonly high: number };
}

export interface ERow {
	readonly month: number;
	readonly utcHour: number;
	readonly where: Position;
	readonly r12: number;
	readonly flux: number;
	readonly declinationDeg: number;
	readonly zenithDeg: number;
	readonly hoursAfterSunset: number | null;
	readonly foEMHz: number;
}

export function mapRows(file: "maps-2020.csv" | "maps-1960.csv"): readonly MapRow[] {
	return rowsOf(file, [...PLACE, "R12", "field_epoch", "dip_300km_deg", "modip_300km_deg", "foF2_MHz", "M3000F2"]).map((number) => ({
		...placeOf(number),
		fieldEpoch: number("field_epoch"),
		modifiedDipDeg: number("modip_300km_deg"),
		foF2MHz: number("foF2_MHz"),
		m3000F2: number("M3000F2"),
	}));
}

export function pyiriRows(): readonly LevelsRow[] {
	const values = ["foF2_at_0_MHz", "foF2_at_100_MHz", "M3000F2_at_0", "M3000F2_at_100"];
	return rowsOf("maps-pyiri.csv", [...PLACE, "R12", "field_epoch", "modip_300km_deg", ...values]).map((number) => ({
		...placeOf(number),
		fieldEpoch: number("field_epoch"),
		modifiedDipDeg: number("modip_300km_deg"),
		foF2MHz: { low: number("foF2_at_0_MHz"), high: number("foF2_at_100_MHz") },
		m3000F2: { low: number("M3000F2_at_0"), high: number("M3000F2_at_100") },
	}));
}

export function eRows(): readonly ERow[] {
	const sun = ["phi12_sfu", "declination_deg", "solar_zenith_deg", "hours_after_sunset"];
	return rowsOf("foe.csv", [...PLACE, "R12", ...sun, "foE_MHz"]).map((number) => ({
		...placeOf(number),
		flux: number("phi12_sfu"),
		declinationDeg: number("declination_deg"),
		zenithDeg: number("solar_zenith_deg"),
		hoursAfterSunset: Number.isNaN(number("hours_after_sunset")) ? null : number("hours_after_sunset"),
		foEMHz: number("foE_MHz"),
	}));
}

const PLACE = ["month", "utc_hour", "lat_deg", "lon_deg_east"];

function placeOf(number: (column: string) => number) {
	const where = position(number("lat_deg"), number("lon_deg_east"));
	return { month: number("month"), utcHour: number("utc_hour"), where, r12: number("R12") };
}

/** NaN stands for an empty cell. */
function rowsOf(file: string, columns: readonly string[]): ((column: string) => number)[] {
	const { rows } = readCsv(file, readFileSync(join(import.meta.dirname, file), "utf8"), { required: columns });
	return rows.map(
		({ cells }) =>
			(column) =>
				cells[column] ? Number(cells[column]) : Number.NaN,
	);
}
