import type { Ground } from "./groundConstants.ts";
import { type GroundWaveTable, groundWaveTable } from "./groundWaveTable.ts";

/** MHz. Under every frequency that is asked for. */
const LOWEST_OCTAVE_MHZ = 0.25;

/** Ground waves over one ground, for many frequencies and distances: the table of each is worked out when a path is first short enough. */
export class GroundWaves {
	readonly #ground: Ground;
	readonly #tables = new Map<number, GroundWaveTable>();

	constructor(ground: Ground) {
		this.#ground = ground;
	}

	/** @param fMHz from 0.25 @returns null past the table's end */
	within(fMHz: number, km: number): GroundWaveTable | null {
		let octaveMHz = LOWEST_OCTAVE_MHZ;
		while (2 * octaveMHz <= fMHz) octaveMHz *= 2;
		if (km >= this.#table(octaveMHz).endKm) return null; // a lower frequency carries no less far (tested)
		const table = this.#table(fMHz);
		return km < table.endKm ? table : null;
	}

	#table(fMHz: number): GroundWaveTable {
		const before = this.#tables.get(fMHz);
		if (before !== undefined) return before;
		const table = groundWaveTable(fMHz, this.#ground);
		this.#tables.set(fMHz, table);
		return table;
	}
}
