import { readCsv } from "@skipwright/units";
import { SOLAR_CSV } from "./data.gen.ts";
import { MEMORY, type MemoryId } from "./fromMemory.ts";
import { yearMonth } from "./solarMonth.ts";

/** The sun's activity in one month, as the maps want it. */
export interface Sunspots {
	/** R12: 12-month running mean of the old scale, before 2015. */
	readonly r12Old: number;
	/** The same by a low and a high forecast: equal to it where it was observed or given. Not a bound: forecasts have missed by more. */
	readonly low: number;
	readonly high: number;
	/** `between`: across a gap of the table; `earlierCycle`: carried on past its end. Both are guesses, and to be shown as such. */
	readonly kind: "given" | "observed" | "forecast" | "between" | "earlierCycle";
	/** Where it comes from, in a sentence. */
	readonly source: string;
	/** Constants from memory that it rests on. */
	readonly basis: readonly MemoryId[];
}

interface Smoothed {
	/** Scale since 2015. */
	readonly ssn: number;
	readonly low: number;
	readonly high: number;
	readonly observed: boolean;
}

interface Table {
	/** By months since year 0. */
	readonly byMonth: ReadonlyMap<number, Smoothed>;
	readonly first: number;
	readonly last: number;
}

const FORECAST = "NOAA/SWPC forecast of the solar cycle, edition of May 2023, on the old scale";

/**
 * Smoothed sunspot number of a month: observed, by the government's forecast, or failing both by a guess that says so.
 * @param month `YYYY-MM`
 * @param given the user's own figure on the old scale, which then stands
 * @throws SyntaxError for text that is no month; RangeError for a month before the table, or a figure outside 0 to 400
 */
export function sunspots(month: string, given?: number): Sunspots {
	const { year, month: ofYear } = yearMonth(month);
	if (given !== undefined) return givenSunspots(given);
	const wanted = year * 12 + ofYear - 1;
	const { byMonth, first, last } = table();
	if (wanted < first) throw new RangeError(`Cannot tell the sunspots of ${month}: the table begins in ${nameOf(first)}; give a number`);
	const cycles = Math.max(0, Math.ceil((wanted - last) / MEMORY.solarCycle.value));
	const taken = wanted - cycles * MEMORY.solarCycle.value;
	const found = byMonth.get(taken);
	if (cycles > 0) {
		const { ssn } = found ?? between(byMonth, taken);
		const source = `no forecast: the figure of ${nameOf(taken)}, ${cycles === 1 ? "one cycle" : `${cycles} cycles`} earlier, on the old scale`;
		return answer("earlierCycle", spread(ssn, MEMORY.sunspotSpread.value.guessed), source, ["sunspotSpread", "solarCycle"]);
	}
	if (found === undefined) {
		const { ssn, from, to } = between(byMonth, taken);
		const source = `a straight line across a gap of the government's table, ${nameOf(from)} to ${nameOf(to)}, on the old scale`;
		return answer("between", spread(ssn, MEMORY.sunspotSpread.value.guessed), source, ["sunspotSpread"]);
	}
	if (found.observed) return answer("observed", found, "NOAA/SWPC observed solar cycle, on the old scale", []);
	const { low, high } = spread(found.ssn, MEMORY.sunspotSpread.value.forecast);
	const widened = { ssn: found.ssn, low: Math.min(low, found.low), high: Math.max(high, found.high) };
	return answer("forecast", widened, FORECAST, ["sunspotSpread"]);
}

function givenSunspots(r12: number): Sunspots {
	if (!(r12 >= 0 && r12 <= 400)) throw new RangeError(`Cannot take ${r12} as a smoothed sunspot number: expected 0 to 400`);
	return { r12Old: r12, low: r12, high: r12, kind: "given", source: "given by the user, on the old scale", basis: [] };
}

function answer(
	kind: Sunspots["kind"],
	{ ssn, low, high }: { readonly ssn: number; readonly low: number; readonly high: number },
	source: string,
	basis: readonly MemoryId[],
): Sunspots {
	return { r12Old: old(ssn), low: old(low), high: old(high), kind, source, basis: ["sunspotScale", ...basis] };
}

/** To the old scale, in hundredths. */
function old(ssn: number): number {
	return Math.round(ssn * MEMORY.sunspotScale.value * 100) / 100;
}

function spread(ssn: number, { share, least }: { readonly share: number; readonly least: number }) {
	const off = Math.max(share * ssn, least);
	return { ssn, low: Math.max(0, ssn - off), high: ssn + off };
}

/** A straight line between the months of the table on either side. */
function between(
	byMonth: ReadonlyMap<number, Smoothed>,
	month: number,
): { readonly ssn: number; readonly from: number; readonly to: number } {
	let from = month;
	let to = month;
	while (!byMonth.has(from)) from--;
	while (!byMonth.has(to)) to++;
	const [before, after] = [byMonth.get(from)!.ssn, byMonth.get(to)!.ssn]; // the loops ended on them
	return { ssn: before + ((after - before) * (month - from)) / (to - from), from, to };
}

function nameOf(month: number): string {
	return `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, "0")}`;
}

let parsed: Table | null = null;

function table(): Table {
	parsed ??= parse();
	return parsed;
}

function parse(): Table {
	const { rows } = readCsv("solar.csv", SOLAR_CSV, { required: ["year", "month", "kind", "ssn", "low", "high"] });
	const byMonth = new Map(
		rows.map(({ cells }) => {
			const ssn = Number(cells["ssn"]);
			const observed = cells["kind"] === "observed";
			const [low, high] = observed ? [ssn, ssn] : [Number(cells["low"]), Number(cells["high"])];
			return [Number(cells["year"]) * 12 + Number(cells["month"]) - 1, { ssn, low, high, observed }];
		}),
	);
	const months = [...byMonth.keys()];
	return { byMonth, first: Math.min(...months), last: Math.max(...months) };
}
