import { MEMORY, type MemoryId } from "./fromMemory.ts";
import { atmosphericHour, noiseAtFrequency } from "./noiseAtFrequency.ts";
import type { PlaceAndTime } from "./noiseAtmospheric.ts";
import { type NoiseSource, powerOf } from "./noiseCombined.ts";
import { galacticNoise } from "./noiseGalactic.ts";
import { type ManMadeClass, manMadeNoise } from "./noiseManMade.ts";

export interface NoiseQuestion extends PlaceAndTime {
	readonly fMHz: number;
	readonly manMade: ManMadeClass;
	/** Critical frequency overhead: the galaxy is heard above it only. */
	readonly foF2MHz: number;
	/** As `receiverNoiseDb`; null or absent: none. */
	readonly receiverDb?: number | null;
}

export interface NoiseAnswer extends NoiseSource {
	/** Medians in dB above kT0b; null: shut out by the ionosphere, or not asked for. */
	readonly parts: {
		readonly manMadeDb: number;
		readonly galacticDb: number | null;
		readonly atmosphericDb: number;
		readonly receiverDb: number | null;
	};
	/** What from memory moved the median by a tenth of a decibel or more. */
	readonly basis: readonly MemoryId[];
}

/** A source with less of the sum than this moves it by less than 0.1 dB. */
const SHARE_THAT_MOVES = 0.023;

/**
 * Noise at a place, month, hour and frequency: median in dB above kT0b (short vertical monopole), deciles over days and hours of the
 * month; combined as ITU-R P.372. The atmospheric part is a coarse model of our own, within 10 dB or so.
 * @throws RangeError when the month is not 1 to 12 or the hour not 0 to 24
 */
export function noiseAt(question: NoiseQuestion): NoiseAnswer {
	const { month, utcHour, position, fMHz, manMade, foF2MHz, receiverDb = null } = question;
	if (!(month >= 1 && month <= 12)) throw new RangeError(`Cannot tell the noise of month ${month}: expected 1 to 12`);
	if (!(utcHour >= 0 && utcHour <= 24)) throw new RangeError(`Cannot tell the noise at hour ${utcHour}: expected 0 to 24`);
	const hour = atmosphericHour({ month, utcHour, position });
	const made = manMadeNoise(manMade, fMHz);
	const galactic = fMHz > foF2MHz ? galacticNoise(fMHz) : null;
	const site = noiseAtFrequency({ fMHz, manMade, receiverDb });
	const atmosphericDb = site.atmosphericDb(hour);
	const levels = [made.medianDb, galactic?.medianDb ?? null, atmosphericDb, receiverDb].filter((level) => level !== null);
	const threshold = SHARE_THAT_MOVES * levels.reduce((sum, level) => sum + powerOf(level), 0);
	const moves = (level: number | undefined | null): boolean => typeof level === "number" && powerOf(level) > threshold;
	const basis: MemoryId[] = [
		...(moves(made.medianDb) ? [MEMORY.manMadeNoise.id] : []),
		...(moves(galactic?.medianDb) ? [MEMORY.galacticNoise.id] : []),
		...(moves(atmosphericDb) ? [MEMORY.atmosphericLevels.id, MEMORY.atmosphericByFrequency.id] : []),
		...(moves(receiverDb) ? [MEMORY.receiverNoise.id] : []),
		MEMORY.noiseCombination.id,
	];
	const out = new Float64Array(3);
	site.into(out, hour, galactic !== null);
	return {
		medianDb: out[0]!,
		upperDecileDb: out[1]!,
		lowerDecileDb: out[2]!,
		parts: { manMadeDb: made.medianDb, galacticDb: galactic?.medianDb ?? null, atmosphericDb, receiverDb },
		basis,
	};
}
