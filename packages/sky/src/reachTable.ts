import { distanceKm } from "@skipwright/sphere";
import { groundChance, groundPathDb, HOPELESS_DB, NOISE_PARTS, type Sending, sending, skyChance } from "./circuit.ts";
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
	/** One object for all samples of a month: what belongs to the month is worked out once for it. */
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
	// samples of one month share what lies at the coast
	const coastNoises = stations.map(() => new Map<SkyMonth, NoiseAtPlace>());
	for (const [sampleIndex, sample] of samples.entries()) {
		const vessel: Terminal = { ...question.vessel, position: sample.position };
		const vesselNoise = new NoiseAtPlace(vessel, sample);
		for (const [stationIndex, own] of byStation) {
			const station = stations[stationIndex]!;
			const days = skyDays({ from: station, to: vessel, ionosphere: sample.ionosphere, month: sample.month });
			const ways = Array.from({ length: HOURS_PER_DAY }, (_, hour) => days.map((day) => skyHour(day, hour)));
			const coastNoise = coastNoises[stationIndex]!.get(sample.month) ?? new NoiseAtPlace(station, sample);
			coastNoises[stationIndex]!.set(sample.month, coastNoise);
			const km = distanceKm(station.position, vessel.position);
			for (const row of own) {
				const at = (row.index * samples.length + sampleIndex) * HOURS_PER_DAY;
				fillRow(question, table, row, { at, ways, gain: gains[stationIndex]!, km, vessel, station, vesselNoise, coastNoise });
			}
		}
	}
	return table;
}

/** Overwritten hour by hour. */
const now = new Float64Array(NOISE_PARTS);

/** Noise at one place in one month, by frequency: asked for often, worked out once. */
class NoiseAtPlace {
	readonly #place: Terminal;
	readonly #sample: VesselSample;
	readonly #known = new Map<number, Float64Array>();
	#hours: readonly AtmosphericHour[] = [];
	#foF2MHz: ArrayLike<number> = [];

	constructor(place: Terminal, sample: VesselSample) {
		this.#place = place;
		this.#sample = sample;
	}

	/** 24 hours of `NOISE_PARTS` numbers. */
	day(fMHz: number, noise: NoiseAtFrequency): Float64Array {
		const before = this.#known.get(fMHz);
		if (before !== undefined) return before;
		if (this.#hours.length === 0) this.#readSky();
		const day = new Float64Array(HOURS_PER_DAY * NOISE_PARTS);
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			noise.into(now, this.#hours[hour]!, fMHz > this.#foF2MHz[hour]!);
			day.set(now, hour * NOISE_PARTS);
		}
		this.#known.set(fMHz, day);
		return day;
	}

	#readSky(): void {
		const { position } = this.#place;
		const { month, ionosphere } = this.#sample;
		this.#hours = Array.from({ length: HOURS_PER_DAY }, (_, utcHour) => atmosphericHour({ month: month.month, utcHour, position }));
		this.#foF2MHz = ionosphere(position).foF2MHz;
	}
}

interface Here {
	readonly at: number;
	readonly ways: readonly (readonly SkyHour[])[];
	readonly gain: CircuitGain;
	readonly km: number;
	readonly vessel: Terminal;
	readonly station: Terminal;
	readonly vesselNoise: NoiseAtPlace;
	readonly coastNoise: NoiseAtPlace;
}

function fillRow(
	{ dropEarly = true, strongerDb = 0 }: TableQuestion,
	{ toVessel, toCoast }: ReachTable,
	row: PreparedRow,
	here: Here,
): void {
	const { fMHz, sent, sentBack, ground } = row;
	const { at, ways, gain, km, vessel, station } = here;
	const isGround = km < ground.endKm;
	const groundDb = isGround ? groundPathDb(ground, km, fMHz, vessel) + strongerDb : 0;
	const groundBackDb = isGround && sentBack !== null ? groundPathDb(ground, km, fMHz, station) + strongerDb : 0;
	const there = here.vesselNoise.day(fMHz, row.vesselNoise);
	const back = row.coastNoise === null ? there : here.coastNoise.day(fMHz, row.coastNoise);
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		const now = hour * NOISE_PARTS;
		let chance = isGround ? groundChance(sent, groundDb, there, now) : 0;
		let chanceBack = isGround && sentBack !== null ? groundChance(sentBack, groundBackDb, back, now) : 0;
		for (const way of ways[hour]!) {
			if (dropEarly) {
				const ceilingDb = skyWaveCeilingDb(way, fMHz, gain.most) + strongerDb;
				const isHopeless = shortDb(ceilingDb, sent, there[now]!) > HOPELESS_DB;
				if (isHopeless && (sentBack === null || shortDb(ceilingDb, sentBack, back[now]!) > HOPELESS_DB)) continue;
			}
			const pathDb = skyWaveDb(way, fMHz, gain.path) + strongerDb;
			const ratio = fMHz / basicMufMHz(way);
			const latitude = latitudeOf(way);
			chance = Math.max(chance, skyChance(sent, pathDb, ratio, latitude, there, now));
			if (sentBack !== null) chanceBack = Math.max(chanceBack, skyChance(sentBack, pathDb, ratio, latitude, back, now));
		}
		toVessel[at + hour] = chance;
		if (toCoast !== null) toCoast[at + hour] = chanceBack;
	}
}

/** dB by which a sky wave stands under its need. */
function shortDb(pathDb: number, { skyNeed, skyPowerDbw, skyNoiseDbw }: Sending, noiseDb: number): number {
	return skyNeed.snrDb - (skyPowerDbw + pathDb - skyNoiseDbw - noiseDb);
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
