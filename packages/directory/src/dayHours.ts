import { parseHhmm, readCsv } from "@skipwright/units";
import { DAY_HOURS_CSV } from "./data.gen.ts";
import type { DayHours } from "./schedule.ts";

const COLUMNS = ["station", "utc_offset_min", "day_from", "day_to", "doubt", "source", "as_of"];

let table: ReadonlyMap<string, DayHours> | null = null;

/** Fixed local hours of "day" at a station (data/day-hours.csv), or null where the sun decides. */
export function dayHoursOf(stationId: string): DayHours | null {
	table ??= new Map(
		readCsv("day-hours.csv", DAY_HOURS_CSV, { required: COLUMNS }).rows.map(({ cells }) => [
			cells["station"] ?? "",
			{
				utcOffsetMin: Number(cells["utc_offset_min"]),
				fromMin: parseHhmm(cells["day_from"] ?? ""),
				toMin: parseHhmm(cells["day_to"] ?? ""),
				doubt: cells["doubt"] ?? "",
				source: `${cells["source"]}, as of ${cells["as_of"]}`,
			},
		]),
	);
	return table.get(stationId) ?? null;
}
