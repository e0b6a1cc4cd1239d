import { APPENDIX17_RANGES_CSV } from "./data.gen.ts";
import { once, shippedRows } from "./shippedTable.ts";
import type { Spectrum } from "./types.ts";

/** A block of 3 kHz voice slots of Appendix 17. */
export interface VoiceRange extends Spectrum {
	readonly kind: "ship" | "simplex" | "coast" | "C-1" | "C-2";
	/** As in `Channel`. */
	readonly bandMhz: number;
}

const COLUMNS = ["kind", "band_mhz", "low_khz", "high_khz", "confidence", "source"];

const table = once(() =>
	shippedRows("appendix17-ranges.csv", APPENDIX17_RANGES_CSV, COLUMNS).map(
		(row): VoiceRange => ({
			kind: row.oneOf("kind", ["ship", "simplex", "coast", "C-1", "C-2"]),
			bandMhz: row.whole("band_mhz"),
			lowHz: row.khz("low_khz"),
			highHz: row.khz("high_khz"),
		}),
	),
);

const merged = once(() => {
	const wide: { lowHz: number; highHz: number }[] = [];
	for (const { lowHz, highHz } of table().toSorted((a, b) => a.lowHz - b.lowHz)) {
		const last = wide.at(-1);
		if (last !== undefined && lowHz <= last.highHz) last.highHz = Math.max(last.highHz, highHz);
		else wide.push({ lowHz, highHz });
	}
	return wide;
});

/** Blocks of voice slots: ships' side and coast side of the pairs, one-frequency slots, C-1 and C-2. */
export function appendix17VoiceRanges(): readonly VoiceRange[] {
	return table();
}

/** True when the whole spectrum lies in voice slots (adjoining blocks count as one). */
export function isInAppendix17Voice(spectrum: Spectrum): boolean {
	return merged().some(({ lowHz, highHz }) => lowHz <= spectrum.lowHz && spectrum.highHz <= highHz);
}
