import { log10 } from "@skipwright/units";
import { type Sending, sending } from "./circuit.ts";
import { type NoiseAtFrequency, noiseAtFrequency } from "./noiseAtFrequency.ts";
import { receiverNoiseDb } from "./noiseReceiver.ts";
import type { TableQuestion } from "./reachTable.ts";
import type { Terminal } from "./terminal.ts";

/** What one row needs at every sample: worked out once. */
export interface PreparedRow {
	/** Into the question's rows. */
	readonly index: number;
	readonly station: Terminal;
	readonly fMHz: number;
	/** 20 log10 of it. */
	readonly fDb: number;
	readonly toVessel: PreparedWay;
	/** null unless both ways are asked for, and where the vessel only listens. */
	readonly toCoast: PreparedWay | null;
}

/** One direction of a row. */
export interface PreparedWay {
	readonly sent: Sending;
	/** At the receiver: one object for all rows of one frequency and receiver. */
	readonly noise: NoiseAtFrequency;
}

/**
 * The rows of which something is known.
 * @throws RangeError for a row whose station is none
 */
export function preparedRows({ rows, stations, vessel, samples, bothWays = false }: TableQuestion): readonly PreparedRow[] {
	const aboard = { ...vessel, position: samples[0]?.position ?? { latDeg: 0, lonDeg: 0 } }; // neither power nor noise ask where
	const noises = new Map<Terminal, Map<number, NoiseAtFrequency>>();
	const noiseAt = (receiver: Terminal, fMHz: number): NoiseAtFrequency => {
		const known = noises.get(receiver) ?? new Map<number, NoiseAtFrequency>();
		noises.set(receiver, known);
		const { manMade, antenna } = receiver;
		const noise = known.get(fMHz) ?? noiseAtFrequency({ fMHz, manMade, receiverDb: receiverNoiseDb(antenna.efficiency(fMHz)) });
		known.set(fMHz, noise);
		return noise;
	};
	return rows.flatMap(({ station: stationIndex, signal, isOneWay = false }, index) => {
		const station = stations[stationIndex];
		if (station === undefined) throw new RangeError(`Cannot place row ${index}: there is no station ${stationIndex} of ${stations.length}`);
		const { fMHz } = signal;
		const sent = sending(signal, station);
		if (sent === null) return [];
		const sentBack = bothWays && !isOneWay ? sending(signal, aboard) : null;
		return [
			{
				index,
				station,
				fMHz,
				fDb: 20 * log10(fMHz),
				toVessel: { sent, noise: noiseAt(aboard, fMHz) },
				toCoast: sentBack === null ? null : { sent: sentBack, noise: noiseAt(station, fMHz) },
			},
		];
	});
}
