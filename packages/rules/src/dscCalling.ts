import type { Hz } from "@skipwright/units";

/** Frequencies for calls other than distress by DSC; centres. */
export interface DscCalling {
	readonly series: "international" | "intership" | "national-a" | "national-b";
	readonly ship: Hz;
	readonly coast: Hz;
	readonly confidence: "verified" | "memory";
	readonly source: string;
	readonly note: string;
}

export function dscCalling(): readonly DscCalling[] {
	throw new Error("not built yet");
}
