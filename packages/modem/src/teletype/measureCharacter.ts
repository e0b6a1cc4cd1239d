import { atan2 } from "@skipwright/units";
import type { Reading } from "./pairListener.ts";
import type { PathCharacter } from "./startStopPath.ts";
import { exactBaud } from "./teletypeBaud.ts";
import { CELL_MASK, CELLS_PER_SECOND, type ToneCells } from "./toneCells.ts";

/** Hz as the phase turns within a character's elements, and how much that counts beside others. */
export interface ToneReading {
	readonly hz: number;
	readonly weight: number;
}

/** A character with what its elements tell of the tones. */
export interface MeasuredCharacter extends PathCharacter {
	readonly low: ToneReading;
	readonly high: ToneReading;
	/** Mean power of the two tones over the noise in an element (Es/N0, a plain ratio). */
	readonly ratio: number;
}

/** Looks back at the cells of a character that was just settled: they are still kept then. */
export function measureCharacter(
	character: PathCharacter,
	{ baud, sense, levels, path }: Reading,
	low: ToneCells,
	high: ToneCells,
): MeasuredCharacter {
	const { code, startCell } = character;
	const lowIs = sense === "mark low" ? 1 : 0;
	const starts: [number[], number[]] = [[], []];
	for (let element = 0; element < 7; element++) {
		const isMark = element === 0 ? 0 : element === 6 ? 1 : (code >> (element - 1)) & 1;
		starts[isMark === lowIs ? 0 : 1].push(startCell + Math.round((element * CELLS_PER_SECOND) / exactBaud(baud)));
	}
	return {
		...character,
		low: toneReading(low, starts[0], path.elementCells),
		high: toneReading(high, starts[1], path.elementCells),
		ratio: (levels.low.ratio + levels.high.ratio) / 2,
	};
}

/** Turn of a tone between the halves of its elements, which begin at the cells given. */
function toneReading({ re, im, toneHz }: ToneCells, starts: readonly number[], elementCells: number): ToneReading {
	const half = elementCells >> 1;
	let [turnRe, turnIm] = [0, 0];
	for (const start of starts) {
		let [re1, im1, re2, im2] = [0, 0, 0, 0];
		for (let cell = start; cell < start + half; cell++) {
			re1 += re[cell & CELL_MASK]!;
			im1 += im[cell & CELL_MASK]!;
			re2 += re[(cell + half) & CELL_MASK]!;
			im2 += im[(cell + half) & CELL_MASK]!;
		}
		turnRe += re2 * re1 + im2 * im1;
		turnIm += im2 * re1 - re2 * im1;
	}
	const hzPerRadian = CELLS_PER_SECOND / (2 * Math.PI * half);
	return { hz: toneHz() + atan2(turnIm, turnRe) * hzPerRadian, weight: Math.sqrt(turnRe * turnRe + turnIm * turnIm) };
}
