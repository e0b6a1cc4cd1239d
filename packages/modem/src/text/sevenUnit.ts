/** One signal of the seven-unit code: four B and three Y, as sent, with what it prints in letters and in figures. */
export interface SevenUnit {
	/** Seven of B (the higher tone) and Y (the lower), in the order of sending. */
	readonly sent: string;
	readonly name: string;
	/** What it prints after LTRS and after FIGS: nothing for shifts, idle signals, carriage return, bell and answer-back. */
	readonly letter: string;
	readonly figure: string;
}

/**
 * Source: ITU-R M.476-5 and M.625-4, table 1; the figures of F, G and H are national, here as in most sets. B is the higher tone
 * (M.625-4 table 1 note 2, from memory). Standards differ on which of B and Y is called 1: only the letters B and Y are used here.
 */
const ROWS: readonly (readonly [sent: string, name: string, letter: string, figure: string])[] = [
	["BBBBYYY", "ALPHA", "", ""],
	["BBBYBYY", "J", "J", ""],
	["BBYBBYY", "F", "F", "!"],
	["BYBBBYY", "C", "C", ":"],
	["YBBBBYY", "K", "K", "("],
	["BBBYYBY", "W", "W", "2"],
	["BBYBYBY", "Y", "Y", "6"],
	["BYBBYBY", "P", "P", "0"],
	["YBBBYBY", "Q", "Q", "1"],
	["BBYYBBY", "BETA", "", ""],
	["BYBYBBY", "G", "G", "&"],
	["YBBYBBY", "FIGS", "", ""],
	["BYYBBBY", "M", "M", "."],
	["YBYBBBY", "X", "X", "/"],
	["YYBBBBY", "V", "V", "="],
	["BBBYYYB", "A", "A", "-"],
	["BBYBYYB", "S", "S", "'"],
	["BYBBYYB", "I", "I", "8"],
	["YBBBYYB", "U", "U", "7"],
	["BBYYBYB", "D", "D", ""],
	["BYBYBYB", "R", "R", "4"],
	["YBBYBYB", "E", "E", "3"],
	["BYYBBYB", "N", "N", ","],
	["YBYBBYB", "LTRS", "", ""],
	["YYBBBYB", "SP", " ", " "],
	["BBYYYBB", "Z", "Z", "+"],
	["BYBYYBB", "L", "L", ")"],
	["YBBYYBB", "RPT", "", ""],
	["BYYBYBB", "H", "H", "#"],
	["YBYBYBB", "BLANK", "", ""],
	["YYBBYBB", "LF", "\n", "\n"],
	["BYYYBBB", "O", "O", "9"],
	["YBYYBBB", "B", "B", "?"],
	["YYBYBBB", "T", "T", "5"],
	["YYYBBBB", "CR", "", ""],
];

export const SEVEN_UNIT: readonly SevenUnit[] = ROWS.map(([sent, name, letter, figure]) => ({ sent, name, letter, figure }));

/** Elements in a signal. */
export const SIGNAL_BITS = 7;

/** The place of a signal in `SEVEN_UNIT`, by its name: "A", "SP", "LTRS", "ALPHA", "RPT". */
export function codeOf(name: string): number {
	const code = SEVEN_UNIT.findIndex((signal) => signal.name === name);
	if (code < 0) throw new RangeError(`Cannot find "${name}" among the signals of the seven-unit code`);
	return code;
}

export const ALPHA = codeOf("ALPHA");
/** The signal for repetition; in phasing it fills the places of first copies. */
export const RPT = codeOf("RPT");
export const LTRS = codeOf("LTRS");
export const FIGS = codeOf("FIGS");
