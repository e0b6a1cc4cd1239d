import { MEMORY } from "./fromMemory.ts";
import { atmosphericAt1MHz, atmosphericDayShare, atmosphericLaw, type PlaceAndTime } from "./noiseAtmospheric.ts";
import { addNoise, clearNoise, meanOverMedian, type NoiseSource, noiseOfSums, powerOf, SUMS } from "./noiseCombined.ts";
import { galacticNoise } from "./noiseGalactic.ts";
import { type ManMadeClass, manMadeNoise } from "./noiseManMade.ts";

const { night, day } = MEMORY.atmosphericByFrequency.value;

/** The atmospheric noise of one place and hour, ready for many frequencies. */
export interface AtmosphericHour {
	/** dB above kT0b at 1 MHz. */
	readonly fam1Db: number;
	/** As `atmosphericDayShare`. */
	readonly dayShare: number;
	readonly upperDecileDb: number;
	readonly lowerDecileDb: number;
	/** Mean power over median power with the upper and with the lower decile. */
	readonly upperRatio: number;
	readonly lowerRatio: number;
}

export function atmosphericHour(place: PlaceAndTime): AtmosphericHour {
	const dayShare = atmosphericDayShare(place);
	const upperDecileDb = night.upperDecile + dayShare * (day.upperDecile - night.upperDecile);
	const lowerDecileDb = night.lowerDecile + dayShare * (day.lowerDecile - night.lowerDecile);
	const upperRatio = meanOverMedian(upperDecileDb);
	const lowerRatio = meanOverMedian(lowerDecileDb);
	return { fam1Db: atmosphericAt1MHz(place), dayShare, upperDecileDb, lowerDecileDb, upperRatio, lowerRatio };
}

export interface NoiseSite {
	readonly fMHz: number;
	readonly manMade: ManMadeClass;
	/** dB above kT0b of the receiver itself, as `receiverNoiseDb` gives it; null or absent: none. */
	readonly receiverDb?: number | null;
}

/** The noise of one frequency and site, ready for many hours. */
export interface NoiseAtFrequency {
	/** Median of the atmospheric part alone, dB above kT0b. */
	readonly atmosphericDb: (hour: AtmosphericHour) => number;
	/**
	 * Writes median (dB above kT0b), upper and lower decile (dB from it) to out[0..2], in place; allocates nothing.
	 * @param galactic whether the frequency lies above the critical frequency overhead
	 */
	readonly into: (out: Float64Array, hour: AtmosphericHour, galactic: boolean) => void;
}

export function noiseAtFrequency({ fMHz, manMade, receiverDb = null }: NoiseSite): NoiseAtFrequency {
	const made = prepared(manMadeNoise(manMade, fMHz));
	const galaxy = prepared(galacticNoise(fMHz));
	const receiverPower = receiverDb === null ? 0 : powerOf(receiverDb);
	const byNight = atmosphericLaw("night", fMHz);
	const byDay = atmosphericLaw("day", fMHz);
	const sums = new Float64Array(SUMS);
	const atmosphericDb = ({ fam1Db, dayShare }: AtmosphericHour): number => {
		const atNight = byNight.slope * fam1Db + byNight.level;
		return atNight + dayShare * (byDay.slope * fam1Db + byDay.level - atNight);
	};
	const into = (out: Float64Array, hour: AtmosphericHour, galactic: boolean): void => {
		clearNoise(sums);
		addNoise(sums, made.power, made.upperRatio, made.lowerRatio);
		if (galactic) addNoise(sums, galaxy.power, galaxy.upperRatio, galaxy.lowerRatio);
		addNoise(sums, powerOf(atmosphericDb(hour)), hour.upperRatio, hour.lowerRatio);
		if (receiverPower > 0) addNoise(sums, receiverPower, 1, 1);
		noiseOfSums(out, sums);
	};
	return { atmosphericDb, into };
}

function prepared({ medianDb, upperDecileDb, lowerDecileDb }: NoiseSource) {
	return { power: powerOf(medianDb), upperRatio: meanOverMedian(upperDecileDb), lowerRatio: meanOverMedian(lowerDecileDb) };
}
