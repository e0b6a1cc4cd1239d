import { FIGS, LTRS, SEVEN_UNIT } from "./sevenUnit.ts";

/** The code of a signal of which neither copy could be read. */
export const LOST = -1;

/** What is printed for it: no signal of the alphabet prints this, so that it is never taken for something sent. */
export const LOST_MARK = "*";

export interface Printer {
	/** What the next signal prints. */
	print(code: number): string;
	/** Back to letters, where what was read shows that a shift was lost. */
	letters(): void;
}

/** Turns signals into print one by one, keeping the shift. Starts in letters. */
export function createPrinter(): Printer {
	let isFigures = false;
	return {
		print(code) {
			if (code === LOST) return LOST_MARK;
			if (code === LTRS || code === FIGS) isFigures = code === FIGS;
			const { letter, figure } = SEVEN_UNIT[code]!;
			return isFigures ? figure : letter;
		},
		letters() {
			isFigures = false;
		},
	};
}
