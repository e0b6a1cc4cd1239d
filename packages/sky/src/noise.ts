import { MEMORY, type MemoryId } from "./fromMemory.ts";
import { atmosphericNoise } from "./noiseAtFrequency.ts";
import { atmosphericAt1MHz, atmosphericDayShare, type PlaceAndTime } from "./noiseAtmospheric.ts";
import { combineNoise, type NoiseSource, powerOf } from "./noiseCombined.ts";
import { galacticNoise } from "./noiseGalactic.ts";
import { type ManMadeClass, manMadeNoise } from "./noiseManMade.ts";

export interface NoiseQuestion extends PlaceAndTime {
	readonly fMHz: number;
	readonly manMade: ManMadeClass;
	/** Critical frequency overhead: the galaxy is heard above it only. */
	readonly foF2MHz: number;
	/** As `receiverNoiseDb`; absent: none. */
	readonly receiverDb?: number;
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
	const fam1Db = atmosphericAt1MHz({ month, utcHour, position });
	const made = manMadeNoise(manMade, fMHz);
	const galactic = fMHz > foF2MHz ? galacticNoise(fMHz) : null;
	const atmospheric = atmosphericNoise(fMHz, fam1Db, atmosphericDayShare({ utcHour, position }));
	const receiver = receiverDb === null ? null : { medianDb: receiverDb, upperDecileDb: 0, lowerDecileDb: 0 };
	const sources = [made, galactic, atmospheric, receiver].filter((source) => source !== null);
	const threshold = SHARE_THAT_MOVES * sources.reduce((sum, { medianDb }) => sum + powerOf(medianDb), 0);
	const moves = (source: NoiseSource | null): boolean => source !== null && powerOf(source.medianDb) > threshold;
	const basis: MemoryId[] = [
		...(moves(made) ? [MEMORY.manMadeNoise.id] : []),
		...(moves(galactic) ? [MEMORY.galacticNoise.id] : []),
		...(moves(atmospheric) ? [MEMORY.atmosphericLevels.id, MEMORY.atmosphericByFrequency.id] : []),
		...(moves(receiver) ? [MEMORY.receiverNoise.id] : []),
		MEMORY.noiseCombination.id,
	];
	return {
		...combineNoise(sources),
		parts: { manMadeDb: made.medianDb, galacticDb: galactic?.medianDb ?? null, atmosphericDb: atmospheric.medianDb, receiverDb },
		basis,
	};
}
