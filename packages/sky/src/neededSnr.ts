import { log10 } from "@skipwright/units";
import { MEMORY, type MemoryId } from "./fromMemory.ts";

/** How well it is to be copied: ITU-R F.339's steps, and what IMO asks for distress and safety. */
export const GRADES = ["just-usable", "marginal", "good", "safety"] as const;
export type Grade = (typeof GRADES)[number];

export interface NeedOptions {
	/** Sky wave; false for a steady ground wave. Default true. */
	readonly fading?: boolean;
	/** Of F1B and J2B: 100 Bd with each character sent twice (DSC, NAVTEX, NBDP), or 50 Bd teletype without. Default 100. */
	readonly baud?: 50 | 100;
}

export interface NeededSnr {
	/** Hz in which `snrDb` holds. */
	readonly bandwidthHz: number;
	/** dB of the median signal over noise in that bandwidth, for the power that `power` names. */
	readonly snrDb: number;
	/** The same in 1 Hz. */
	readonly snr0DbHz: number;
	/** Which power of the sender counts, and how far it lies under the rated one (peak envelope power, or an A3E sender's carrier), dB. */
	readonly power: "peak" | "mean" | "carrier";
	readonly belowRatedDb: number;
	readonly basis: readonly MemoryId[];
	/** Where the figure comes from, for a specialist. */
	readonly source: string;
}

/** dB in 6 kHz, telephony of two sidebands: a mid-century engineering handbook's table of least in-band S/N. Against the carrier. */
const DOUBLE_SIDEBAND = { snrDb: 15, bandwidthHz: 6000 };
/** dB in 500 Hz for NAVTEX on 518 kHz by ground wave, IMO's criteria as quoted by ITU-R M.1467-1; the receiver's band is 300 Hz. */
const NAVTEX = { snrDb: 8, bandwidthHz: 500 };
const KEYED_BANDWIDTH_HZ = 300;

const F339 = MEMORY.requiredSnr.value;

const ONE_SIDEBAND: ReadonlySet<string> = new Set(["J3E", "H3E", "R3E"]);
const MORSE: ReadonlySet<string> = new Set(["A1A", "J2A"]);
const KEYED: ReadonlySet<string> = new Set(["F1B", "J2B"]);
const FACSIMILE: ReadonlySet<string> = new Set(["F3C", "J3C", "F1C", "J2C"]);

/**
 * Signal to noise that an emission needs for a grade; null for an emission of which nothing is known here. From memory of ITU-R F.339,
 * within 2 dB each, where `source` names nothing else.
 */
export function neededSnr(emission: string, grade: Grade, { fading = true, baud = 100 }: NeedOptions = {}): NeededSnr | null {
	if (ONE_SIDEBAND.has(emission)) return oneSideband(emission, grade, fading);
	if (emission === "A3E") return doubleSideband(grade, fading);
	if (MORSE.has(emission)) return steady(F339.morse, grade, fading);
	if (FACSIMILE.has(emission)) return steady(F339.facsimile, grade, fading);
	if (!KEYED.has(emission)) return null;
	if (baud === 50) return steady(F339.keyed50, grade, fading);
	return grade === "safety" ? keyedSafety(fading) : steady(F339.keyed100, grade, fading);
}

/** One row of ITU-R F.339: [stable, fading] in dB Hz by grade. */
interface Row {
	readonly bandwidthHz: number;
	readonly justUsable: readonly [number, number];
	readonly marginal: readonly [number, number];
	readonly good: readonly [number, number];
}

/** IMO's own figures exist for speech and NAVTEX alone: elsewhere `safety` means just usable. */
function snr0Of(row: Row, grade: Grade, fading: boolean): number {
	const pair = grade === "good" ? row.good : grade === "marginal" ? row.marginal : row.justUsable;
	return pair[fading ? 1 : 0];
}

/** Emissions whose power is the same at every moment they are sent. */
function steady(row: Row, grade: Grade, fading: boolean): NeededSnr {
	return {
		...inBand(row.bandwidthHz, snr0Of(row, grade, fading)),
		power: "peak",
		belowRatedDb: 0,
		basis: [MEMORY.requiredSnr.id],
		source: "ITU-R F.339, from memory",
	};
}

function oneSideband(emission: string, grade: Grade, fading: boolean): NeededSnr {
	const carrierDb = emission === "J3E" ? 0 : MEMORY.otherTelephony.value[emission === "H3E" ? "H3E" : "R3E"];
	const forCarrier = emission === "J3E" ? [] : [MEMORY.otherTelephony.id];
	if (grade === "safety") {
		const { snrDb, bandwidthHz, meanBelowPeakDb } = MEMORY.safetySpeech.value;
		return {
			...inBand(bandwidthHz, snrDb + 10 * log10(bandwidthHz)),
			power: "mean",
			belowRatedDb: meanBelowPeakDb + carrierDb,
			basis: [MEMORY.safetySpeech.id, ...forCarrier],
			source: "IMO A.801(19), 9 dB in 3 kHz of the mean power of speech, from memory",
		};
	}
	return {
		...inBand(F339.telephony.bandwidthHz, snr0Of(F339.telephony, grade, fading) + carrierDb),
		power: "peak",
		belowRatedDb: 0,
		basis: [MEMORY.requiredSnr.id, ...forCarrier],
		source: "ITU-R F.339, from memory",
	};
}

/** A handbook's least figure, and above it the steps of one sideband. */
function doubleSideband(grade: Grade, fading: boolean): NeededSnr {
	const least = DOUBLE_SIDEBAND.snrDb + 10 * log10(DOUBLE_SIDEBAND.bandwidthHz);
	const step = snr0Of(F339.telephony, grade, fading) - snr0Of(F339.telephony, "just-usable", fading);
	return {
		...inBand(DOUBLE_SIDEBAND.bandwidthHz, least + step),
		power: "carrier",
		belowRatedDb: 0,
		basis: step > 0 ? [MEMORY.requiredSnr.id] : [],
		source: "15 dB in 6 kHz from an engineering handbook; better grades as far above it as with one sideband",
	};
}

function keyedSafety(fading: boolean): NeededSnr {
	const snr0 = NAVTEX.snrDb + 10 * log10(NAVTEX.bandwidthHz) + (fading ? MEMORY.keyedSafetyFading.value : 0);
	return {
		...inBand(KEYED_BANDWIDTH_HZ, snr0),
		power: "peak",
		belowRatedDb: 0,
		basis: fading ? [MEMORY.keyedSafetyFading.id] : [],
		source: "IMO criteria for NAVTEX, 8 dB in 500 Hz, in ITU-R M.1467-1",
	};
}

function inBand(bandwidthHz: number, snr0DbHz: number): Pick<NeededSnr, "bandwidthHz" | "snrDb" | "snr0DbHz"> {
	return { bandwidthHz, snrDb: snr0DbHz - 10 * log10(bandwidthHz), snr0DbHz };
}
