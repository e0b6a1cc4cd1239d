import type { EmissionClass, Mode } from "./types.ts";

export interface Emission {
	readonly emissionClass: EmissionClass;
	/** Hz, necessary bandwidth; null when only the class was given. */
	readonly bandwidthHz: number | null;
}

/**
 * Reads a class of emission or a full designator. @example `emission("1K98F3C").bandwidthHz` is `1980`
 * @throws SyntaxError when it is neither; RangeError for a class that a marine MF/HF set has no use for
 */
export function emission(_designator: string): Emission {
	throw new Error("not built yet");
}

export interface ReceivingModes {
	/** Made for it. */
	readonly right: readonly Mode[];
	/** Can be copied, with a loss that a person should know of. */
	readonly poor: readonly Mode[];
}

/** Which of the five modes receive an emission. `sideband` matters for J3E and R3E alone (default upper). */
export function modesThatReceive(_emissionClass: EmissionClass, _sideband: "upper" | "lower" = "upper"): ReceivingModes {
	throw new Error("not built yet");
}
