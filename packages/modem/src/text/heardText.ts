import type { HeardBase } from "../receiver.ts";
import type { TextIdentity } from "./navtex.ts";

/** Why a text is not whole. */
export type TextGap = "joined late" | "faded out" | "recording stopped" | "next message began" | "ended without NNNN";

/** A text sent by collective FEC (mode B): a NAVTEX message or other safety text with its frame, or plain text. */
export interface HeardText extends HeardBase {
	readonly kind: "text";
	/** As printed, its frame included, lines parted by "\n"; `LOST_MARK` for each character of which neither copy could be read. */
	readonly text: string;
	/** From the preamble; null where none was heard. */
	readonly identity: TextIdentity | null;
	/** Empty for a whole text. */
	readonly gaps: readonly TextGap[];
	/** All signals from the first printed to the last, shifts and line ends included, idle ones not. */
	readonly characters: number;
	readonly lostCharacters: number;
	/** `lostCharacters / characters`. */
	readonly errorRatio: number;
	/** The tones came exchanged: wrong sideband or sense. */
	readonly isInverted: boolean;
	/** The same in a sentence or two. */
	readonly summary: string;
}
