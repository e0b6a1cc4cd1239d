import type { ServiceId } from "@skipwright/rules";
import { readCsv } from "@skipwright/units";
import { ASSUMED_LENGTHS_CSV } from "./data.gen.ts";

let table: ReadonlyMap<string, number> | null = null;

/** Minutes that one item of a service is taken to last where only its start is published. Assumptions: data/assumed-lengths.csv says on what each rests. */
export function assumedLengthMin(service: ServiceId): number {
	table ??= new Map(
		readCsv("assumed-lengths.csv", ASSUMED_LENGTHS_CSV, { required: ["service", "minutes", "basis"] }).rows.map(({ cells }) => [
			cells["service"] ?? "",
			Number(cells["minutes"]),
		]),
	);
	const minutes = table.get(service);
	if (minutes === undefined) throw new RangeError(`Cannot give a length for ${service}: data/assumed-lengths.csv has no row for it`);
	return minutes;
}
