import { type Directory, type Listing, stationById } from "@skipwright/directory";
import type { ResolvedJob, VoyageSample } from "@skipwright/job";
import {
	type Hearing,
	isRelevant,
	lowSkySamples,
	marineBand,
	type PlanHearings,
	planSamples,
	SHIP_DISTANCE_NM,
	type ShipDistance,
} from "@skipwright/planner";
import { serviceWant, type WantId } from "@skipwright/rules";
import {
	chanceAtMinute,
	type ReachTable,
	reachTables,
	type Signal,
	type Sunspots,
	sunspots,
	type Terminal,
	type VesselSample,
	yearMonth,
} from "@skipwright/sky";
import { destination, NAUTICAL_MILE_KM } from "@skipwright/sphere";
import { listingRows } from "./listingRows.ts";
import { monthSky } from "./monthSky.ts";
import { vesselTerminal } from "./terminals.ts";

const HOURS_PER_DAY = 24;
/** dB. No prediction of a signal at sea is surer than about this. */
const LEVEL_DB = 6;
/** Smoothed sunspot number (old scale) near the least that a cycle comes to: what the set will still have to work in. Own choice. */
const LOW_SUNSPOTS = 10;

/** A carrier in each marine band on which ships talk, MHz. */
const SHIP_SIGNALS: ReadonlyMap<number, Signal> = new Map(
	[2.182, 4.146, 6.224, 8.294, 12.353, 16.528, 18.825, 22.159, 25.1].map((fMHz) => [
		Math.floor(fMHz),
		{ fMHz, emission: "J3E", grade: "safety" },
	]),
);
/** Degrees from north: the other ship may lie any way. */
const SHIP_BEARINGS = [0, 90, 180, 270] as const;
const SHIP_DISTANCES = ["near", "far"] as const satisfies readonly ShipDistance[];

export interface HearingWishes {
	/** The user's own sunspot number on the old scale. */
	readonly sunspots?: number | undefined;
	/** Also with every signal weaker and stronger than predicted. Default false. */
	readonly levels?: boolean;
}

/** Predicted reach along a job's voyage, for every listing that it could want, and the same for a sky of few sunspots: what the planner asks for. */
export function hearingsFor(
	resolved: ResolvedJob,
	directory: Directory,
	{ sunspots: given, levels = false }: HearingWishes = {},
): PlanHearings {
	const samples = planSamples(resolved.voyage);
	const [hearing, weaker, stronger] = hearingsAt(resolved, directory, samples, given, levels ? [0, -LEVEL_DB, LEVEL_DB] : [0]);
	const [lowHearing] = hearingsAt(resolved, directory, lowSkySamples(samples), LOW_SUNSPOTS, [0]);
	return {
		hearing: hearing!,
		lowHearing: lowHearing!,
		...(weaker === undefined || stronger === undefined ? {} : { levels: { byDb: LEVEL_DB, weaker, stronger } }),
	};
}

/** One for each level by which signals are taken stronger than predicted, dB. */
function hearingsAt(
	resolved: ResolvedJob,
	directory: Directory,
	samples: readonly VoyageSample[],
	givenSunspots: number | undefined,
	levelsDb: readonly number[],
): readonly Hearing[] {
	const vessel = vesselTerminal(resolved.job);
	const wanted = directory.listings.filter((listing) => {
		const station = stationById(directory, listing.stationId);
		if (listing.status === "closed" || station === null || station.position === null) return false;
		return isWanted(listing, resolved.job.wants) && samples.some((sample) => isRelevant(listing, station, sample));
	});
	const { rows, stations } = listingRows(wanted, directory);
	const months = new Map<string, ReturnType<typeof monthOf>>();
	const vesselSamples = samples.map(({ date, position }): VesselSample => {
		const name = date.slice(0, 7);
		const known = months.get(name) ?? monthOf(name, givenSunspots);
		months.set(name, known);
		return { position, ...known };
	});
	const tables = reachTables({ vessel, stations, rows, samples: vesselSamples, bothWays: true }, levelsDb);
	const ships = new Map<VesselSample, readonly ReachTable[]>(); // worked out when one is first asked for
	const shipsAt = (sample: VesselSample) => {
		const known = ships.get(sample) ?? shipsAround(vessel, sample, levelsDb);
		ships.set(sample, known);
		return known;
	};
	const rowOf = new Map(rows.map(({ id }, index) => [id, index]));
	const sampleOf = new Map(samples.map(({ atMs }, index) => [atMs, index]));
	const numbers = [...months.values()].map(({ spots }) => Math.round(spots.r12Old));
	const basis = `predicted reach by sky wave and ground wave, sunspot number ${Math.min(...numbers)} to ${Math.max(...numbers)} (old scale): monthly medians, not promises`;
	const bands = [...SHIP_SIGNALS.keys()];
	return tables.map(({ toVessel, toCoast }, level): Hearing => {
		const heardShip = (bandMhz: number, sample: VoyageSample, minute: number, distance: ShipDistance) => {
			const at = sampleOf.get(sample.atMs);
			const band = bands.indexOf(bandMhz);
			if (at === undefined || band < 0) return null;
			const ring = SHIP_DISTANCES.indexOf(distance) * SHIP_BEARINGS.length;
			const day = (bearing: number) => ((ring + bearing) * bands.length + band) * HOURS_PER_DAY;
			const by = (table: Float64Array, start: number) => chanceAtMinute(table.subarray(start, start + HOURS_PER_DAY), minute);
			const table = shipsAt(vesselSamples[at]!)[level]!;
			const sum = SHIP_BEARINGS.reduce<number>(
				(total, _, bearing) => total + Math.min(...waysOf(table).map((way) => by(way, day(bearing)))),
				0,
			);
			return sum / SHIP_BEARINGS.length;
		};
		return {
			basis,
			heardShip,
			heard({ listing, station }, sample, minute) {
				const row = rowOf.get(listing.id);
				const at = sampleOf.get(sample.atMs);
				if (row === undefined || at === undefined) {
					// of a net it is only known that vessels like this one are in it
					return listing.origin === "owner" && station.position === null ? heardShip(marineBand(listing.hz), sample, minute, "near") : null;
				}
				const start = (row * samples.length + at) * HOURS_PER_DAY;
				const by = (table: Float64Array) => chanceAtMinute(table.subarray(start, start + HOURS_PER_DAY), minute);
				const chance = rows[row]!.isOneWay ? by(toVessel) : Math.min(by(toVessel), by(toCoast!));
				return Number.isNaN(chance) ? null : chance;
			},
		};
	});
}

/** Nets too: what is the owner's own serves them. */
function isWanted({ origin, service }: Listing, wants: ResolvedJob["job"]["wants"]): boolean {
	const want = origin === "owner" ? "nets" : serviceWant(service);
	return want === "safety-text" || want === "guard" || (wants[want as WantId] ?? 0) > 0;
}

/** One table for each level: rows by distance, bearing, then band. */
function shipsAround(vessel: Omit<Terminal, "position">, sample: VesselSample, levelsDb: readonly number[]): readonly ReachTable[] {
	const stations = SHIP_DISTANCES.flatMap((distance) =>
		SHIP_BEARINGS.map((bearing) => ({
			...vessel,
			position: destination(sample.position, bearing, SHIP_DISTANCE_NM[distance] * NAUTICAL_MILE_KM),
		})),
	);
	const rows = stations.flatMap((_, station) => [...SHIP_SIGNALS.values()].map((signal) => ({ station, signal })));
	return reachTables({ vessel, stations, rows, samples: [sample], bothWays: true }, levelsDb);
}

function waysOf({ toVessel, toCoast }: ReachTable): readonly Float64Array[] {
	return toCoast === null ? [toVessel] : [toVessel, toCoast];
}

function monthOf(name: string, given: number | undefined) {
	const spots: Sunspots = sunspots(name, given);
	return { spots, ...monthSky(yearMonth(name), spots.r12Old) };
}
