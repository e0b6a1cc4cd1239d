import { type MagneticModel, magneticField, magneticModel } from "@skipwright/sphere";
import { BadInputError, type CsvFault, type CsvRow, type Position, position, readCsv, writeCsv } from "@skipwright/units";
import { F2_FIELD_KM } from "./mapIonosphere.ts";
import { pointMap } from "./mapPoint.ts";

const REQUIRED = ["month", "utc_hour", "lat_deg", "lon_deg_east", "R12"] as const;
const OPTIONAL = "field_epoch";
const FOF2 = "foF2_MHz";
const M3000 = "M3000F2";
/** Digits after the point of the columns worked out. */
const DIGITS = 6;

/** Decimal year of the magnetic field of rows without `field_epoch`: a month alone tells no year. */
export const DEFAULT_FIELD_EPOCH = 2020;

/**
 * Rows of place and time with foF2 and M(3000)F2 worked out: same rows, same order, other columns kept, `#` lines left out. Columns
 * `month` (1 to 12), `utc_hour` (0 to 24, fractions too), `lat_deg`, `lon_deg_east`, `R12` (old scale), optional `field_epoch` (decimal
 * year, 1900 or later); `foF2_MHz` and `M3000F2` are replaced, or added at the end.
 * @param source name of the file, for messages
 * @throws BadInputError naming every bad line, column and value; nothing is worked out then
 */
export function skyRows(csvText: string, source = "rows", fieldEpoch: number = DEFAULT_FIELD_EPOCH): string {
	const others = headerOf(csvText).filter((name) => !REQUIRED.some((required) => required === name));
	const { rows, columns } = readCsv(source, csvText, { required: REQUIRED, optional: [...others, OPTIONAL] });
	const faults: CsvFault[] = [];
	const asked = rows.map((row) => askedIn(row, fieldEpoch, faults));
	if (faults.length > 0) throw new BadInputError(source, faults);
	const written = [...columns, ...[FOF2, M3000].filter((name) => !columns.includes(name))];
	let field: MagneticModel | null = null; // neighbouring rows mostly share their epoch
	const answers = asked.map((row) => {
		if (field?.year !== row.fieldEpoch) field = magneticModel(row.fieldEpoch);
		return answerOf(row, field);
	});
	return writeCsv(
		written,
		rows.map(({ cells }, i) => written.map((name) => answers[i]!.get(name) ?? cells[name]!)),
	);
}

interface Asked {
	readonly month: number;
	readonly utcHour: number;
	readonly where: Position;
	readonly r12: number;
	readonly fieldEpoch: number;
}

/** Cells by column. */
function answerOf({ month, utcHour, where, r12 }: Asked, field: MagneticModel): ReadonlyMap<string, string> {
	const { modifiedDipDeg } = magneticField(where, F2_FIELD_KM, field);
	const map = pointMap({ month, r12, position: where, modifiedDipDeg });
	return new Map([
		[FOF2, map.foF2MHz(utcHour).toFixed(DIGITS)],
		[M3000, map.m3000F2(utcHour).toFixed(DIGITS)],
	]);
}

function askedIn({ cells, line }: CsvRow, fieldEpoch: number, faults: CsvFault[]): Asked {
	const number = (column: string, expected: string, fits: (value: number) => boolean): number => {
		const text = cells[column]!;
		const value = /^\s*[+-]?(?:\d+\.?\d*|\.\d+)\s*$/.test(text) ? Number(text) : Number.NaN;
		if (fits(value)) return value;
		faults.push({ line, column, value: text, expected });
		return 0;
	};
	const from = (least: number, most: number) => (value: number) => value >= least && value <= most;
	const month = number("month", "a month from 1 to 12", (value) => Number.isInteger(value) && value >= 1 && value <= 12);
	const utcHour = number("utc_hour", "an hour of UTC from 0 to 24", from(0, 24));
	const latDeg = number("lat_deg", "degrees from -90 to 90", from(-90, 90));
	const lonDeg = number("lon_deg_east", "degrees from -360 to 360", from(-360, 360));
	const r12 = number("R12", "a smoothed sunspot number from 0 to 400", from(0, 400));
	const hasEpoch = cells[OPTIONAL]!.trim() !== "";
	const epoch = hasEpoch ? number(OPTIONAL, "a decimal year from 1900 to 2100", from(1900, 2100)) : fieldEpoch;
	return { month, utcHour, where: position(latDeg, lonDeg), r12, fieldEpoch: epoch };
}

/**
 * Names in the header line, so that columns of no concern pass. A quoted name with a comma in it is left to `readCsv` to refuse, and so
 * is the one name that no record can hold.
 */
function headerOf(text: string): readonly string[] {
	const line = text.split(/\r\n|\r|\n/).find((one) => one.replace(/^\uFEFF/, "") !== "" && !/^\uFEFF?#/.test(one)) ?? "";
	const names = line.replace(/^\uFEFF/, "").split(",");
	return names
		.map((name) =>
			name
				.trim()
				.replace(/^"(.*)"$/, "$1")
				.trim(),
		)
		.filter((name) => name !== "" && name !== "__proto__");
}
