import type { Ionosphere } from "./controlPoints.ts";
import { type AtmosphericHour, atmosphericDay, type NoiseAtFrequency } from "./noiseAtFrequency.ts";
import { HOURS_PER_DAY } from "./skyWaveMonth.ts";
import type { Terminal } from "./terminal.ts";

/** Numbers an hour in a series of noise: median above kT0b, upper and lower decile from it, dB, as `NoiseAtFrequency` writes them. */
export const NOISE_PARTS = 3;

/** Noise of one place and month by frequency and hour: asked for often, each worked out once and only when needed. */
export class NoiseOfPlace {
	readonly #atmosphere: readonly AtmosphericHour[];
	readonly #foF2MHz: ArrayLike<number>;
	readonly #known = new Map<NoiseAtFrequency, NoiseDay>();

	constructor({ position }: Pick<Terminal, "position">, month: number, ionosphere: Ionosphere) {
		this.#atmosphere = atmosphericDay({ month, position });
		this.#foF2MHz = ionosphere(position).foF2MHz;
	}

	day(noise: NoiseAtFrequency): NoiseDay {
		const before = this.#known.get(noise);
		if (before !== undefined) return before;
		const day = new NoiseDay(noise, this.#atmosphere, this.#foF2MHz);
		this.#known.set(noise, day);
		return day;
	}
}

/** Noise of one place, month and frequency. */
export class NoiseDay {
	readonly #noise: NoiseAtFrequency;
	readonly #atmosphere: readonly AtmosphericHour[];
	readonly #foF2MHz: ArrayLike<number>;
	/** `NOISE_PARTS` numbers an hour, from where `at` says; NaN until then. */
	readonly parts = new Float64Array(HOURS_PER_DAY * NOISE_PARTS).fill(Number.NaN);

	constructor(noise: NoiseAtFrequency, atmosphere: readonly AtmosphericHour[], foF2MHz: ArrayLike<number>) {
		this.#noise = noise;
		this.#atmosphere = atmosphere;
		this.#foF2MHz = foF2MHz;
	}

	/** dB above kT0b that the hour's median is not under. */
	leastDb(hour: number): number {
		return this.#noise.leastDb(this.#atmosphere[hour]!);
	}

	/** Where the hour's numbers stand in `parts`. */
	at(hour: number): number {
		const at = hour * NOISE_PARTS;
		if (Number.isNaN(this.parts[at])) {
			this.#noise.into(this.parts, this.#atmosphere[hour]!, this.#noise.fMHz > this.#foF2MHz[hour]!, at);
		}
		return at;
	}
}
