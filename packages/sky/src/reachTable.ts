import { distanceKm } from "@skipwright/sphere";
import { log10 } from "@skipwright/units";
import { groundChance, groundPathDb, HOPELESS_DB, type Sending, sending, skyChance } from "./circuit.ts";
import type { Ionosphere } from "./controlPoints.ts";
import { GROUNDS } from "./groundConstants.ts";
import { GroundWaves } from "./groundWaves.ts";
import { type NoiseAtFrequency, noiseAtFrequency } from "./noiseAtFrequency.ts";
import { type NoiseDay, NoiseOfPlace } from "./noiseDay.ts";
import { receiverNoiseDb } from "./noiseReceiver.ts";
import type { PathGain } from "./pathGain.ts";
import { circuitGain, latitudeOf, skyDays } from "./reach.ts";
import type { LatitudeClass } from "./reliabilitySpread.ts";
import { skyWaveDb } from "./skyWave.ts";
import { type SkyCeiling, skyCeiling, skyWaveCeilingDb } from "./skyWaveCeiling.ts";
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
	/** 20 log10 of it. */
	readonly fDb: number;
	readonly toVessel: PreparedWay;
	readonly toCoast: PreparedWay | null;
}

/** One direction of a row. */
interface PreparedWay {
	readonly sent: Sending;
	/** At the receiver. */
	readonly noise: NoiseAtFrequency;
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
	const grounds = new GroundWaves(GROUNDS.sea);
	// samples of one month share what lies at the coast
	const coastNoises = stations.map(() => new Map<SkyMonth, NoiseOfPlace>());
	for (const [sampleIndex, sample] of samples.entries()) {
		const { month, ionosphere } = sample;
		const vessel: Terminal = { ...question.vessel, position: sample.position };
		const vesselNoise = new NoiseOfPlace(vessel, month.month, ionosphere);
		for (const [stationIndex, own] of byStation) {
			const station = stations[stationIndex]!;
			const gain = gains[stationIndex]!;
			const coastNoise = coastNoises[stationIndex]!.get(month) ?? new NoiseOfPlace(station, month.month, ionosphere);
			coastNoises[stationIndex]!.set(month, coastNoise);
			const days = skyDays({ from: station, to: vessel, ionosphere, month });
			const skies = days.map((day) => ({
				ceiling: skyCeiling(day.path, gain.most),
				latitude: latitudeOf(day),
				hours: Array.from({ length: HOURS_PER_DAY }, (_, hour) => skyHour(day, hour)),
			}));
			const km = distanceKm(station.position, vessel.position);
			for (const row of own) {
				const at = (row.index * samples.length + sampleIndex) * HOURS_PER_DAY;
				fillRow(question, table, row, { at, skies, gain: gain.path, km, grounds, vessel, station, vesselNoise, coastNoise });
			}
		}
	}
	return table;
}

/** One way round between the two places. */
interface SkyWay {
	readonly ceiling: SkyCeiling;
	readonly latitude: LatitudeClass;
	readonly hours: readonly SkyHour[];
}

interface Here {
	readonly at: number;
	readonly skies: readonly SkyWay[];
	readonly gain: PathGain;
	readonly km: number;
	readonly grounds: GroundWaves;
	readonly vessel: Terminal;
	readonly station: Terminal;
	readonly vesselNoise: NoiseOfPlace;
	readonly coastNoise: NoiseOfPlace;
}

function fillRow({ dropEarly = true, strongerDb = 0 }: TableQuestion, table: ReachTable, row: PreparedRow, here: Here): void {
	const { fMHz, fDb, toVessel, toCoast } = row;
	const { at, skies, gain, km, grounds, vessel, station, vesselNoise, coastNoise } = here;
	const ground = grounds.within(fMHz, km);
	const groundDb = (receiver: Terminal) => (ground !== null ? groundPathDb(ground, km, fMHz, receiver) + strongerDb : null);
	const there = new Reception(toVessel.sent, vesselNoise.day(toVessel.noise), groundDb(vessel));
	const back = toCoast === null ? null : new Reception(toCoast.sent, coastNoise.day(toCoast.noise), groundDb(station));
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		let chance = there.byGround(hour);
		let chanceBack = back === null ? 0 : back.byGround(hour);
		for (const { ceiling, latitude, hours } of skies) {
			const sky = hours[hour]!;
			if (dropEarly) {
				const mostDb = skyWaveCeilingDb(ceiling, sky, fMHz, fDb) + strongerDb;
				if (there.isHopeless(mostDb, hour) && (back === null || back.isHopeless(mostDb, hour))) continue;
			}
			const pathDb = skyWaveDb(sky, fMHz, gain) + strongerDb;
			const ratio = fMHz / basicMufMHz(sky);
			chance = Math.max(chance, there.bySky(pathDb, ratio, latitude, hour));
			if (back !== null) chanceBack = Math.max(chanceBack, back.bySky(pathDb, ratio, latitude, hour));
		}
		table.toVessel[at + hour] = chance;
		if (table.toCoast !== null) table.toCoast[at + hour] = chanceBack;
	}
}

/** One direction of a row at one sample. */
class Reception {
	readonly #sent: Sending;
	readonly #noise: NoiseDay;
	readonly #groundDb: number | null;
	/** dB that a sky wave's path must give for a need met at no noise at all, less what no chance is left under. */
	readonly #leastDb: number;

	/** @param groundDb from `groundPathDb`; null where there is no ground wave */
	constructor(sent: Sending, noise: NoiseDay, groundDb: number | null) {
		this.#sent = sent;
		this.#noise = noise;
		this.#groundDb = groundDb;
		this.#leastDb = sent.skyNeed.snrDb - sent.skyPowerDbw + sent.skyNoiseDbw - HOPELESS_DB;
	}

	byGround(hour: number): number {
		return this.#groundDb === null ? 0 : groundChance(this.#sent, this.#groundDb, this.#noise.parts, this.#noise.at(hour));
	}

	/** Whether a sky wave no stronger than so has no chance, by the least noise that there can be. */
	isHopeless(mostDb: number, hour: number): boolean {
		return mostDb < this.#leastDb + this.#noise.leastDb(hour);
	}

	bySky(pathDb: number, ratio: number, latitude: LatitudeClass, hour: number): number {
		return skyChance(this.#sent, pathDb, ratio, latitude, this.#noise.parts, this.#noise.at(hour));
	}
}

function prepared(
	{ rows, stations, vessel, samples, bothWays = false }: TableQuestion,
	{ toVessel, toCoast }: ReachTable,
): readonly PreparedRow[] {
	const vesselNoises = new Map<number, NoiseAtFrequency>();
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
		const noise = vesselNoises.get(fMHz) ?? noiseOf(fMHz, vessel);
		vesselNoises.set(fMHz, noise);
		return [
			{
				index,
				fMHz,
				fDb: 20 * log10(fMHz),
				toVessel: { sent, noise },
				toCoast: sentBack === null ? null : { sent: sentBack, noise: noiseOf(fMHz, station) },
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
