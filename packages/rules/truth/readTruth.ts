import { readFileSync } from "node:fs";
import { type CsvRow, readCsv } from "@skipwright/units";

/** Rows of a file in truth/, for tests only. */
export function readTruth(file: string, columns: readonly string[]): readonly CsvRow["cells"][] {
	const text = readFileSync(new URL(file, import.meta.url), "utf8");
	return readCsv(file, text, { required: columns }).rows.map(({ cells }) => cells);
}
