import { confidenceText, type Directory, type Listing, type Station, stationById } from "@skipwright/directory";
import { type EmissionClass, emission, type ServiceId } from "@skipwright/rules";
import type { Signal } from "@skipwright/sky";
import { formatPosition, type Hz, hz, type Position, parseKhz, parsePosition } from "@skipwright/units";
import { type Context, UsageError } from "./context.ts";
import { given } from "./given.ts";
import { dateGiven } from "./sources.ts";
import { coastPower, gradeFor, signalOf } from "./terminals.ts";

/** Carriers asked for where nothing else is said: one of each marine band (RR Appendix 17 B; 2182 below them). */
const BANDS_KHZ = [2_182, 4_146, 6_224, 8_294, 12_353, 16_528, 18_825, 22_159, 25_100];
/** W of a coast station that is only a position. */
const NAMELESS_COAST_W = 1_000;

export interface WantedFlags {
	readonly from: string;
	readonly khz?: readonly string[];
	readonly emission?: string;
	readonly power?: string;
	readonly on?: string;
}

export interface WantedSignal {
	readonly signal: Signal;
	readonly powerW: number;
	/** The listing in words; empty where there is none. */
	readonly what: string;
}

/** From where, and what of it, somebody wants to know the reach. */
export interface Wanted {
	readonly position: Position;
	readonly name: string;
	readonly signals: readonly WantedSignal[];
	/** What was taken for want of a figure. */
	readonly assumed: readonly string[];
}

/** @throws UsageError */
export function reachWanted(context: Context, directory: Directory, flags: WantedFlags): Wanted {
	const station = stationGiven(directory, flags.from);
	const powerW = flags.power === undefined ? null : powerGiven(flags.power);
	const emissionClass = flags.emission === undefined ? null : given("--emission", flags.emission, (text) => emission(text).emissionClass);
	const figures = flags.khz?.map((text) => given("--khz", text, parseKhz)) ?? null;
	if (station === null) return fromPlace(placeGiven(directory, flags.from), figures, emissionClass, powerW);
	if (station.position === null) throw new UsageError(`cannot tell the reach of ${station.id}: its position is not known`);
	const open = directory.listings.filter(({ stationId, status }) => stationId === station.id && status !== "closed");
	const listed = figures === null ? open : figures.flatMap((figure) => open.filter((listing) => listing.hz === figure));
	const extra = (figures ?? []).filter((figure) => !open.some((listing) => listing.hz === figure));
	if (listed.length === 0 && extra.length === 0) {
		throw new UsageError(`cannot tell the reach of ${station.id}: no open listing; give --khz`);
	}
	const on = dateGiven(context, flags.on);
	const power = (service: ServiceId) => powerW ?? coastPower(station, service).powerW;
	const services = new Set<ServiceId>([...listed.map(({ service }) => service), ...(extra.length > 0 ? (["voice-working"] as const) : [])]);
	const isAssumed = powerW === null && station.powerKw === null;
	return {
		position: station.position,
		name: `${station.name}${station.callSign === "" ? "" : ` (${station.callSign})`}`,
		signals: [
			...listed.map((listing) => ({
				signal: emissionClass === null ? signalOf(listing) : plainSignal(listing.hz, emissionClass),
				powerW: power(listing.service),
				what: listingText(listing, confidenceText(listing, on)),
			})),
			...extra.map((figure) => ({ signal: plainSignal(figure, emissionClass ?? "J3E"), powerW: power("voice-working"), what: "" })),
		],
		assumed: isAssumed ? [assumedPowers(station, [...services])] : [],
	};
}

function fromPlace(place: Position, figures: readonly Hz[] | null, emissionClass: EmissionClass | null, powerW: number | null): Wanted {
	return {
		position: place,
		name: formatPosition(place),
		signals: (figures ?? BANDS_KHZ.map((khz) => hz(khz * 1_000))).map((figure) => ({
			signal: plainSignal(figure, emissionClass ?? "J3E"),
			powerW: powerW ?? NAMELESS_COAST_W,
			what: "",
		})),
		assumed: powerW === null ? [`power ${NAMELESS_COAST_W} W`] : [],
	};
}

function plainSignal(figure: Hz, emissionClass: EmissionClass): Signal {
	return { fMHz: figure / 1_000_000, emission: emissionClass, grade: gradeFor(emissionClass) };
}

function listingText({ service, schedule }: Listing, confidence: string): string {
	return `${service}, ${schedule}; ${confidence}`;
}

/** @example `"power 1000 W (voice-working, dsc-watch), 4000 W (nbdp-msi)"` */
function assumedPowers(station: Station, services: readonly ServiceId[]): string {
	const byPower = Map.groupBy(services, (service) => coastPower(station, service).powerW);
	return `power ${[...byPower].map(([watts, of]) => `${watts} W (${of.join(", ")})`).join(", ")}`;
}

/** By id, or by a call sign that only one station has. */
function stationGiven(directory: Directory, text: string): Station | null {
	const byId = stationById(directory, text);
	if (byId !== null) return byId;
	const byCallSign = directory.stations.filter(({ callSign }) => callSign !== "" && callSign === text.toUpperCase());
	if (byCallSign.length > 1) {
		throw new UsageError(
			`cannot take --from ${text}: expected one of ${byCallSign.map(({ id }) => id).join(", ")}, which all have that call sign`,
		);
	}
	return byCallSign[0] ?? null;
}

function placeGiven(directory: Directory, text: string): Position {
	if (/^[a-z][a-z0-9-]*$/i.test(text)) {
		throw new UsageError(
			`cannot find --from ${text} among ${directory.stations.length} stations: expected an id or a call sign (directory find), or a position as -33.9,18.43`,
		);
	}
	return given("--from", text, parsePosition);
}

function powerGiven(text: string): number {
	const watts = Number(text);
	if (watts > 0 && watts <= 1_000_000) return watts;
	throw new UsageError(`cannot take --power ${text}: expected watts above 0, at most 1000000`);
}
