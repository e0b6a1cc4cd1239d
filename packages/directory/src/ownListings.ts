import { EMISSION_CLASSES, type EmissionClass, LISTED_MEANS, MODES, type Mode } from "@skipwright/rules";
import { type CsvRow, type Hz, hz, readCsv } from "@skipwright/units";
import { parseAsOf } from "./asOf.ts";
import { CellReader } from "./cellReader.ts";
import { ListingIds, parseListedKhz } from "./listingsCsv.ts";
import { checkedSchedule } from "./parseSchedule.ts";
import type { Listing } from "./types.ts";

const REQUIRED = ["name", "khz", "means", "schedule"] as const;
const OPTIONAL = ["mode", "emission", "transmit_khz", "note", "as_of"] as const;

/** What a mode of the set is taken to receive when no emission is given. */
const EMISSION_OF_MODE: Readonly<Record<Mode, EmissionClass>> = { USB: "J3E", LSB: "J3E", AM: "A3E", CW: "A1A", FSK: "F1B" };

/**
 * Reads the owner's own listings (nets and friends). Columns: `name,khz,means,schedule` and `mode` or `emission`; optional `transmit_khz`
 * (empty or left out = receive only), `note`, `as_of`. Times are UTC in the directory's notation. A row with a date counts as a secondary
 * source, one without as memory.
 * @throws BadInputError naming line, column, value and what was expected; nothing is half-imported
 */
export function readOwnListingsCsv(source: string, text: string): readonly Listing[] {
	const cells = new CellReader(source);
	const ids = new ListingIds(cells);
	const listings = readCsv(source, text, { required: REQUIRED, optional: OPTIONAL }).rows.map((row) => readOwn(cells, row, ids));
	cells.finish();
	return listings;
}

function readOwn(cells: CellReader, row: CsvRow, ids: ListingIds): Listing {
	const name = cells.read(row, "name", parseName, "net", "a name with a letter or figure");
	const frequency = cells.read(row, "khz", parseListedKhz, hz(0));
	const { emission, sideband } = readEmission(cells, row);
	const shipTx = cells.optional<Hz | null>(row, "transmit_khz", parseListedKhz, null);
	const asOf = cells.optional(row, "as_of", parseAsOf, "");
	const stationId = `own/${slug(name)}`;
	return {
		id: ids.take(row, "", stationId, "voice-working", frequency),
		stationId,
		service: "voice-working",
		hz: frequency,
		means: cells.choice(row, "means", LISTED_MEANS),
		coastTx: shipTx === null ? null : frequency,
		shipTx,
		channel: null,
		emission,
		schedule: cells.read(row, "schedule", checkedSchedule, "unknown"),
		coverage: name,
		notes: cells.text(row, "note"),
		receiveOnly: shipTx === null,
		sideband,
		source: "the owner",
		asOf,
		confidence: asOf === "" ? "memory" : "secondary",
		status: "active",
		origin: "owner",
	};
}

/** From `emission`, `mode` or both; both must agree, and only LSB makes the sideband lower. */
function readEmission(cells: CellReader, row: CsvRow): { readonly emission: EmissionClass; readonly sideband: "upper" | "lower" } {
	const mode = cells.text(row, "mode").trim() === "" ? null : cells.choice(row, "mode", MODES);
	const given = cells.text(row, "emission").trim() === "" ? null : cells.choice(row, "emission", EMISSION_CLASSES);
	if (mode === null && given === null) cells.fault(row, "mode", `a mode (${MODES.join(", ")}), or an emission in the column emission`);
	const emission = given ?? (mode === null ? "J3E" : EMISSION_OF_MODE[mode]);
	if (mode !== null && given !== null && !canReceive(mode, given)) cells.fault(row, "mode", `a mode that receives ${given}, or none`);
	return { emission, sideband: mode === "LSB" ? "lower" : "upper" };
}

/** On USB or LSB any emission can be taken as audio; AM, CW and FSK take their own kind. */
function canReceive(mode: Mode, emission: EmissionClass): boolean {
	if (mode === "AM") return emission === "A3E" || emission === "H3E";
	if (mode === "CW") return emission === "A1A" || emission === "J2A";
	return mode !== "FSK" || /^[FJ][12][BD]$/.test(emission);
}

function parseName(text: string): string {
	if (slug(text) === "") throw new SyntaxError("a name");
	return text;
}

function slug(name: string): string {
	return name
		.normalize("NFKD")
		.replace(/\p{M}/gu, "")
		.toLowerCase()
		.replace(/[^\p{L}\p{N}]+/gu, "-")
		.replace(/^-|-$/g, "");
}
