import { emissionFacts } from "./emissionTable.ts";
import { EMISSION_CLASSES, type EmissionClass, type Mode } from "./types.ts";

export interface Emission {
	readonly emissionClass: EmissionClass;
	/** Hz, necessary bandwidth; null when only the class was given. */
	readonly bandwidthHz: number | null;
}

/** Three symbols: modulation of the main carrier, nature of the signal, kind of information (RR Appendix 1, from memory). */
const CLASS = /^[A-Z][0-9X][A-Z]$/;
/** Three digits, the first not 0, and a letter in place of the decimal point (RR Appendix 1, from memory). */
const BANDWIDTH = /^[1-9]\d{0,2}[HKMG]\d{0,2}$/;
const UNIT_HZ: Readonly<Record<string, number>> = { H: 1, K: 1_000, M: 1_000_000, G: 1_000_000_000 };

/**
 * Reads a class of emission or a full designator. @example `emission("1K98F3C").bandwidthHz` is `1980`
 * @throws SyntaxError when it is neither; RangeError for a class that a marine MF/HF set has no use for
 */
export function emission(designator: string): Emission {
	const text = designator.trim().toUpperCase();
	const symbols = text.slice(-3);
	const width = text.slice(0, -3);
	const wellFormed = CLASS.test(symbols) && (width === "" || (width.length === 4 && BANDWIDTH.test(width)));
	if (!wellFormed) {
		throw new SyntaxError(
			`Cannot read "${designator}" as an emission: expected a class like J3E, or bandwidth and class like 2K80J3E (three digits, with H, K, M or G in place of the decimal point)`,
		);
	}
	const emissionClass = EMISSION_CLASSES.find((known) => known === symbols);
	if (emissionClass === undefined) {
		throw new RangeError(`Cannot use emission ${symbols}: expected one of ${EMISSION_CLASSES.join(", ")}`);
	}
	return { emissionClass, bandwidthHz: width === "" ? null : bandwidthHz(width) };
}

function bandwidthHz(width: string): number {
	const at = width.search(/[HKMG]/);
	const unit = UNIT_HZ[width.charAt(at)] ?? Number.NaN;
	const digits = Number(width.slice(0, at) + width.slice(at + 1));
	// digits and unit are whole, so one division keeps the result exact to the last place
	return (digits * unit) / 10 ** (3 - at);
}

export interface ReceivingModes {
	/** Made for it. */
	readonly right: readonly Mode[];
	/** Can be copied, with a loss that a person should know of. */
	readonly poor: readonly Mode[];
}

/** Which of the five modes receive an emission. `sideband` matters for J3E and R3E alone (default upper). */
export function modesThatReceive(emissionClass: EmissionClass, sideband: "upper" | "lower" = "upper"): ReceivingModes {
	const { family, right, poor } = emissionFacts(emissionClass);
	return family === "speech" && sideband === "lower" ? { right: ["LSB"], poor: [] } : { right, poor };
}
