import { keyedBits, type MadeOptions } from "../signal/keyed.ts";
import { ita2Codes } from "./ita2.ts";
import { exactBaud, type TeletypeBaud } from "./teletypeBaud.ts";

/** Which tone is the mark, the one that rests: the lower or the higher. */
export type Sense = "mark low" | "mark high";

export interface TeletypeOptions extends MadeOptions {
	readonly baud: TeletypeBaud;
	/** Hz. Middle between the tones. */
	readonly centreHz: number;
	readonly shiftHz: number;
	/** Default "mark high". */
	readonly sense?: Sense;
	/** Length of the stop in elements. Default 1.5. */
	readonly stopElements?: 1 | 1.5 | 2;
	/** Seconds of mark before the first and after the last character. Default 0.5 each. */
	readonly leadS?: number;
	readonly tailS?: number;
}

/** Start-stop teletype of a text, or of codes 0 to 31: start, five elements, stop; continuous in phase. */
export function makeTeletype(text: string | readonly number[], options: TeletypeOptions): Float64Array {
	const { baud, centreHz, shiftHz, sense = "mark high", stopElements = 1.5, leadS = 0.5, tailS = 0.5, ...made } = options;
	const codes = typeof text === "string" ? ita2Codes(text) : text;
	const halves: number[] = halvesOfMark(leadS * 2 * baud);
	for (const code of codes) {
		halves.push(0, 0);
		for (let i = 0; i < 5; i++) halves.push((code >> i) & 1, (code >> i) & 1);
		halves.push(...halvesOfMark(2 * stopElements));
	}
	halves.push(...halvesOfMark(tailS * 2 * baud));
	const tones = sense === "mark high" ? halves : halves.map((half) => 1 - half);
	return keyedBits(tones, { ...made, baud: 2 * exactBaud(baud), lowHz: centreHz - shiftHz / 2, highHz: centreHz + shiftHz / 2 });
}

function halvesOfMark(count: number): number[] {
	return Array.from({ length: Math.round(count) }, () => 1);
}
