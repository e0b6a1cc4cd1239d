import type { Hz } from "@skipwright/units";
import { GUARD_CSV } from "./data.gen.ts";
import { once, type ShippedRow, shippedRows } from "./shippedTable.ts";
import { spansOf } from "./spans.ts";
import { spectrumAround } from "./spectrumAround.ts";
import { EMISSION_CLASSES, type Guard, type Spectrum } from "./types.ts";

const COLUMNS = ["khz", "kind", "emission", "label", "required", "confidence", "source", "note"];

function readGuard(row: ShippedRow): Guard {
	return {
		hz: row.khz("khz"),
		kind: row.oneOf("kind", ["voice", "dsc", "nbdp", "sar-voice"]),
		emission: row.oneOf("emission", EMISSION_CLASSES),
		label: row.text("label"),
		required: row.oneOf("required", ["yes", "no"]) === "yes",
		source: row.text("source"),
		confidence: row.confidence(),
		note: row.text("note"),
	};
}

const table = once(() => shippedRows("guard.csv", GUARD_CSV, COLUMNS).map(readGuard));
const spans = once(() => spansOf(table(), guardSpectrum));
const byFigure = once(() => Map.groupBy(table(), (guard): number => guard.hz));

/** The one list of distress, safety and calling carriers and DSC watch frequencies. */
export function guards(): readonly Guard[] {
	return table();
}

/** Guards published at exactly this figure (carrier for voice, centre for DSC and NBDP). */
export function guardsAt(hz: Hz): readonly Guard[] {
	return byFigure().get(hz) ?? [];
}

/** What a guard's own signal occupies: that is what is kept clear. */
export function guardSpectrum(guard: Guard): Spectrum {
	return spectrumAround(guard.hz, guard.emission);
}

/** Guards whose own spectrum shares at least a point with `spectrum`, lowest first. */
export function guardOverlapping(spectrum: Spectrum): readonly Guard[] {
	return spans().meeting(spectrum);
}
