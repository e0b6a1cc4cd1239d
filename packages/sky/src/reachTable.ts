import { distanceKm } from "@skipwright/sphere";
import { groundChance, groundPathDb, HOPELESS_DB, type NoiseNow, type Sending, sending, skyChance } from "./circuit.ts";
import type { Ionosphere } from "./controlPoints.ts";
import { GROUNDS } from "./groundConstants.ts";
import { type GroundWaveTable, groundWaveTable } from "./groundWaveTable.ts";
import { type AtmosphericHour, atmosphericHour, type NoiseAtFrequency, noiseAtFrequency } from "./noiseAtFrequency.ts";
import { receiverNoiseDb } from "./noiseReceiver.ts";
import type { PathGain } from "./pathGain.ts";
import { circuitGain, latitudeOf, skyDays } from "./reach.ts";
import { skyWaveCeilingDb, skyWaveDb } from "./skyWave.ts";
import { type SkyHour, skyHour } from "./skyWaveHour.ts";
import { HOURS_PER_DAY, type SkyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz } from "./skyWaveMuf.ts";
import type { Signal, Terminal } from "./terminal.ts";

/** Where the vessel is, and the sky of that month. */
export interface VesselSample {
	readonly position: Terminal["position"];
	readonly month: SkyMonth;
	readonly ionosphere: Ionosphere;
}

/** One published frequency: what its station sends. */
export interface TableRow {
	/** Index into `stations`. */
	readonly station: number;
	readonly signal: Signal;
}

export interface TableQuestion {
	readonly vessel: Omit<Terminal, "position">;
	readonly stations: readonly Terminal[];
	readonly rows: readonly TableRow[];
	readonly samples: readonly VesselSample[];
	/** Also the other direction, ship to coast, on the same frequency. Default false. */
	readonly bothWays?: boolean;
	/** dB by which every signal is taken stronger (or, below 0, weaker) than predicted. Default 0. */
	readonly strongerDb?: number;
	/** Only for the test that proves that the early drop changes nothing. Default true. */
	readonly dropEarly?: boolean;
}

/** Chances from 0 to 1 by row, sample and UTC hour: index (row * samples + sample) * 24 + hour. NaN for an emission of which nothing is known. */
export interface ReachTable {
	readonly toVessel: Float64Array;
	/** null unless both ways were asked for. */
	readonly toCoast: Float64Array | null;
}

/** What one row needs at every sample: worked out once. */
interface PreparedRow {
	readonly index: number;
	readonly fMHz: number;
	readonly sent: Sending;
	readonly sentBack: Sending | null;
	readonly ground: GroundWaveTable;
	readonly vesselNoise: NoiseAtFrequency;
	readonly coastNoise: NoiseAtFrequency | null;
}

/**
 * Reach of many published frequencies at many dated positions: the same figures as `reach`, chance alone, for a whole directory along a
 * voyage. What cannot be heard is dropped by a bound that never changes an answer.
 */
export function reachTable(question: TableQuestion): ReachTable {
	const { rows, samples, stations, bothWays = false } = question;
	const size = rows.length * samples.length * HOURS_PER_DAY;
	const table = { toVessel: new Float64Array(size), toCoast: bothWays ? new Float64Array(size) : null };
	const byStation = Map.groupBy(prepared(question, table), ({ index }) => rows[index]!.station);
	const gains = stations.map((station) => gainOf(question, station));
	const stationHours = stations.map(() => new Map<number, readonly AtmosphericHour[]>());
	for (const [sampleIndex, sample] of samples.entries()) {
		const vessel: Terminal = { ...question.vessel, position: sample.position };
		const vesselHours = atmosphere(vessel, sample.month);
		const vesselFoF2 = sample.ionosphere(sample.position).foF2MHz;
		for (const [stationIndex, own] of byStation) {
			const station = stations[stationIndex]!;
			const gain = gains[stationIndex]!;
			const days = skyDays({ from: station, to: vessel, ionosphere: sample.ionosphere, month: sample.month });
			const ways = Array.from({ length: HOURS_PER_DAY }, (_, hour) => days.map((day) => skyHour(day, hour)));
			const coastHours = bothWays ? remembered(stationHours[stationIndex]!, sample.month, station) : vesselHours;
			const coastFoF2 = bothWays ? sample.ionosphere(station.position).foF2MHz : vesselFoF2;
			const km = distanceKm(station.position, vessel.position);
			for (const row of own) {
				const at = (row.index * samples.length + sampleIndex) * HOURS_PER_DAY;
				fillRow(question, table, row, { at, ways, gain, km, vesselHours, vesselFoF2, coastHours, coastFoF2, vessel, station });
			}
		}
	}
	return table;
}

interface Here {
	readonly at: number;
	readonly ways: readonly (readonly SkyHour[])[];
	readonly gain: CircuitGain;
	readonly km: number;
	readonly vesselHours: readonly AtmosphericHour[];
	readonly vesselFoF2: ArrayLike<number>;
	readonly coastHours: readonly AtmosphericHour[];
	readonly coastFoF2: ArrayLike<number>;
	readonly vessel: Terminal;
	readonly station: Terminal;
}

/** Overwritten for each hour. */
const toVesselNoise = new Float64Array(3);
const toCoastNoise = new Float64Array(3);

function fillRow(
	{ dropEarly = true, strongerDb = 0 }: TableQuestion,
	{ toVessel, toCoast }: ReachTable,
	row: PreparedRow,
	here: Here,
): void {
	const { fMHz, sent, sentBack, ground } = row;
	const { at, ways, gain, km, vesselHours, vesselFoF2, coastHours, coastFoF2, vessel, station } = here;
	const isGround = km < ground.endKm;
	const groundDb = isGround ? groundPathDb(ground, km, fMHz, vessel) + strongerDb : 0;
	const groundBackDb = isGround && sentBack !== null ? groundPathDb(ground, km, fMHz, station) + strongerDb : 0;
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		row.vesselNoise.into(toVesselNoise, vesselHours[hour]!, fMHz > vesselFoF2[hour]!);
		let there = isGround ? groundChance(sent, groundDb, toVesselNoise) : 0;
		let back = 0;
		if (sentBack !== null) {
			row.coastNoise?.into(toCoastNoise, coastHours[hour]!, fMHz > coastFoF2[hour]!);
			if (isGround) back = groundChance(sentBack, groundBackDb, toCoastNoise);
		}
		for (const way of ways[hour]!) {
			if (dropEarly && isHopeless(skyWaveCeilingDb(way, fMHz, gain.most) + strongerDb, sent, sentBack)) continue;
			const pathDb = skyWaveDb(way, fMHz, gain.path) + strongerDb;
			const ratio = fMHz / basicMufMHz(way);
			const latitude = latitudeOf(way);
			there = Math.max(there, skyChance(sent, pathDb, ratio, latitude, toVesselNoise));
			if (sentBack !== null) back = Math.max(back, skyChance(sentBack, pathDb, ratio, latitude, toCoastNoise));
		}
		toVessel[at + hour] = there;
		if (toCoast !== null) toCoast[at + hour] = back;
	}
}

function isHopeless(ceilingDb: number, sent: Sending, sentBack: Sending | null): boolean {
	return (
		shortDb(ceilingDb, sent, toVesselNoise) > HOPELESS_DB && (sentBack === null || shortDb(ceilingDb, sentBack, toCoastNoise) > HOPELESS_DB)
	);
}

/** dB by which a sky wave stands under its need. */
function shortDb(pathDb: number, { skyNeed, skyPowerDbw, skyNoiseDbw }: Sending, noise: NoiseNow): number {
	return skyNeed.snrDb - (skyPowerDbw + pathDb - skyNoiseDbw - noise[0]!);
}

function prepared(
	{ rows, stations, vessel, samples, bothWays = false }: TableQuestion,
	{ toVessel, toCoast }: ReachTable,
): readonly PreparedRow[] {
	const grounds = new Map<number, GroundWaveTable>();
	const position = samples[0]?.position ?? { latDeg: 0, lonDeg: 0 }; // an aerial's efficiency does not ask where
	return rows.flatMap(({ station: stationIndex, signal }, index) => {
		const station = stations[stationIndex];
		if (station === undefined) throw new RangeError(`Cannot place row ${index}: there is no station ${stationIndex} of ${stations.length}`);
		const sent = sending(signal, station);
		const sentBack = bothWays ? sending(signal, { ...vessel, position }) : null;
		if (sent === null) {
			const cells = samples.length * HOURS_PER_DAY;
			for (const chances of [toVessel, toCoast]) chances?.fill(Number.NaN, index * cells, (index + 1) * cells);
			return [];
		}
		const { fMHz } = signal;
		const ground = grounds.get(fMHz) ?? groundWaveTable(fMHz, GROUNDS.sea);
		grounds.set(fMHz, ground);
		return [
			{
				index,
				fMHz,
				sent,
				sentBack,
				ground,
				vesselNoise: noiseOf(fMHz, vessel),
				coastNoise: bothWays ? noiseOf(fMHz, station) : null,
			},
		];
	});
}

function noiseOf(fMHz: number, { manMade, antenna }: Omit<Terminal, "position">): NoiseAtFrequency {
	return noiseAtFrequency({ fMHz, manMade, receiverDb: receiverNoiseDb(antenna.efficiency(fMHz)) });
}

interface CircuitGain {
	readonly path: PathGain;
	/** Towards the best elevation. */
	readonly most: number;
}

/** As many as `pathGain` has nodes: between them it is linear, so that no elevation passes the best of them. */
const ELEVATIONS = 129;

function gainOf({ vessel, samples }: TableQuestion, station: Terminal): CircuitGain {
	const position = samples[0]?.position ?? station.position;
	const path = circuitGain(station, { ...vessel, position });
	const sines = Array.from({ length: ELEVATIONS }, (_, step) => step / (ELEVATIONS - 1));
	return { path, most: Math.max(path.low, ...sines.map(path.at)) };
}

function atmosphere({ position }: Terminal, { month }: SkyMonth): readonly AtmosphericHour[] {
	return Array.from({ length: HOURS_PER_DAY }, (_, utcHour) => atmosphericHour({ month, utcHour, position }));
}

function remembered(known: Map<number, readonly AtmosphericHour[]>, month: SkyMonth, station: Terminal): readonly AtmosphericHour[] {
	const before = known.get(month.month);
	if (before !== undefined) return before;
	const hours = atmosphere(station, month);
	known.set(month.month, hours);
	return hours;
}
