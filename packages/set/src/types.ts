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

/** Turns of one tuning step; clockwise (up) is positive. */
export interface Turn {
	readonly stepHz: Hz;
	readonly clicks: number;
}

/** One step of the loading sheet: what the fitter keys into one place. */
export interface SheetStep {
	/** 1, 2, 3 ... in the order of keying. */
	readonly order: number;
	readonly action: "write" | "clear";
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly receive: Hz | null;
	/** null = receive only: the transmit side is locked or left empty. */
	readonly transmit: Hz | null;
	readonly mode: Mode | null;
	/**
	 * Fewest turns from where the dial stood after the step before; null when the set has no knob, when no turns lead there,
	 * or for a first step whose dial before is not known: then turn to the figure from wherever it stands.
	 */
	readonly receiveTurns: readonly Turn[] | null;
	/** From the receive dial to the transmit dial; null when there is no knob or nothing to turn. */
	readonly transmitTurns: readonly Turn[] | null;
	/** Keys in order, "8" "1" "1" "3" "." ...; null when the set has no keypad. */
	readonly receiveKeys: readonly string[] | null;
	readonly transmitKeys: readonly string[] | null;
	/** What stood there before, in words, or "empty". */
	readonly before: string;
	/** Listing the place is for, where it is planned for one. */
	readonly listing: string | null;
	/** Name for a person: station and service, or channel. */
	readonly what: string;
}

/** One setting beside the places: read back like a place (contracts section 2). */
export interface SettingLine {
	readonly name: string;
	readonly asFound: string;
	readonly wanted: string;
	/** Who has to read it back and how, or "". */
	readonly note: string;
}

/** Where a band may lawfully be tuned up: a simplex working carrier, listened to first, at low power, never a guard carrier. */
export interface TuneUpPlace {
	readonly bandMhz: number;
	readonly carrier: Hz;
	readonly note: string;
}

export interface LoadingSheet {
	readonly steps: readonly SheetStep[];
	/** Places that already hold what is wanted and are skipped. */
	readonly unchanged: number;
	/** True when every place is written from blank. */
	readonly fromBlank: boolean;
	readonly settings: readonly SettingLine[];
	readonly tuneUp: readonly TuneUpPlace[];
	/** Estimated minutes to key in and read back; `minutesRestOn` says from what. */
	readonly minutes: number;
	readonly minutesRestOn: string;
}
