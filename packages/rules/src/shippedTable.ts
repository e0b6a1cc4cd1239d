import { type CsvRow, type Hz, parseKhz, readCsv } from "@skipwright/units";

/** A cell of the package's own data; a bad one is a fault of the package, found by its tests, not bad input. */
export class ShippedRow {
	readonly #file: string;
	readonly #row: CsvRow;
	constructor(file: string, row: CsvRow) {
		this.#file = file;
		this.#row = row;
	}

	text(column: string): string {
		const cell = this.#row.cells[column];
		if (cell === undefined) throw new RangeError(`${this.#file} has no column ${column}`);
		return cell;
	}

	khz(column: string): Hz {
		return parseKhz(this.text(column));
	}

	/** null for an empty cell. */
	khzOrNull(column: string): Hz | null {
		return this.text(column) === "" ? null : this.khz(column);
	}

	whole(column: string): number {
		const cell = this.text(column);
		if (!/^\d+$/.test(cell)) throw this.#fault(column, "a whole number");
		return Number(cell);
	}

	wholeOrNull(column: string): number | null {
		return this.text(column) === "" ? null : this.whole(column);
	}

	oneOf<T extends string>(column: string, allowed: readonly T[]): T {
		const found = allowed.find((word) => word === this.text(column));
		if (found === undefined) throw this.#fault(column, `one of ${allowed.join(", ")}`);
		return found;
	}

	/** Words separated by spaces, each one of `allowed`. */
	someOf<T extends string>(column: string, allowed: readonly T[]): readonly T[] {
		return this.text(column)
			.split(" ")
			.filter((word) => word !== "")
			.map((word) => {
				const found = allowed.find((known) => known === word);
				if (found === undefined) throw this.#fault(column, `words of ${allowed.join(", ")}`);
				return found;
			});
	}

	confidence(): "verified" | "memory" {
		return this.oneOf("confidence", ["verified", "memory"]);
	}

	#fault(column: string, expected: string): RangeError {
		return new RangeError(`${this.#file} line ${this.#row.line}, ${column}: expected ${expected}, got "${this.text(column)}"`);
	}
}

/** A function that makes its value on the first call and keeps it: the tables are parsed when first asked for. */
export function once<T>(make: () => T): () => T {
	let made: { readonly value: T } | null = null;
	return () => {
		made ??= { value: make() };
		return made.value;
	};
}

export function shippedRows(file: string, text: string, columns: readonly string[]): readonly ShippedRow[] {
	return readCsv(file, text, { required: columns }).rows.map((row) => new ShippedRow(file, row));
}
