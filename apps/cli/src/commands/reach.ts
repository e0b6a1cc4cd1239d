import { MEMORY, type ReachRow, reach, type Sunspots, sunspots, type Terminal, yearMonth } from "@skipwright/sky";
import { distanceKm } from "@skipwright/sphere";
import { formatPosition, type Position, parsePosition } from "@skipwright/units";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { given } from "../given.ts";
import { monthSky } from "../monthSky.ts";
import { reachJson, withAlso } from "../reachJson.ts";
import { reachLine, sunspotsText } from "../reachText.ts";
import { reachWanted, type Wanted, type WantedFlags } from "../reachWanted.ts";
import { reachWhyText } from "../reachWhyText.ts";
import { directoryGiven } from "../sources.ts";
import { ASSUMED_BACKSTAY_M, ASSUMED_SHIP_W, coastTerminal, vesselTerminal } from "../terminals.ts";

export interface ReachFlags extends WantedFlags {
	readonly to: string;
	readonly month: string;
	readonly sunspots?: string;
	readonly why?: string | boolean;
	readonly shop?: string;
	readonly json?: boolean;
}

const NOON = 12;
const KM_PER_NM = 1.852;
/** Aboard, where nothing is said. */
const NOISE = "residential";

/** `reach`: hours and chances from a station or a place to the vessel, in words; `--why HOUR` tells one hour step by step. */
export function reachCommand(context: Context, flags: ReachFlags): Exit {
	const directory = directoryGiven(context, flags);
	const to = given("--to", flags.to, parsePosition);
	const month = given("--month", flags.month, yearMonth);
	const spots = sunspotsGiven(flags.month, flags.sunspots);
	const whyHour = flags.why === undefined ? null : hourGiven(flags.why);
	const wanted = reachWanted(context, directory, flags);
	const rows = rowsOf(wanted, { ...vesselTerminal({ noise: NOISE }), position: to }, month, spots);
	const basis = [...spots.basis.filter((id) => id !== MEMORY.sunspotSpread.id), MEMORY.manMadeClassOf.id]; // the spread moves no row
	if (flags.json === true) {
		const answer = { month: flags.month, spots, from: wanted.position, to, rows, basis, whyHour };
		context.out(`${JSON.stringify(reachJson(answer), null, "\t")}\n`);
		return EXIT.ok;
	}
	const whys = rows.flatMap(({ signal, hours, basis: own }) =>
		whyHour === null || hours === null ? [] : [reachWhyText(signal, hours[whyHour]!, withAlso(own, basis))],
	);
	const lines = rows.map((row, i) => reachLine(row, wanted.signals[i]!.what));
	context.out(`${[...headOf(wanted, to, flags.month, spots), ...lines, ...whys].join("\n")}\n`);
	return EXIT.ok;
}

/** One row a signal, in their order; signals of one power share a circuit. */
function rowsOf(
	{ position, signals }: Wanted,
	to: Terminal,
	month: ReturnType<typeof yearMonth>,
	{ r12Old }: Sunspots,
): readonly ReachRow[] {
	const sky = monthSky(month, r12Old);
	const rows = new Array<ReachRow>(signals.length);
	for (const [powerW, ofPower] of Map.groupBy(signals.keys(), (index) => signals[index]!.powerW)) {
		const circuit = { from: coastTerminal(position, powerW), to, ...sky };
		const own = reach(
			circuit,
			ofPower.map((index) => signals[index]!.signal),
		);
		for (const [i, index] of ofPower.entries()) rows[index] = own[i]!;
	}
	return rows;
}

function headOf({ name, position, assumed }: Wanted, to: Position, month: string, spots: Sunspots): readonly string[] {
	const miles = Math.round(distanceKm(position, to) / KM_PER_NM);
	const taken = [
		...assumed,
		"a coast station's vertical aerial",
		"sea all the way for ground waves",
		`aboard a ${ASSUMED_SHIP_W} W set, ${ASSUMED_BACKSTAY_M} m backstay, ${NOISE} noise`,
	];
	return [
		`${name} to ${formatPosition(to)}, ${miles} nm, ${month}`,
		sunspotsText(spots),
		`assumed: ${taken.join("; ")}`,
		"times in UTC; monthly medians, not promises; good is 75 % of days or more, fair 45 %, poor 15 %",
	];
}

function hourGiven(text: string | boolean): number {
	const hour = text === true ? NOON : /^\d{1,2}$/.test(String(text)) ? Number(text) : Number.NaN;
	if (hour >= 0 && hour <= 23) return hour;
	throw new UsageError(`cannot take --why ${text}: expected an hour UTC, 0 to 23`);
}

function sunspotsGiven(month: string, text: string | undefined): Sunspots {
	const figure = text === undefined ? undefined : text.trim() === "" ? Number.NaN : Number(text);
	return given(text === undefined ? "--month" : "--sunspots", text ?? month, () => sunspots(month, figure));
}
