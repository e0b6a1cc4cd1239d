import type { Hz } from "@skipwright/units";
import { DSC_CALLING_CSV } from "./data.gen.ts";
import { once, type ShippedRow, shippedRows } from "./shippedTable.ts";

/** Frequencies for calls other than distress by DSC; centres. */
export interface DscCalling {
	readonly series: "international" | "intership" | "national-a" | "national-b";
	/** Sent by the ship. */
	readonly ship: Hz;
	/** Sent by the coast station; between ships the same. */
	readonly coast: Hz;
	readonly confidence: "verified" | "memory";
	readonly source: string;
	readonly note: string;
}

const COLUMNS = ["series", "ship_khz", "coast_khz", "confidence", "source", "note"];

function readPair(row: ShippedRow): DscCalling {
	return {
		series: row.oneOf("series", ["international", "intership", "national-a", "national-b"]),
		ship: row.khz("ship_khz"),
		coast: row.khz("coast_khz"),
		confidence: row.confidence(),
		source: row.text("source"),
		note: row.text("note"),
	};
}

const table = once(() => shippedRows("dsc-calling.csv", DSC_CALLING_CSV, COLUMNS).map(readPair));

/** Calling pairs of all series. The national series are those of the USA; other administrations use the same figures their own way. */
export function dscCalling(): readonly DscCalling[] {
	return table();
}
