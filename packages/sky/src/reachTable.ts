import { distanceKm } from "@skipwright/sphere";
import { log10 } from "@skipwright/units";
import type { Antenna } from "./antenna.ts";
import { byHour } from "./byHour.ts";
import { groundPathDb } from "./circuit.ts";
import type { Ionosphere } from "./controlPoints.ts";
import { GROUNDS } from "./groundConstants.ts";
import { GroundWaves } from "./groundWaves.ts";
import { NoiseOfPlace } from "./noiseDay.ts";
import type { PathGain } from "./pathGain.ts";
import { circuitGain, latitudeOf, skyDays } from "./reach.ts";
import { type PreparedRow, type PreparedWay, preparedRows } from "./reachTableRows.ts";
import { Reception } from "./reception.ts";
import type { LatitudeClass } from "./reliabilitySpread.ts";
import { skyWaveDb } from "./skyWave.ts";
import { skyWaveCeilingDb } from "./skyWaveCeiling.ts";
import { type SkyHour, skyHour } from "./skyWaveHour.ts";
import { HOURS_PER_DAY, type SkyMonth } from "./skyWaveMonth.ts";
import { basicMufMHz } from "./skyWaveMuf.ts";
import type { Signal, Terminal } from "./terminal.ts";

/** Where the vessel is, and the sky of that month. */
export interface VesselSample {
	readonly position: Terminal["position"];
	/** One object for all samples of a month: what belongs to the month is worked out once for it. */
	readonly month: SkyMonth;
	readonly ionosphere: Ionosphere;
}

/** One published frequency: what its station sends. */
export interface TableRow {
	/** Index into `stations`. */
	readonly station: number;
	readonly signal: Signal;
	/** The vessel only listens: chances of 0 the other way, even where both ways are asked for. Default false. */
	readonly isOneWay?: boolean;
}

export interface TableQuestion {
	readonly vessel: Omit<Terminal, "position">;
	readonly stations: readonly Terminal[];
	readonly rows: readonly TableRow[];
	readonly samples: readonly VesselSample[];
	/** Also the other direction, ship to coast, on the same frequency. Default false. */
	readonly bothWays?: boolean;
	/** Only for the test that proves that the early drop changes nothing. Default true. */
	readonly dropEarly?: boolean;
}

/** Chances from 0 to 1 by row, sample and UTC hour: index (row * samples + sample) * 24 + hour. NaN for an emission of which nothing is known. */
export interface ReachTable {
	readonly toVessel: Float64Array;
	/** null unless both ways were asked for. */
	readonly toCoast: Float64Array | null;
}

/** Of the sea alone: tables that are the same for every question, kept once worked out. */
const SEA_WAVES = new GroundWaves(GROUNDS.sea);

/**
 * Reach of many published frequencies at many dated positions: the same figures as `reach`, chance alone, for a whole directory along a
 * voyage. What cannot be heard is dropped by a bound that never changes an answer.
 * @throws RangeError for a row whose station is none
 */
export function reachTable(question: TableQuestion): ReachTable {
	return reachTables(question, [0])[0]!;
}

/**
 * The same for signals that are all so many decibels stronger (below 0: weaker) than predicted, one table for each level: what they share is
 * worked out once.
 */
export function reachTables(question: TableQuestion, levelsDb: readonly number[]): readonly ReachTable[] {
	const { rows, samples, bothWays = false, dropEarly = true } = question;
	const prepared = preparedRows(question);
	const empty = () => emptyTable(rows.length, samples.length * HOURS_PER_DAY, prepared);
	const tables = levelsDb.map((strongerDb): Level => ({ strongerDb, toVessel: empty(), toCoast: bothWays ? empty() : null }));
	const coasts = coastsOf(prepared);
	const gainOf = gainsWith(question.vessel);
	const grounds = SEA_WAVES;
	const frequencies = new Set(prepared.map(({ fMHz }) => fMHz)).size;
	for (const ofMonth of Map.groupBy(samples.entries(), ([, { month }]) => month).values()) {
		const noises = new Map<Coast, NoiseOfPlace>();
		for (const [sampleIndex, sample] of ofMonth) {
			const vessel: Terminal = { ...question.vessel, position: sample.position };
			const vesselNoise = new NoiseOfPlace(sample, vessel.position, frequencies);
			for (const coast of coasts) {
				const here: Here = {
					skies: skyWays(coast, sample),
					km: distanceKm(coast.position, vessel.position),
					grounds,
					vessel,
					vesselNoise,
					coastNoise: bothWays ? coastNoise(coast, sample, noises) : null,
				};
				for (const row of coast.rows) {
					const at = (row.index * samples.length + sampleIndex) * HOURS_PER_DAY;
					fillRow(tables, at, row, gainOf(row.station), here, dropEarly);
				}
			}
		}
	}
	return tables;
}

/** A table while it is filled. */
interface Level extends ReachTable {
	readonly strongerDb: number;
}

/** Chances of 0, and NaN for rows of which nothing is known. */
function emptyTable(rows: number, cells: number, known: readonly PreparedRow[]): Float64Array {
	const chances = new Float64Array(rows * cells).fill(Number.NaN);
	for (const { index } of known) chances.fill(0, index * cells, (index + 1) * cells);
	return chances;
}

/** One place at the coast: its stations share path, sky and noise from outside. */
interface Coast {
	readonly position: Terminal["position"];
	readonly rows: readonly PreparedRow[];
}

function coastsOf(prepared: readonly PreparedRow[]): readonly Coast[] {
	const byPlace = Map.groupBy(prepared, ({ station: { position } }) => `${position.latDeg} ${position.lonDeg}`);
	return Array.from(byPlace.values(), (rows) => ({ position: rows[0]!.station.position, rows }));
}

/** @param known of the month: its samples share it */
function coastNoise(coast: Coast, sample: VesselSample, known: Map<Coast, NoiseOfPlace>): NoiseOfPlace {
	const before = known.get(coast);
	if (before !== undefined) return before;
	const noise = new NoiseOfPlace(sample, coast.position, coast.rows.length);
	known.set(coast, noise);
	return noise;
}

/** One way round between two places. */
interface SkyWay {
	readonly latitude: LatitudeClass;
	readonly hours: readonly SkyHour[];
}

function skyWays({ position }: Coast, sample: VesselSample): readonly SkyWay[] {
	return skyDays(position, sample.position, sample).map((day) => ({
		latitude: latitudeOf(day),
		hours: byHour((hour) => skyHour(day, hour)),
	}));
}

/** What all rows of a coast share at one sample. */
interface Here {
	readonly skies: readonly SkyWay[];
	readonly km: number;
	readonly grounds: GroundWaves;
	readonly vessel: Terminal;
	readonly vesselNoise: NoiseOfPlace;
	readonly coastNoise: NoiseOfPlace | null;
}

/** @param at of the row's first hour in the tables */
function fillRow(tables: readonly Level[], at: number, row: PreparedRow, gain: CircuitGain, here: Here, dropEarly: boolean): void {
	const { fMHz, station, toVessel, toCoast } = row;
	const { skies, km, grounds, vessel, vesselNoise, coastNoise: noiseThere } = here;
	const ground = grounds.within(fMHz, km);
	const reception = ({ sent, noise }: PreparedWay, place: NoiseOfPlace, receiver: Terminal) =>
		new Reception(sent, place.day(noise), ground === null ? null : groundPathDb(ground, km, fMHz, receiver));
	const there = reception(toVessel, vesselNoise, vessel);
	const back = toCoast === null || noiseThere === null ? null : reception(toCoast, noiseThere, station);
	const strongestDb = tables.reduce((most, { strongerDb }) => Math.max(most, strongerDb), Number.NEGATIVE_INFINITY);
	const ceilingOverDb = strongestDb + gain.mostDb - row.fDb;
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		for (const { strongerDb, toVessel: chances, toCoast: chancesBack } of tables) {
			chances[at + hour] = there.byGround(strongerDb, hour);
			if (back !== null) chancesBack![at + hour] = back.byGround(strongerDb, hour);
		}
		const neededDb = back === null ? there.neededDb(hour) : Math.min(there.neededDb(hour), back.neededDb(hour));
		for (const { latitude, hours } of skies) {
			const sky = hours[hour]!;
			if (dropEarly && skyWaveCeilingDb(sky, fMHz) + ceilingOverDb < neededDb) continue;
			const pathDb = skyWaveDb(sky, fMHz, gain.path);
			const ratio = fMHz / basicMufMHz(sky);
			for (const { strongerDb, toVessel: chances, toCoast: chancesBack } of tables) {
				const levelDb = pathDb + strongerDb;
				chances[at + hour] = Math.max(chances[at + hour]!, there.bySky(levelDb, ratio, latitude, hour));
				if (back !== null) chancesBack![at + hour] = Math.max(chancesBack![at + hour]!, back.bySky(levelDb, ratio, latitude, hour));
			}
		}
	}
}

interface CircuitGain {
	readonly path: PathGain;
	/** Towards the best elevation, dB. */
	readonly mostDb: number;
}

/** As many as `pathGain` has nodes: between them it is linear, so that no elevation passes the best of them. */
const ELEVATIONS = 129;

/** Gain of each station with the vessel: stations with one aerial share it. */
function gainsWith(vessel: TableQuestion["vessel"]): (station: Terminal) => CircuitGain {
	const known = new Map<Antenna, CircuitGain>();
	return ({ antenna }) => {
		const before = known.get(antenna);
		if (before !== undefined) return before;
		const path = circuitGain(antenna, vessel.antenna);
		const sines = Array.from({ length: ELEVATIONS }, (_, step) => step / (ELEVATIONS - 1));
		const gain = { path, mostDb: 10 * log10(Math.max(path.low, ...sines.map(path.at))) };
		known.set(antenna, gain);
		return gain;
	};
}
