import { ASSIGNED_ABOVE_CARRIER_HZ, usualAudioCentreHz } from "./dialOffset.ts";
import { emissionFamily } from "./emissionTable.ts";
import type { Published } from "./types.ts";

/**
 * Published figure minus reference, in hertz. The reference is the carrier of speech and Morse, the centre of all else.
 * For tones and pictures `carrier` and `dial` both mean the suppressed carrier of a single-sideband receiver with the usual
 * audio centre: a list that prints a carrier for a chart prints the dial.
 */
export function publishedOffsetHz(published: Omit<Published, "hz">): number {
	const lower = published.sideband === "lower";
	const aside = published.means === "centre" || published.means === "assigned";
	switch (emissionFamily(published.emission)) {
		case "speech":
			return aside ? (lower ? -ASSIGNED_ABOVE_CARRIER_HZ : ASSIGNED_ABOVE_CARRIER_HZ) : 0;
		case "carrier":
		case "morse":
			return 0;
		case "keyed":
		case "data":
		case "chart":
			return aside ? 0 : (lower ? 1 : -1) * usualAudioCentreHz(published);
	}
}
