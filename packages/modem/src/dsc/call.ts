import type { Position } from "@skipwright/units";
import type { DscCategory, DscEnd, DscFormat, DscNature, FirstTelecommand, SecondTelecommand } from "./codeWords.ts";

/** A digital selective call in plain data. What a format does not carry, or what could not be read, is null; `faults` of the reading tell which. */
export interface DscCall {
	readonly format: DscFormat;
	/** Nine digits of the station or group called. */
	readonly to: string | null;
	readonly area: DscArea | null;
	readonly category: DscCategory | null;
	/** Nine digits of the calling station. */
	readonly from: string | null;
	readonly telecommand1: FirstTelecommand | null;
	readonly telecommand2: SecondTelecommand | null;
	readonly distress: DscDistress | null;
	readonly message: DscMessage | null;
	readonly end: DscEnd | null;
	/** Symbols that this project does not read, as sent. */
	readonly undecoded: readonly (number | null)[];
}

/** Whole degrees; extends south and east from its north-west corner (the corner from memory of M.493). */
export interface DscArea {
	readonly northDeg: number;
	readonly westDeg: number;
	readonly heightDeg: number;
	readonly widthDeg: number;
}

/** Of an alert, or what an acknowledgement or a relay repeats of it. */
export interface DscDistress {
	/** Nine digits of the ship in distress; null also where a relay does not know it. */
	readonly ship: string | null;
	readonly nature: DscNature | null;
	/** To the minute; null also where the ship gives none. */
	readonly position: Position | null;
	/** UTC as hh:mm of the position; null also where the ship gives none. */
	readonly time: string | null;
	/** How to carry on. */
	readonly followOn: FirstTelecommand | null;
}

export type DscMessage =
	| {
			readonly kind: "frequencies";
			/** What the called station is asked to receive on, and to transmit on (this order from memory of M.493). */
			readonly receive: DscFrequency | null;
			readonly transmit: DscFrequency | null;
	  }
	| { readonly kind: "position"; readonly position: Position | null; readonly time: string | null };

/** A frequency in whole hertz, or a channel: HF by five digits, VHF by four. */
export type DscFrequency = { readonly hz: number } | { readonly hfChannel: number } | { readonly vhfChannel: number };

/** What is wrong with a call as read, or what this project does not read of it. */
export interface DscFault {
	readonly code:
		| "ecc-wrong"
		| "symbol-lost"
		| "field-impossible"
		| "unknown-code"
		| "newer-edition"
		| "not-decoded"
		| "cut-short"
		| "checksum-wrong";
	readonly message: string;
}
