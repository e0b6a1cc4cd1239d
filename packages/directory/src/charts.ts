import { type CsvRow, formatHhmm, type Hz, type IsoDate, MINUTES_PER_DAY, parseHhmm, parseKhz, readCsv } from "@skipwright/units";
import { CellReader } from "./cellReader.ts";
import { FAX_TIMETABLE_CSV } from "./data.gen.ts";
import { airtimeOf, scheduleOf } from "./listingSchedule.ts";
import { scheduleKnown } from "./occurrences.ts";
import { CONFIDENCES, type Confidence, type Directory, type Listing } from "./types.ts";

/** One row of a published timetable of a chart (facsimile) station. */
export interface ChartRow {
	readonly stationId: string;
	/** Minutes after 0000 UTC. */
	readonly startMin: number;
	/** Minutes after 0000 UTC, where published; at or before `startMin` it lies on the next day. */
	readonly endMin: number | null;
	/** `window`: only says that the station is on the air, not what it sends. */
	readonly kind: "chart" | "window";
	readonly product: string;
	/** Frequencies the row is limited to, empty for all of the station's. */
	readonly hz: readonly Hz[];
	/** Lines a minute and index of cooperation as published ("120/576"), or "". */
	readonly rpmIoc: string;
	readonly source: string;
	readonly asOf: string;
	readonly confidence: Confidence;
}

/** A chart of the timetable at its time on one listing. */
export interface ChartOccurrence {
	readonly row: ChartRow;
	/** Minutes after 0000 UTC of the day asked for. */
	readonly fromMin: number;
	/** Assumed: the start of the next chart of the same source, at most `LONGEST_CHART_MIN` later. */
	readonly toMin: number;
	/** Whether the listing's own times, often from a newer source, have it on the air then; null when they do not say. */
	readonly onAir: boolean | null;
}

/** Minutes. Most that a chart is taken to last; the usual step of the timetables held is 10 to 20. Assumption. */
export const LONGEST_CHART_MIN = 20;
/** Minutes that the last chart of a run is taken to last. Assumption. */
const LAST_CHART_MIN = 10;

const COLUMNS = ["station", "kind", "start", "end", "khz", "product", "rpm_ioc", "confidence", "as_of", "source"];

let table: ReadonlyMap<string, readonly ChartRow[]> | null = null;

/** Timetable of a station in order of time; empty when none is held. Rows of different sources and years may stand side by side. */
export function chartTimetable(stationId: string): readonly ChartRow[] {
	table ??= Map.groupBy(
		readTimetable("fax-timetable.csv", FAX_TIMETABLE_CSV).toSorted((a, b) => a.startMin - b.startMin),
		(row) => row.stationId,
	);
	return table.get(stationId) ?? [];
}

/** Every row of the shipped timetables, in the order of the file. @throws BadInputError */
export function readTimetable(source: string, text: string): readonly ChartRow[] {
	const cells = new CellReader(source);
	const rows = readCsv(source, text, { required: COLUMNS }).rows.map((row) => readRow(cells, row));
	cells.finish();
	return rows;
}

/** Charts of the station's timetable that start on a UTC day, for one of its chart listings; none for a closed one. */
export function chartsOf(directory: Directory, listing: Listing, date: IsoDate): readonly ChartOccurrence[] {
	if (listing.service !== "fax" || listing.status === "closed") return [];
	const charts = chartTimetable(listing.stationId).filter(
		({ kind, hz }) => kind === "chart" && (hz.length === 0 || hz.includes(listing.hz)),
	);
	const says = scheduleKnown(scheduleOf(listing)) !== "cannot-tell";
	const air = airtimeOf(directory, listing, date);
	return charts.map((row) => ({
		row,
		fromMin: row.startMin,
		toMin: row.startMin + lengthOf(row, charts),
		onAir: says ? air.some(({ fromMin, toMin }) => row.startMin >= fromMin && row.startMin < toMin) : null,
	}));
}

function lengthOf(row: ChartRow, charts: readonly ChartRow[]): number {
	const gaps = charts
		.filter(({ source }) => source === row.source)
		.map(({ startMin }) => (startMin - row.startMin + MINUTES_PER_DAY) % MINUTES_PER_DAY)
		.filter((gap) => gap > 0);
	const gap = Math.min(...gaps, MINUTES_PER_DAY);
	return gap <= 2 * LONGEST_CHART_MIN ? Math.min(gap, LONGEST_CHART_MIN) : LAST_CHART_MIN;
}

function readRow(cells: CellReader, row: CsvRow): ChartRow {
	return {
		stationId: cells.text(row, "station"),
		kind: cells.choice(row, "kind", ["chart", "window"]),
		startMin: cells.read(row, "start", parseHhmm, 0),
		endMin: cells.optional<number | null>(row, "end", parseHhmm, null),
		hz: cells.optional<readonly Hz[]>(row, "khz", (text) => text.split(";").map(parseKhz), []),
		product: cells.text(row, "product"),
		rpmIoc: cells.text(row, "rpm_ioc"),
		confidence: cells.choice(row, "confidence", CONFIDENCES),
		asOf: cells.text(row, "as_of"),
		source: cells.text(row, "source"),
	};
}

/** One line for a timetable. @example `"0331 final surface analysis (part 1 north-east Pacific), valid 00, area 2"` */
export function chartText({ startMin, endMin, kind, product }: ChartRow): string {
	if (kind === "chart") return `${formatHhmm(startMin)} ${product}`;
	return `${formatHhmm(startMin)}-${formatHhmm(endMin ?? 0)} on the air, charts not named`;
}
