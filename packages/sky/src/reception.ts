import { groundChance, HOPELESS_DB, type Sending, skyChance } from "./circuit.ts";
import type { NoiseDay } from "./noiseDay.ts";
import type { LatitudeClass } from "./reliabilitySpread.ts";

/** One direction of one frequency between two places, in one month. */
export class Reception {
	readonly #sent: Sending;
	readonly #noise: NoiseDay;
	readonly #groundDb: number | null;
	/** dB that a sky wave's path must give lest it be hopeless at no noise (0 dB above kT0b). */
	readonly #neededDb: number;

	/** @param noise at the receiver @param groundDb from `groundPathDb`; null where there is no ground wave */
	constructor(sent: Sending, noise: NoiseDay, groundDb: number | null) {
		this.#sent = sent;
		this.#noise = noise;
		this.#groundDb = groundDb;
		this.#neededDb = sent.skyNeed.snrDb - sent.skyPowerDbw + sent.skyNoiseDbw - HOPELESS_DB;
	}

	/** dB: a sky wave's path that gives less has no chance at that hour, by the least noise that there can be. */
	neededDb(hour: number): number {
		return this.#neededDb + this.#noise.leastDb(hour);
	}

	/** @param strongerDb by which the signal is taken stronger than predicted */
	byGround(strongerDb: number, hour: number): number {
		if (this.#groundDb === null) return 0;
		return groundChance(this.#sent, this.#groundDb + strongerDb, this.#noise.parts, this.#noise.at(hour));
	}

	bySky(pathDb: number, ratio: number, latitude: LatitudeClass, hour: number): number {
		return skyChance(this.#sent, pathDb, ratio, latitude, this.#noise.parts, this.#noise.at(hour));
	}
}
