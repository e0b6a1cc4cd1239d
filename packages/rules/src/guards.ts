import type { Hz } from "@skipwright/units";
import type { Guard, Spectrum } from "./types.ts";

/** The one list of distress, safety and calling carriers and DSC watch frequencies. */
export function guards(): readonly Guard[] {
	throw new Error("not built yet");
}

/** Guards published at exactly this figure (carrier for voice, centre for DSC and NBDP). */
export function guardsAt(_hz: Hz): readonly Guard[] {
	throw new Error("not built yet");
}

/** Guards whose own spectrum shares at least a point with `spectrum`, lowest first. */
export function guardOverlapping(_spectrum: Spectrum): readonly Guard[] {
	throw new Error("not built yet");
}
