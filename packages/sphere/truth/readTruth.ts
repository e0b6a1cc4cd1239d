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

function rowsOf(file: string, columns: readonly string[]): ((column: string) => string)[] {
	const { rows } = readCsv(file, readFileSync(join(import.meta.dirname, file), "utf8"), { required: columns });
	return rows.map(
		({ cells }) =>
			(column) =>
				cells[column] ?? "",
	);
}
