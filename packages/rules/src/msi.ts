import type { Hz } from "@skipwright/units";
import { MSI_CSV } from "./data.gen.ts";
import { once, shippedRows } from "./shippedTable.ts";
import type { ServiceId } from "./types.ts";

/** A frequency reserved for maritime safety information; centre. */
export interface MsiFrequency {
	readonly hz: Hz;
	readonly service: Extract<ServiceId, "navtex" | "nbdp-msi">;
	readonly label: string;
	readonly confidence: "verified" | "memory";
	readonly source: string;
	readonly note: string;
}

const COLUMNS = ["khz", "service", "label", "confidence", "source", "note"];

const table = once(() =>
	shippedRows("msi.csv", MSI_CSV, COLUMNS).map(
		(row): MsiFrequency => ({
			hz: row.khz("khz"),
			service: row.oneOf("service", ["navtex", "nbdp-msi"]),
			label: row.text("label"),
			confidence: row.confidence(),
			source: row.text("source"),
			note: row.text("note"),
		}),
	),
);

export function msiFrequencies(): readonly MsiFrequency[] {
	return table();
}
