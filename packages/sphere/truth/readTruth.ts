import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Position, position, readCsv } from "@skipwright/units";

export interface Geodesic {
	readonly kind: string;
	readonly from: Position;
	readonly to: Position;
	readonly sphereKm: number;
	readonly sphereBearingDeg: number;
	readonly wgs84Km: number;
}

export interface SunFix {
	readonly utcMs: number;
	readonly declinationDeg: number;
	readonly subsolarLonDeg: number;
	readonly where: Position;
	readonly zenithDeg: number;
}

export interface Passage {
	readonly where: Position;
	readonly date: string;
	readonly kind: string;
	readonly noonMin: number;
	readonly riseMin: number | null;
	readonly setMin: number | null;
}

/** The magnetic field that somebody else computed. */
export interface FieldRow {
	readonly where: Position;
	readonly heightKm: number;
	/** Decimal year. */
	readonly year: number;
	readonly northNt: number;
	readonly eastNt: number;
	readonly downNt: number;
	readonly totalNt: number;
	readonly dipDeg: number;
	readonly declinationDeg: number;
}

/** One that also tells modified dip and gyrofrequencies. */
export interface FieldCheckRow extends FieldRow {
	readonly modifiedDipDeg: number;
	readonly gyroMHz: number;
	readonly longitudinalGyroMHz: number;
}

export function geodesics(): readonly Geodesic[] {
	return rowsOf("geodesics.csv", ["kind", "lat1", "lon1", "lat2", "lon2", "sphere_km", "sphere_bearing", "wgs84_km"]).map((cell) => ({
		kind: cell("kind"),
		from: position(Number(cell("lat1")), Number(cell("lon1"))),
		to: position(Number(cell("lat2")), Number(cell("lon2"))),
		sphereKm: Number(cell("sphere_km")),
		sphereBearingDeg: Number(cell("sphere_bearing")),
		wgs84Km: Number(cell("wgs84_km")),
	}));
}

export function sunFixes(): readonly SunFix[] {
	return rowsOf("sun.csv", ["utc", "declination", "subsolar_lon", "lat", "lon", "zenith"]).map((cell) => ({
		utcMs: Date.parse(cell("utc")),
		declinationDeg: Number(cell("declination")),
		subsolarLonDeg: Number(cell("subsolar_lon")),
		where: position(Number(cell("lat")), Number(cell("lon"))),
		zenithDeg: Number(cell("zenith")),
	}));
}

export function passages(): readonly Passage[] {
	return rowsOf("sunPassages.csv", ["lat", "lon", "date", "kind", "noon_min", "rise_min", "set_min"]).map((cell) => ({
		where: position(Number(cell("lat")), Number(cell("lon"))),
		date: cell("date"),
		kind: cell("kind"),
		noonMin: Number(cell("noon_min")),
		riseMin: cell("rise_min") === "" ? null : Number(cell("rise_min")),
		setMin: cell("set_min") === "" ? null : Number(cell("set_min")),
	}));
}

/** Rows of `wmmTestValues.csv` or `geomagnetism.csv`. */
export function fieldRows(file: "wmmTestValues.csv" | "geomagnetism.csv"): readonly FieldRow[] {
	return rowsOf(file, ["year", ...FIELD_COLUMNS]).map((cell) => fieldRow(cell, "year"));
}

export function fieldCheckRows(): readonly FieldCheckRow[] {
	const columns = ["field_epoch", ...FIELD_COLUMNS, "modip_deg", "gyrofrequency_MHz", "gyro_longitudinal_MHz"];
	return rowsOf("fieldCheck.csv", columns).map((cell) => ({
		...fieldRow(cell, "field_epoch"),
		modifiedDipDeg: Number(cell("modip_deg")),
		gyroMHz: Number(cell("gyrofrequency_MHz")),
		longitudinalGyroMHz: Number(cell("gyro_longitudinal_MHz")),
	}));
}

/** Text of a table of coefficients. */
export function truthText(file: "wmm2020.csv"): string {
	return readFileSync(join(import.meta.dirname, file), "utf8");
}

const FIELD_COLUMNS = ["height_km", "lat_deg", "lon_deg_east", "north_nT", "east_nT", "down_nT", "total_nT", "dip_deg", "declination_deg"];

function fieldRow(cell: (column: string) => string, yearColumn: string): FieldRow {
	return {
		where: position(Number(cell("lat_deg")), Number(cell("lon_deg_east"))),
		heightKm: Number(cell("height_km")),
		year: Number(cell(yearColumn)),
		northNt: Number(cell("north_nT")),
		eastNt: Number(cell("east_nT")),
		downNt: Number(cell("down_nT")),
		totalNt: Number(cell("total_nT")),
		dipDeg: Number(cell("dip_deg")),
		declinationDeg: Number(cell("declination_deg")),
	};
}

function rowsOf(file: string, columns: readonly string[]): ((column: string) => string)[] {
	const { rows } = readCsv(file, readFileSync(join(import.meta.dirname, file), "utf8"), { required: columns });
	return rows.map(
		({ cells }) =>
			(column) =>
				cells[column] ?? "",
	);
}
