import { codeOf, FIGS, LTRS, SEVEN_UNIT } from "./sevenUnit.ts";

/**
 * The signals that print `text`, as places in `SEVEN_UNIT`: LTRS first, then a shift only where the next character needs it. A line
 * ends with carriage return and line feed, however it is written here.
 * @throws RangeError where the alphabet has no such character: it has capitals, digits and `-?:$!&#()'.,/=+` less the dollar sign
 */
export function codesOfText(text: string): readonly number[] {
	const codes = [LTRS];
	let shift = LTRS;
	for (const character of text.replaceAll(/\r\n?|\n/g, "\n")) {
		const code = CODES.get(character);
		if (code === undefined) {
			throw new RangeError(`Cannot send ${JSON.stringify(character)}: the alphabet has capitals, digits, space and ${FIGURE_SIGNS}`);
		}
		if (code.shift !== null && code.shift !== shift) {
			shift = code.shift;
			codes.push(shift);
		}
		codes.push(...code.codes);
	}
	return codes;
}

interface Sending {
	readonly codes: readonly number[];
	/** null: the same in letters and in figures. */
	readonly shift: number | null;
}

const CODES: ReadonlyMap<string, Sending> = new Map<string, Sending>([
	...SEVEN_UNIT.flatMap(({ letter, figure }, code): [string, Sending][] => {
		if (letter === figure) return letter === "" ? [] : [[letter, { codes: [code], shift: null }]];
		const asLetter: [string, Sending] = [letter, { codes: [code], shift: LTRS }];
		return figure === "" ? [asLetter] : [asLetter, [figure, { codes: [code], shift: FIGS }]];
	}),
	["\n", { codes: [codeOf("CR"), codeOf("LF")], shift: null }],
]);

const FIGURE_SIGNS = [...CODES.keys()].filter((sign) => !/[A-Z0-9\s]/.test(sign)).join(" ");
