import type { BitMark } from "../src/text/collectiveReader.ts";
import { createCollectiveReader } from "../src/text/collectiveReader.ts";
import { LOST } from "../src/text/printer.ts";
import { SEVEN_UNIT } from "../src/text/sevenUnit.ts";

/** Shares of the characters, 0 to 1. */
export interface CharacterErrors {
	readonly lost: number;
	readonly wrong: number;
}

/** Three receivers on the same bits. */
export interface CharacterReceivers {
	/** The first copy alone, each bit decided by itself: lost unless four of seven are B. */
	readonly firstCopy: CharacterErrors;
	/** Either copy so decided, lost where they contradict each other. */
	readonly eitherCopy: CharacterErrors;
	/** The program's: both copies' evidence together. */
	readonly together: CharacterErrors;
}

/** What each receiver makes of the log-likelihood ratios of an emission by `collectiveBits`; 0 for a bit that was not heard. */
export function characterErrors(softs: Float64Array, codes: readonly number[], phasingPairs: number): CharacterReceivers {
	const hard = (place: number) => {
		const sent = Array.from(softs.subarray(7 * place, 7 * place + 7), (soft) => (soft > 0 ? "B" : "Y")).join("");
		return SEVEN_UNIT.findIndex((signal) => signal.sent === sent); // -1 is LOST
	};
	const together = new Array<number>(codes.length).fill(LOST);
	const reader = createCollectiveReader();
	const read = [...softs].flatMap((soft, bit) => reader.bit(soft, { atS: bit } as BitMark)); // bits for seconds
	for (const { code, mark, isInverted } of [...read, ...reader.end()]) {
		const i = (Math.round((mark.atS + 1) / 7) - 6) / 2 - phasingPairs; // the second copy is five places after the first
		if (i in together && !isInverted) together[i] = code;
	}
	const firstCopy = codes.map((_, i) => hard(2 * (phasingPairs + i)));
	const eitherCopy = codes.map((_, i) => {
		const [first, second] = [firstCopy[i]!, hard(2 * (phasingPairs + i) + 5)];
		return first === LOST || first === second ? second : second === LOST ? first : LOST;
	});
	const compared = (heard: readonly number[]): CharacterErrors => ({
		lost: heard.filter((code) => code === LOST).length / codes.length,
		wrong: heard.filter((code, i) => code !== LOST && code !== codes[i]).length / codes.length,
	});
	return { firstCopy: compared(firstCopy), eitherCopy: compared(eitherCopy), together: compared(together) };
}
