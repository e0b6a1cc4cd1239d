import { type CsvRow, position, readCsv, writeCsv } from "@skipwright/units";
import { parseAsOf } from "./asOf.ts";
import { CellReader } from "./cellReader.ts";
import { gradeOfSource } from "./gradeOfSource.ts";
import { CONFIDENCES, STATUSES, type Station } from "./types.ts";

const REQUIRED = ["id", "name", "as_of", "source"] as const;
const OPTIONAL = ["call_sign", "administration", "mmsi", "lat", "lon", "power_kw", "status", "confidence", "notes"] as const;
const COLUMNS = [
	"id",
	"name",
	"call_sign",
	"administration",
	"mmsi",
	"lat",
	"lon",
	"power_kw",
	"status",
	"confidence",
	"as_of",
	"notes",
	"source",
] as const;

/**
 * Reads stations. Empty cells: position, MMSI and power are not known, `status` unknown, `confidence` from the source cell.
 * @throws BadInputError naming line, column, value and what was expected; nothing is half-imported
 */
export function readStationsCsv(source: string, text: string): readonly Station[] {
	const cells = new CellReader(source);
	const seen = new Set<string>();
	const stations = readCsv(source, text, { required: REQUIRED, optional: OPTIONAL }).rows.map((row) => {
		const station = readStation(cells, row);
		if (seen.has(station.id)) cells.fault(row, "id", "an id that no earlier line has");
		seen.add(station.id);
		return station;
	});
	cells.finish();
	return stations;
}

/** Stations as CSV; reading it again gives the same stations. */
export function writeStationsCsv(stations: readonly Station[]): string {
	return writeCsv(
		COLUMNS,
		stations.map((station) => [
			station.id,
			station.name,
			station.callSign,
			station.administration,
			station.mmsi ?? "",
			station.position === null ? "" : String(station.position.latDeg),
			station.position === null ? "" : String(station.position.lonDeg),
			station.powerKw === null ? "" : String(station.powerKw),
			station.status,
			station.confidence,
			station.asOf,
			station.notes,
			station.source,
		]),
	);
}

function readStation(cells: CellReader, row: CsvRow): Station {
	const source = cells.text(row, "source");
	return {
		id: cells.read(row, "id", parseStationId, "", "an id without blanks"),
		name: cells.text(row, "name"),
		callSign: cells.text(row, "call_sign"),
		administration: cells.optional(row, "administration", parseAdministration, ""),
		mmsi: cells.optional<string | null>(row, "mmsi", parseMmsiText, null),
		position: readPosition(cells, row),
		powerKw: cells.optional<number | null>(row, "power_kw", parsePower, null),
		source,
		asOf: cells.optional(row, "as_of", parseAsOf, ""),
		confidence: cells.choice(row, "confidence", CONFIDENCES, gradeOfSource(source)),
		status: cells.choice(row, "status", STATUSES, "unknown"),
		notes: cells.text(row, "notes"),
	};
}

function readPosition(cells: CellReader, row: CsvRow): Station["position"] {
	const lat = cells.optional<number | null>(row, "lat", parseDegrees, null);
	const lon = cells.optional<number | null>(row, "lon", parseDegrees, null);
	if (lat === null && lon === null) return null;
	return cells.read(
		row,
		"lat",
		() => position(lat ?? Number.NaN, lon ?? Number.NaN),
		null,
		"both lat (-90 to 90) and lon (-360 to 360) in degrees, or neither",
	);
}

function parseStationId(text: string): string {
	if (!/^[^\s,]+$/.test(text)) throw new SyntaxError("an id without blanks");
	return text;
}

function parseAdministration(text: string): string {
	if (!/^[A-Z]{2}$/.test(text)) throw new SyntaxError("two capital letters (ISO 3166)");
	return text;
}

function parseMmsiText(text: string): string {
	if (!/^\d{9}$/.test(text)) throw new SyntaxError("nine digits");
	return text;
}

function parseDegrees(text: string): number {
	if (!/^-?\d{1,3}(\.\d+)?$/.test(text)) throw new SyntaxError("decimal degrees like -33.69");
	return Number(text);
}

function parsePower(text: string): number {
	if (!/^\d+(\.\d+)?$/.test(text)) throw new SyntaxError("kilowatts like 0.4");
	return Number(text);
}
