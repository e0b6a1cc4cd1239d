import type { Expectation } from "./expectation.ts";
import type { HeardItem } from "./heardItem.ts";

export interface Offset {
	/** Heard less nominal, as if on the upper sideband: positive where the dial reads high and the set sits below what it shows. */
	readonly hz: number;
	/** One sigma. */
	readonly uncertaintyHz: number;
	/** Tones do not agree by how much they are off: the recorder's clock, or another station. */
	readonly isInconsistent: boolean;
}

/** Hz either way in which a tone is taken for the nominal one. */
export const TONE_SEARCH_HZ = 100;
/** Hz by which two tones may differ beyond their uncertainty: a sky wave's own shift. Practice. */
const SKY_HZ = 1;
/** Hz of the sky's own shift and the sender, added to every uncertainty. Practice: below 1 Hz at 10 MHz. */
const LEAST_HZ = 0.5;

/** How far off tune; null where the expectation names no nominal audio, or nothing heard lies near it. */
export function measureOffset(expectation: Expectation, items: readonly HeardItem[]): Offset | null {
	const { tonesHz, audioHz, sidebandSign } = expectation;
	const nominal = audioHz === null ? tonesHz : [audioHz];
	const offsets = items.flatMap(({ audioHz: heard, uncertaintyHz }) => {
		const nearest = nominal.toSorted((a, b) => Math.abs(a - heard) - Math.abs(b - heard))[0];
		if (nearest === undefined || (audioHz === null && Math.abs(heard - nearest) > TONE_SEARCH_HZ)) return [];
		return [{ hz: sidebandSign * (heard - nearest), sigma: Math.max(uncertaintyHz, 0.01), nearest }];
	});
	if (offsets.length === 0) return null;
	const weight = offsets.reduce((sum, { sigma }) => sum + 1 / (sigma * sigma), 0);
	const mean = offsets.reduce((sum, { hz, sigma }) => sum + hz / (sigma * sigma), 0) / weight;
	const own = 1 / Math.sqrt(weight);
	const isInconsistent = offsets.some(({ hz, sigma }) => Math.abs(hz - mean) > 3 * sigma + SKY_HZ);
	return { hz: mean, uncertaintyHz: Math.sqrt(own * own + LEAST_HZ * LEAST_HZ), isInconsistent };
}
