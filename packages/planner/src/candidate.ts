import type { Listing } from "@skipwright/directory";
import type { NeverTradedId, WantId } from "@skipwright/rules";
import type { Content } from "./contentKey.ts";

export type Want = WantId | NeverTradedId;

/** The order in which wants are laid out, and in which ties between them fall. */
export const WANT_ORDER: readonly Want[] = [
	"guard",
	"coast-calling",
	"ship-calling",
	"nets",
	"weather-voice",
	"aviation-weather",
	"time",
	"news",
	"safety-text",
	"weather-charts",
	"weather-text",
];

/** What may be scanned together: speech that may come at any time; speech and time at set times; charts and text. */
export type ScanKind = "speech" | "timed" | "data";

/** A name for a person, and texts for the place's tag, best first. `chooseTag` cuts them to what the set can show. */
export interface Naming {
	readonly what: string;
	readonly tags: readonly string[];
}

/** A listing with the name that it gives to a place. */
export interface Source extends Naming {
	readonly listing: Listing;
}

/** Something that a place could hold. */
export interface Candidate {
	/** Id of the first of its listings, `guard/2182`, `ap17/401` or `ap17/4146`. */
	readonly id: string;
	/** Ids of channels and guards that need the very same place. */
	readonly aliases: readonly string[];
	readonly want: Want;
	readonly scan: ScanKind;
	readonly bandMhz: number;
	readonly content: Content;
	/** Other dials and modes that receive it as well, where nothing is sent. */
	readonly alternatives: readonly Content[];
	/** What is heard there; empty where only ships or any coast station may answer. */
	readonly sources: readonly Source[];
	/** Place in the order of its kind and band, from 1, where no listing tells what it is worth. */
	readonly rank: number;
	/** Name where it has no sources, or is more than they are (a guard carrier). */
	readonly naming: Naming | null;
	/** Remarks for the owner: receive only because ..., the dial is 50 Hz off ... */
	readonly notes: readonly string[];
}

/** Something wanted that no place holds, with the reason. */
export interface LeftOut {
	readonly listing: string;
	readonly why: string;
}

/** The name of a place: its own, else that of the first source. */
export function namingOf({ naming, sources, id }: Candidate): Naming {
	return naming ?? sources[0] ?? { what: id, tags: [id] };
}
