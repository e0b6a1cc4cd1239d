import type { HeardBase } from "../receiver.ts";
import type { Sense } from "./makeTeletype.ts";
import type { TeletypeBaud } from "./teletypeBaud.ts";

/** Start-stop teletype in the five-unit alphabet. A long transmission comes in parts, each an item. */
export interface HeardTeletype extends HeardBase {
	readonly kind: "teletype";
	/** Lines parted by "\n"; `LOST_MARK` for each character whose start or stop was broken. */
	readonly text: string;
	/** 1 for the first part of a transmission. */
	readonly part: number;
	/** The transmission went on when this part was full. */
	readonly continues: boolean;
	readonly baud: TeletypeBaud;
	/** Hz, as measured. */
	readonly shiftHz: number;
	/** Which tone rests. */
	readonly sense: Sense;
	/** All characters, shifts and line ends included. */
	readonly characters: number;
	readonly lostCharacters: number;
	/** `lostCharacters / characters`: broken framing. */
	readonly errorRatio: number;
	/** The same in a sentence. */
	readonly summary: string;
}
