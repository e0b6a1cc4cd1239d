import type { Mode } from "@skipwright/rules";
import { BadInputError, type CsvFault, type CsvRow, formatKhz, type Hz, parseKhz, readCsv, writeCsv } from "@skipwright/units";
import { modeOf, modesExpected } from "./modeOf.ts";
import type { Profile } from "./profile.ts";
import type { Row } from "./types.ts";

/** Columns of a list of places, as found, planned or as left. */
export const LIST_COLUMNS = ["bank", "place", "tag", "receive_khz", "transmit_khz", "mode"] as const;

const KILOHERTZ = "kilohertz as digits with at most three decimals after a point (like 2187.5)";

/**
 * Reads a list of places: header required, columns in any order, an empty transmit is receive only. Places out of range, used
 * twice or with a long tag are read like any other: they are findings of a check.
 * @param source name of the file, for messages
 * @param profile gives the maker's words for the modes; null: the five words alone
 * @throws BadInputError with every bad cell: line, column, value and what was expected. Nothing is half-imported.
 */
export function readList(source: string, text: string, profile: Profile | null): readonly Row[] {
	const { rows } = readCsv(source, text, { required: LIST_COLUMNS });
	const faults: CsvFault[] = [];
	const read = rows.map((row) => readRow(row, profile, faults));
	if (faults.length > 0) throw new BadInputError(source, faults);
	return read.filter((row) => row !== null);
}

/** @returns null where a cell was bad, with the faults added */
function readRow({ line, cells }: CsvRow, profile: Profile | null, faults: CsvFault[]): Row | null {
	const cell = (column: (typeof LIST_COLUMNS)[number]) => cells[column] ?? "";
	const before = faults.length;
	const fault = (column: string, value: string, expected: string) => {
		faults.push({ line, column, value, expected });
		return null;
	};
	const bank = cell("bank").trim();
	if (bank === "" || /\p{Cc}/u.test(bank)) fault("bank", cell("bank"), "the name of a bank");
	const place = wholeNumber(cell("place")) ?? fault("place", cell("place"), "the number of a place, a whole number");
	const receive =
		kilohertz(cell("receive_khz")) ??
		fault("receive_khz", cell("receive_khz"), `${KILOHERTZ}; leave the line out where the place is empty`);
	const transmitText = cell("transmit_khz").trim();
	const transmit =
		transmitText === ""
			? null
			: (kilohertz(transmitText) ?? fault("transmit_khz", cell("transmit_khz"), `${KILOHERTZ}, or nothing for receive only`));
	const mode = modeWord(profile, cell("mode")) ?? fault("mode", cell("mode"), modesExpected(profile));
	if (faults.length > before || place === null || receive === null || mode === null) return null;
	return { bank, place, tag: cell("tag"), receive, transmit, mode, line };
}

function wholeNumber(text: string): number | null {
	const digits = /^-?\d{1,9}$/.exec(text.trim());
	return digits === null ? null : Number(digits[0]);
}

function kilohertz(text: string): Hz | null {
	try {
		return parseKhz(text);
	} catch (error) {
		if (error instanceof SyntaxError) return null;
		throw error;
	}
}

function modeWord(profile: Profile | null, word: string): Mode | null {
	try {
		return modeOf(profile, word);
	} catch (error) {
		if (error instanceof SyntaxError) return null;
		throw error;
	}
}

/** Rows as a list of places, in the order given; `readList` reads the same back. */
export function writeList(rows: readonly Row[]): string {
	return writeCsv(
		LIST_COLUMNS,
		rows.map(({ bank, place, tag, receive, transmit, mode }) => [
			bank,
			String(place),
			tag,
			formatKhz(receive),
			transmit === null ? "" : formatKhz(transmit),
			mode,
		]),
	);
}
