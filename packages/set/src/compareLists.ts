import { formatKhz, type Hz } from "@skipwright/units";
import { placeKey } from "./placeKey.ts";
import type { PlaceContent, Row } from "./types.ts";

/** One thing in which a place differs from what was wanted. */
export interface PlaceFault {
	readonly kind: "missing" | "extra" | "receive" | "transmit" | "mode" | "tag";
	/** As left less wanted, hertz, where both are frequencies; else null. */
	readonly offByHz: number | null;
	readonly sentence: string;
}

export interface PlaceDifference {
	readonly bank: string;
	readonly place: number;
	/** null: the place is not in the plan. */
	readonly wanted: Row | null;
	/** null: the place was not read back. */
	readonly asLeft: Row | null;
	readonly faults: readonly PlaceFault[];
}

/** A place written down more than once; the last line counts. */
export interface RepeatedPlace {
	readonly bank: string;
	readonly place: number;
	readonly list: "wanted" | "as left";
	/** Lines of the list, in order. */
	readonly lines: readonly number[];
	readonly sentence: string;
}

export interface Comparison {
	/** Places that hold what was wanted. */
	readonly equal: number;
	/** In the order of the plan; places that are not in it last, in the order of the read-back. */
	readonly differences: readonly PlaceDifference[];
	readonly repeated: readonly RepeatedPlace[];
}

/**
 * Reads a loaded set back against the plan, place by place. Spaces at the end of a tag do not count: a display does not show them.
 * Where a list names a place more than once its last line counts, and the place is reported.
 */
export function compareLists(wanted: readonly Row[], asLeft: readonly Row[]): Comparison {
	const plan = lastByPlace(wanted);
	const held = lastByPlace(asLeft);
	const keys = [...plan.keys(), ...[...held.keys()].filter((key) => !plan.has(key))];
	const differences = keys.flatMap((key) => {
		const difference = differenceOf(plan.get(key)?.at(-1) ?? null, held.get(key)?.at(-1) ?? null);
		return difference === null ? [] : [difference];
	});
	return {
		equal: keys.length - differences.length,
		differences,
		repeated: [...repeatedPlaces(plan, "wanted"), ...repeatedPlaces(held, "as left")],
	};
}

function lastByPlace(rows: readonly Row[]): ReadonlyMap<string, readonly Row[]> {
	return Map.groupBy(rows, placeKey);
}

function differenceOf(wanted: Row | null, asLeft: Row | null): PlaceDifference | null {
	const row = wanted ?? asLeft;
	if (row === null) return null;
	const where = `${row.bank} ${row.place}`;
	const fault = (kind: PlaceFault["kind"], sentence: string, offByHz: number | null = null): PlaceFault => ({
		kind,
		offByHz,
		sentence: `${where} ${sentence}.`,
	});
	const found = (faults: readonly PlaceFault[]) => ({ bank: row.bank, place: row.place, wanted, asLeft, faults });
	if (asLeft === null) return found([fault("missing", `is missing: wanted ${contentText(row)}`)]);
	if (wanted === null) return found([fault("extra", `is not in the plan: holds ${contentText(row)}`)]);
	const faults = [
		...frequencyFault("receive", wanted.receive, asLeft.receive, fault),
		...frequencyFault("transmit", wanted.transmit, asLeft.transmit, fault),
		...(wanted.mode === asLeft.mode ? [] : [fault("mode", `is on ${asLeft.mode}, wanted ${wanted.mode}`)]),
		...(wanted.tag.trimEnd() === asLeft.tag.trimEnd()
			? []
			: [fault("tag", `is tagged ${JSON.stringify(asLeft.tag)}, wanted ${JSON.stringify(wanted.tag)}`)]),
	];
	return faults.length === 0 ? null : found(faults);
}

function frequencyFault(
	kind: "receive" | "transmit",
	wanted: Hz | null,
	asLeft: Hz | null,
	fault: (kind: PlaceFault["kind"], sentence: string, offByHz: number | null) => PlaceFault,
): readonly PlaceFault[] {
	if (wanted === asLeft) return [];
	if (asLeft === null) return [fault(kind, `cannot transmit, wanted ${khzText(wanted)} on transmit`, null)];
	if (wanted === null) return [fault(kind, `transmits on ${khzText(asLeft)}, wanted receive only`, null)];
	const off = asLeft - wanted;
	return [
		fault(
			kind,
			`has ${khzText(asLeft)} on ${kind}, wanted ${khzText(wanted)}: ${offText(Math.abs(off))} too ${off > 0 ? "high" : "low"}`,
			off,
		),
	];
}

function offText(offHz: number): string {
	return offHz % 1_000 === 0 ? `${offHz / 1_000} kHz` : `${offHz} Hz`;
}

function khzText(value: Hz | null): string {
	return value === null ? "receive only" : `${formatKhz(value)} kHz`;
}

/** What a place holds, in words. @example `"4149 kHz both ways, USB, tag SHIP 4A"` */
export function contentText({ receive, transmit, mode, tag }: PlaceContent): string {
	const sides =
		transmit === null
			? `${formatKhz(receive)} kHz receive only`
			: transmit === receive
				? `${formatKhz(receive)} kHz both ways`
				: `receive ${formatKhz(receive)}, transmit ${formatKhz(transmit)} kHz`;
	return `${sides}, ${mode}${tag.trim() === "" ? "" : `, tag ${tag.trim()}`}`;
}

function repeatedPlaces(places: ReadonlyMap<string, readonly Row[]>, list: RepeatedPlace["list"]): readonly RepeatedPlace[] {
	return [...places.values()].flatMap((rows) => {
		const last = rows.at(-1);
		if (last === undefined || rows.length === 1) return [];
		const lines = rows.map(({ line }) => line);
		const sentence = `${last.bank} ${last.place} stands ${rows.length} times in the list ${list} (lines ${lines.join(", ")}); line ${last.line} counts.`;
		return [{ bank: last.bank, place: last.place, list, lines, sentence }];
	});
}
