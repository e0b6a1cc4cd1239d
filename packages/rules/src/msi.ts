import type { Hz } from "@skipwright/units";
import type { ServiceId } from "./types.ts";

/** A frequency reserved for maritime safety information; centre. */
export interface MsiFrequency {
	readonly hz: Hz;
	readonly service: Extract<ServiceId, "navtex" | "nbdp-msi">;
	readonly label: string;
	readonly confidence: "verified" | "memory";
	readonly source: string;
	readonly note: string;
}

export function msiFrequencies(): readonly MsiFrequency[] {
	throw new Error("not built yet");
}
