import { BadInputError, type CsvFault, type CsvRow } from "@skipwright/units";

/** Reads the cells of one file and gathers every fault, so that nothing is half-imported and all of it is told at once. */
export class CellReader {
	readonly #source: string;
	readonly #faults: CsvFault[] = [];

	/** @param source name of the file, for messages */
	constructor(source: string) {
		this.#source = source;
	}

	/** The cell as it stands. */
	text(row: CsvRow, column: string): string {
		return row.cells[column] ?? "";
	}

	/**
	 * A cell read by `parse`, blanks round it aside. When `parse` throws a SyntaxError or RangeError that is a fault and `fallback` stands in until `finish`.
	 * @param expected what to tell; the message of the error when left out
	 */
	read<T>(row: CsvRow, column: string, parse: (text: string) => T, fallback: T, expected?: string): T {
		const value = this.text(row, column);
		try {
			return parse(value.trim());
		} catch (error) {
			if (!(error instanceof SyntaxError || error instanceof RangeError)) throw error;
			this.fault(row, column, expected ?? error.message.replace(/^expected /, "").replace(/, got "[^"]*"$/, ""));
			return fallback;
		}
	}

	/** Like `read`, but an empty cell gives `empty`. */
	optional<T>(row: CsvRow, column: string, parse: (text: string) => T, empty: T, expected?: string): T {
		return this.text(row, column).trim() === "" ? empty : this.read(row, column, parse, empty, expected);
	}

	/** One of a list of words; an empty cell gives `empty` where that is given. */
	choice<T extends string>(row: CsvRow, column: string, words: readonly T[], empty: T | null = null): T {
		const value = this.text(row, column).trim();
		const found = value === "" ? empty : words.find((word) => word === value);
		if (found !== undefined && found !== null) return found;
		this.fault(row, column, `one of ${words.join(", ")}`);
		return words[0] as T;
	}

	fault(row: CsvRow, column: string | null, expected: string): void {
		this.#faults.push({ line: row.line, column, value: column === null ? "" : this.text(row, column), expected });
	}

	/** @throws BadInputError when there was any fault */
	finish(): void {
		if (this.#faults.length > 0) throw new BadInputError(this.#source, this.#faults);
	}
}
