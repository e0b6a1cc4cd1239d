import { confidenceText, type Directory, type Listing, stationById } from "@skipwright/directory";
import { EMISSION_CLASSES, type EmissionClass } from "@skipwright/rules";
import {
	chanceWord,
	hoursInWords,
	mapIonosphere,
	type ReachHour,
	type ReachRow,
	reach,
	type Signal,
	type Sunspots,
	skyMonth,
	sunspots,
	type Terminal,
	yearMonth,
} from "@skipwright/sky";
import { formatKhz, formatPosition, type Hz, hz, type Position, parseKhz, parsePosition } from "@skipwright/units";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { reachWhyText } from "../reachWhyText.ts";
import { dateGiven, directoryGiven } from "../sources.ts";
import { ASSUMED_SHIP_W, coastPower, coastTerminal, gradeFor, signalOf, vesselTerminal } from "../terminals.ts";

export interface ReachFlags {
	readonly from: string;
	readonly to: string;
	readonly month: string;
	readonly khz?: readonly string[];
	readonly emission?: string;
	readonly power?: string;
	readonly sunspots?: string;
	readonly why?: string | boolean;
	readonly on?: string;
	readonly shop?: string;
	readonly json?: boolean;
}

/** Carriers asked for where nothing else is said: one of each marine band (RR Appendix 17 B; 2182 below them). */
const BANDS_KHZ = [2_182, 4_146, 6_224, 8_294, 12_353, 16_528, 18_825, 22_159, 25_100];
/** W of a coast station that is only a position. */
const NAMELESS_COAST_W = 1_000;

interface Wanted {
	readonly sender: Terminal;
	readonly name: string;
	readonly signals: readonly (Signal & { readonly what: string })[];
	/** What was taken for want of a figure. */
	readonly assumed: readonly string[];
}

/** `reach`: hours and chances from a station or a place to the vessel, in words; `--why HOUR` tells one hour step by step. */
export function reachCommand(context: Context, flags: ReachFlags): Exit {
	const directory = directoryGiven(context, flags);
	const to = positionGiven("--to", flags.to);
	const month = given("--month", flags.month, yearMonth);
	const spots = sunspotsGiven(flags.month, flags.sunspots);
	const wanted = wantedFrom(context, directory, flags);
	const receiver: Terminal = { ...vesselTerminal({ noise: "residential" }), position: to };
	const rows = reach(
		{
			from: wanted.sender,
			to: receiver,
			month: skyMonth({ ...month, sunspots: spots.r12Old }),
			ionosphere: mapIonosphere({ ...month, r12: spots.r12Old }),
		},
		wanted.signals,
	);
	if (flags.json === true) context.out(`${JSON.stringify(reachJson(flags.month, spots, wanted.sender.position, to, rows), null, "\t")}\n`);
	else context.out(reachText(flags, wanted, spots, to, rows));
	return EXIT.ok;
}

function wantedFrom(context: Context, directory: Directory, flags: ReachFlags): Wanted {
	const station = stationById(directory, flags.from);
	const power = flags.power === undefined ? null : powerGiven(flags.power);
	const emission = flags.emission === undefined ? null : emissionGiven(flags.emission);
	if (station === null) {
		const position = positionGiven("--from", flags.from);
		const figures = flags.khz === undefined ? BANDS_KHZ.map((khz) => hz(khz * 1_000)) : flags.khz.map(khzGiven);
		const assumed = power === null ? [`power ${NAMELESS_COAST_W} W`] : [];
		return {
			sender: coastTerminal(position, power ?? NAMELESS_COAST_W),
			name: formatPosition(position),
			signals: figures.map((figure) => plainSignal(figure, emission ?? "J3E")),
			assumed: [...assumed, "a coast station's vertical aerial"],
		};
	}
	if (station.position === null) throw new UsageError(`cannot tell the reach of ${station.id}: its position is not known`);
	const listings = directory.listings.filter(({ stationId, status }) => stationId === station.id && status !== "closed");
	const listed =
		flags.khz === undefined ? listings : flags.khz.map(khzGiven).flatMap((figure) => listings.filter((listing) => listing.hz === figure));
	const extra = (flags.khz ?? []).map(khzGiven).filter((figure) => !listings.some((listing) => listing.hz === figure));
	const first = listings[0];
	if (first === undefined && extra.length === 0)
		throw new UsageError(`cannot tell the reach of ${station.id}: no open listing; give --khz`);
	const powers = coastPower(station, first?.service ?? "voice-working");
	const on = dateGiven(context, flags.on);
	return {
		sender: coastTerminal(station.position, power ?? powers.powerW),
		name: `${station.name}${station.callSign === "" ? "" : ` (${station.callSign})`}`,
		signals: [
			...listed.map((listing) => listingSignal(listing, emission, confidenceText(listing, on))),
			...extra.map((figure) => plainSignal(figure, emission ?? "J3E")),
		],
		assumed: [...(power === null && powers.isAssumed ? [`power ${powers.powerW} W`] : []), "a coast station's vertical aerial"],
	};
}

function plainSignal(figure: Hz, emission: EmissionClass): Wanted["signals"][number] {
	return { fMHz: figure / 1_000_000, emission, grade: gradeFor(emission), what: "" };
}

function listingSignal(listing: Listing, emission: EmissionClass | null, confidence: string): Wanted["signals"][number] {
	const signal = emission === null ? signalOf(listing) : plainSignal(listing.hz, emission);
	return { ...signal, what: `${listing.service}, ${listing.schedule}; ${confidence}` };
}

function reachText(flags: ReachFlags, wanted: Wanted, spots: Sunspots, to: Position, rows: readonly ReachRow[]): string {
	const assumed = [...wanted.assumed, `aboard: a ${ASSUMED_SHIP_W} W set, 12 m backstay, residential noise`];
	const head = [
		`${wanted.name} to ${formatPosition(to)}, ${flags.month}, sunspot number ${Math.round(spots.r12Old)} on the old scale (${spots.source})`,
		`assumed: ${assumed.join("; ")}`,
		"times in UTC; monthly medians, not promises",
	];
	const lines = rows.map((row, i) => lineOf(row, wanted.signals[i]?.what ?? ""));
	const hour = flags.why === undefined ? null : whyHour(flags.why);
	const whys =
		hour === null ? [] : rows.flatMap((row) => (row.hours === null ? [] : [reachWhyText(row.signal, row.hours[hour]!, row.basis)]));
	return `${[...head, ...lines, ...whys].join("\n")}\n`;
}

function lineOf({ signal, hours }: ReachRow, what: string): string {
	const figure = `${formatKhz(hz(Math.round(signal.fMHz * 1_000_000))).padStart(8)} kHz ${signal.emission}`;
	const about = what === "" ? "" : `\n             ${what}`;
	if (hours === null) return `${figure}  cannot tell${about}`;
	const chances = hours.map(({ chance }) => chance);
	const best = hours.reduce((most, hour) => (hour.chance > most.chance ? hour : most));
	const when =
		chanceWord(best.chance) === "none"
			? ""
			: `; best ${Math.round(best.chance * 100)} % at ${String(best.utcHour).padStart(2, "0")}00, by ${best.by}`;
	return `${figure}  ${hoursInWords(chances)}${when}${about}`;
}

/** As contracts, commands' JSON: positions [lat, lon], powers in dBW in the bandwidth that the emission needs. */
function reachJson(month: string, spots: Sunspots, from: Position, to: Position, rows: readonly ReachRow[]): object {
	const at = ({ latDeg, lonDeg }: Position) => [latDeg, lonDeg];
	return { month, sunspots: spots.r12Old, from: at(from), to: at(to), rows: rows.map(rowJson) };
}

function rowJson({ signal, hours, basis }: ReachRow): object {
	const head = { frequencyHz: Math.round(signal.fMHz * 1_000_000), emission: signal.emission };
	if (hours === null) return { ...head, cannotTell: "the method knows neither this emission nor this frequency", basis };
	const series = (pick: (hour: ReachHour) => number) => hours.map(pick);
	return {
		...head,
		chance: series(({ chance }) => chance),
		snrDb: series(({ snrDb }) => snrDb),
		snrUpperDecileDb: series(({ upperDb }) => upperDb),
		snrLowerDecileDb: series(({ lowerDb }) => lowerDb),
		signalDb: series(({ signalDbw }) => signalDbw),
		noiseDb: series(({ noiseDbw }) => noiseDbw),
		mufMHz: series(({ mufMHz }) => mufMHz),
		by: hours.map(({ by }) => by),
		basis,
	};
}

function whyHour(text: string | boolean): number {
	const hour = text === true ? 12 : Number(text);
	if (Number.isInteger(hour) && hour >= 0 && hour <= 23) return hour;
	throw new UsageError(`cannot take --why ${text}: expected an hour UTC, 0 to 23`);
}

function sunspotsGiven(month: string, text: string | undefined): Sunspots {
	const value = text === undefined ? undefined : Number(text);
	try {
		return sunspots(month, value);
	} catch (error) {
		throw new UsageError(`cannot take the sunspots of ${month}${text === undefined ? "" : ` as ${text}`}: ${(error as Error).message}`);
	}
}

function positionGiven(flag: string, text: string): Position {
	return given(flag, text, parsePosition);
}

function khzGiven(text: string): Hz {
	return given("--khz", text, parseKhz);
}

function emissionGiven(text: string): EmissionClass {
	const known = EMISSION_CLASSES.find((name) => name === text);
	if (known === undefined) throw new UsageError(`cannot take --emission ${text}: expected one of ${EMISSION_CLASSES.join(", ")}`);
	return known;
}

function powerGiven(text: string): number {
	const watts = Number(text);
	if (watts > 0 && watts <= 1_000_000) return watts;
	throw new UsageError(`cannot take --power ${text}: expected watts above 0, at most 1000000`);
}

function given<T>(flag: string, text: string, read: (text: string) => T): T {
	try {
		return read(text);
	} catch (error) {
		throw new UsageError(`cannot take ${flag} ${text}: ${(error as Error).message}`);
	}
}
