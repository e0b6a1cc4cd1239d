export type MmsiFormId =
	| "ship"
	| "group"
	| "coast"
	| "all-coast"
	| "sar-aircraft"
	| "aid-to-navigation"
	| "craft-of-ship"
	| "handheld"
	| "ais-sart"
	| "man-overboard"
	| "epirb-ais"
	| "autonomous-device";

export type MmsiProblem = "not-digits" | "wrong-length" | "unknown-form" | "mid-not-allocated" | "not-a-ship" | "placeholder";

export interface MmsiReading {
	/** Digits alone, as read. */
	readonly digits: string;
	readonly form: MmsiFormId | null;
	/** What the form is for, in words; "" when unknown. */
	readonly use: string;
	readonly mid: string | null;
	readonly administration: string | null;
	readonly problems: readonly { readonly code: MmsiProblem; readonly message: string }[];
	/** Remarks that are no fault. */
	readonly notes: readonly string[];
}

/** Reads a maritime identity. With `use` "own" (a ship's own identity) any form but a ship's is a problem. */
export function mmsi(_text: string, _use: "any" | "own" = "any"): MmsiReading {
	throw new Error("not built yet");
}

/** Group identity made from an own MMSI that ends in 0 (47 CFR 80.103(d)); null when it does not. @example `groupIdentityFrom("299123450")` is `"029912345"` */
export function groupIdentityFrom(_mmsi: string): string | null {
	throw new Error("not built yet");
}
