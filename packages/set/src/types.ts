import type { Mode } from "@skipwright/rules";
import type { Hz } from "@skipwright/units";

/** What one place of the set holds. */
export interface PlaceContent {
	/** What the dial reads on receive, in the set's own convention. */
	readonly receive: Hz;
	/** What the dial reads on transmit; null = receive only. */
	readonly transmit: Hz | null;
	readonly mode: Mode;
	readonly tag: string;
}

/** A row of an as-found, planned or as-left list. */
export interface Row extends PlaceContent {
	readonly bank: string;
	readonly place: number;
	/** Line of the CSV it was read from; for a planned list the line it will have. */
	readonly line: number;
}

export type Severity = "stop" | "fix" | "mind";

export type FindingCode =
	| "assigned-as-carrier"
	| "pair-swapped"
	| "pair-broken"
	| "offset-missing"
	| "offset-twice"
	| "near-miss"
	| "off-raster"
	| "no-listing"
	| "wrong-mode"
	| "wrong-sideband"
	| "distress-used-as-working"
	| "amateur-without-licence"
	| "amateur-other-region"
	| "transmit-on-broadcast"
	| "transmit-outside-service"
	| "listing-closed"
	| "listing-stale"
	| "cannot-tune"
	| "tag-too-long"
	| "tag-duplicate"
	| "duplicate-entry"
	| "place-duplicate"
	| "place-out-of-range"
	| "block-mixed"
	| "guard-missing";

/** One result of a check. */
export interface Finding {
	readonly code: FindingCode;
	readonly severity: Severity;
	readonly bank: string | null;
	readonly place: number | null;
	readonly line: number | null;
	readonly message: string;
	/** Clause or practice the finding rests on. */
	readonly source: string;
	/** What to do, with exact values. */
	readonly remedy: string;
}
