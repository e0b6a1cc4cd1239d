import { ALLOCATIONS_CSV } from "./data.gen.ts";
import { once, type ShippedRow, shippedRows } from "./shippedTable.ts";
import { spansOf } from "./spans.ts";
import type { Allocation, AllocationService, Region, Spectrum } from "./types.ts";

export const REGIONS: readonly Region[] = [1, 2, 3];

const COLUMNS = ["low_khz", "high_khz", "service", "regions", "shared", "confidence", "source", "note"];

/** Words for screens and papers. */
export const ALLOCATION_WORDS: Readonly<Record<AllocationService, string>> = {
	maritime: "maritime mobile",
	amateur: "amateur",
	broadcasting: "broadcasting",
	aeronautical: "aeronautical mobile",
	"time-signal": "standard frequency and time signal",
	"fixed-mobile": "fixed and mobile",
	"distress-and-calling": "maritime distress and calling",
	"radio-astronomy": "radio astronomy",
};

const SERVICES = Object.keys(ALLOCATION_WORDS) as AllocationService[]; // the record has every service as a key

function readAllocation(row: ShippedRow): Allocation {
	return {
		lowHz: row.khz("low_khz"),
		highHz: row.khz("high_khz"),
		service: row.oneOf("service", SERVICES),
		regions: row.someOf("regions", ["1", "2", "3"]).map((digit) => Number(digit) as Region), // one of the three digits
		shared: row.oneOf("shared", ["yes", "no"]) === "yes",
		source: row.text("source"),
		confidence: row.confidence(),
		note: row.text("note"),
	};
}

const table = once(() => shippedRows("allocations.csv", ALLOCATIONS_CSV, COLUMNS).map(readAllocation));
const spans = once(() => spansOf(table(), (allocation) => allocation));

/** Service bands of RR Article 5 that matter on board, lowest first. */
export function allocations(): readonly Allocation[] {
	return table();
}

/** Allocations that share spectrum with `spectrum`, in one Region or (null) in any. A band owns its lower edge, not its upper. */
export function allocationsAt(spectrum: Spectrum, region: Region | null): readonly Allocation[] {
	return spans()
		.meeting(spectrum)
		.filter((band) => sharesSpectrum(band, spectrum) && (region === null || band.regions.includes(region)));
}

function sharesSpectrum(band: Spectrum, { lowHz, highHz }: Spectrum): boolean {
	return lowHz < band.highHz && (highHz > band.lowHz || lowHz === band.lowHz);
}

/** How much of `spectrum` the allocations to `services` together cover in a Region; adjoining bands count as one. */
export function coverage(spectrum: Spectrum, region: Region, services: readonly AllocationService[]): "wholly" | "partly" | "not" {
	const bands = allocationsAt(spectrum, region).filter(({ service }) => services.includes(service));
	if (bands.length === 0) return "not";
	let reached = spectrum.lowHz;
	for (const { lowHz, highHz } of bands) {
		if (lowHz > reached) break;
		reached = Math.max(reached, highHz);
	}
	return reached >= spectrum.highHz ? "wholly" : "partly";
}
