import { emissionFamily } from "./emissionTable.ts";
import type { EmissionClass, Spectrum } from "./types.ts";

/** Hz from the suppressed carrier. Audio band of single-sideband speech: ITU-R M.1173 (from memory). */
const SPEECH_LOW_HZ = 350;
const SPEECH_HIGH_HZ = 2_700;
/** Hz each side of a full carrier. 6K00A3E, 47 CFR 80.205; H3E is taken as wide, its receiver is not known. */
const FULL_CARRIER_HALF_HZ = 3_000;
/** Hz each side. 160HA1A, 47 CFR 80.205, and tuning. */
const MORSE_HALF_HZ = 100;
/** Hz each side. 300HF1B, 47 CFR 80.205. */
const KEYED_HALF_HZ = 150;
/** Hz each side of the middle of a chart: deviation ±400 Hz and a little (fax practice, WMO-No. 386 from memory). */
const CHART_HALF_HZ = 450;
/** Hz each side. 2K80J2D, 47 CFR 80.205. */
const DATA_HALF_HZ = 1_400;
/** Hz beyond each tone of a teletype. */
const TELETYPE_EDGE_HZ = 100;

export interface SpectrumShape {
	readonly sideband?: "upper" | "lower" | undefined;
	/** Hz between the tones of a teletype; absent for DSC, NBDP and NAVTEX. */
	readonly teletypeShiftHz?: number | undefined;
}

/** Occupied spectrum of an emission about its reference: the carrier of speech and Morse, the centre of all else. */
export function spectrumAround(referenceHz: number, emission: EmissionClass, shape: SpectrumShape = {}): Spectrum {
	const family = emissionFamily(emission);
	if (family === "speech") {
		return shape.sideband === "lower"
			? { lowHz: referenceHz - SPEECH_HIGH_HZ, highHz: referenceHz - SPEECH_LOW_HZ }
			: { lowHz: referenceHz + SPEECH_LOW_HZ, highHz: referenceHz + SPEECH_HIGH_HZ };
	}
	const half = halfWidth(family, shape);
	return { lowHz: referenceHz - half, highHz: referenceHz + half };
}

function halfWidth(family: "carrier" | "morse" | "keyed" | "data" | "chart", { teletypeShiftHz }: SpectrumShape): number {
	switch (family) {
		case "carrier":
			return FULL_CARRIER_HALF_HZ;
		case "morse":
			return MORSE_HALF_HZ;
		case "chart":
			return CHART_HALF_HZ;
		case "data":
			return DATA_HALF_HZ;
		case "keyed":
			return teletypeShiftHz === undefined ? KEYED_HALF_HZ : teletypeShiftHz / 2 + TELETYPE_EDGE_HZ;
	}
}
