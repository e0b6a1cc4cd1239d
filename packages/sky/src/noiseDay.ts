import type { Position } from "@skipwright/units";
import type { Ionosphere } from "./controlPoints.ts";
import { type AtmosphericHour, atmosphericDay, type NoiseAtFrequency } from "./noiseAtFrequency.ts";
import { HOURS_PER_DAY, type SkyMonth } from "./skyWaveMonth.ts";

/** Numbers an hour in a series of noise: median above kT0b, upper and lower decile from it, dB, as `NoiseAtFrequency` writes them. */
const PARTS = 3;
const DAY_PARTS = HOURS_PER_DAY * PARTS;

/** The sky of one month. */
export interface SkyOfMonth {
	readonly month: SkyMonth;
	readonly ionosphere: Ionosphere;
}

/** Noise of one place and month by frequency and hour: asked for often, each worked out once and only when needed. */
export class NoiseOfPlace {
	readonly #atmosphere: readonly AtmosphericHour[];
	readonly #foF2MHz: ArrayLike<number>;
	readonly #days = new Map<NoiseAtFrequency, NoiseDay>();
	/** Of all its days: one array for all, as they are many, and short. */
	readonly #parts: Float64Array;

	/** @param most days that are asked for */
	constructor({ month: { month }, ionosphere }: SkyOfMonth, position: Position, most: number) {
		this.#atmosphere = atmosphericDay({ month, position });
		this.#foF2MHz = ionosphere(position).foF2MHz;
		this.#parts = new Float64Array(most * DAY_PARTS).fill(Number.NaN);
	}

	day(noise: NoiseAtFrequency): NoiseDay {
		const before = this.#days.get(noise);
		if (before !== undefined) return before;
		const day = new NoiseDay(noise, this.#atmosphere, this.#foF2MHz, this.#parts, this.#days.size * DAY_PARTS);
		this.#days.set(noise, day);
		return day;
	}
}

/** Noise of one place, month and frequency. */
export class NoiseDay {
	readonly #noise: NoiseAtFrequency;
	readonly #atmosphere: readonly AtmosphericHour[];
	readonly #foF2MHz: ArrayLike<number>;
	readonly #from: number;
	/** `PARTS` numbers an hour, from where `at` says; NaN until then. */
	readonly parts: Float64Array;

	constructor(
		noise: NoiseAtFrequency,
		atmosphere: readonly AtmosphericHour[],
		foF2MHz: ArrayLike<number>,
		parts: Float64Array,
		from: number,
	) {
		this.#noise = noise;
		this.#atmosphere = atmosphere;
		this.#foF2MHz = foF2MHz;
		this.parts = parts;
		this.#from = from;
	}

	/** dB above kT0b that the hour's median is not under. */
	leastDb(hour: number): number {
		return this.#noise.leastDb(this.#atmosphere[hour]!);
	}

	/** Where the hour's numbers stand in `parts`: median above kT0b, upper and lower decile from it, dB. */
	at(hour: number): number {
		const at = this.#from + hour * PARTS;
		if (Number.isNaN(this.parts[at])) {
			this.#noise.into(this.parts, this.#atmosphere[hour]!, this.#noise.fMHz > this.#foF2MHz[hour]!, at);
		}
		return at;
	}
}
