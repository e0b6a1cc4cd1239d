import { byHour } from "./byHour.ts";
import { MEMORY } from "./fromMemory.ts";
import { type AtmosphericPlace, atmosphericLaw, atmosphericPlace, type PlaceAndTime } from "./noiseAtmospheric.ts";
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

export function atmosphericHour({ month, utcHour, position }: PlaceAndTime): AtmosphericHour {
	return hourOf(atmosphericPlace({ month, position }), utcHour);
}

/** 0, 1, ... 23 UTC of one place: the same as `atmosphericHour`. */
export function atmosphericDay(where: Omit<PlaceAndTime, "utcHour">): readonly AtmosphericHour[] {
	const place = atmosphericPlace(where);
	return byHour((utcHour) => hourOf(place, utcHour));
}

function hourOf(place: AtmosphericPlace, utcHour: number): AtmosphericHour {
	const dayShare = place.dayShare(utcHour);
	const upperDecileDb = night.upperDecile + dayShare * (day.upperDecile - night.upperDecile);
	const lowerDecileDb = night.lowerDecile + dayShare * (day.lowerDecile - night.lowerDecile);
	const upperRatio = meanOverMedian(upperDecileDb);
	const lowerRatio = meanOverMedian(lowerDecileDb);
	return { fam1Db: place.at1MHz(utcHour), dayShare, upperDecileDb, lowerDecileDb, upperRatio, lowerRatio };
}

export interface NoiseSite {
	readonly fMHz: number;
	readonly manMade: ManMadeClass;
	/** dB above kT0b of the receiver itself, as `receiverNoiseDb` gives it; null or absent: none. */
	readonly receiverDb?: number | null;
}

/** The noise of one frequency and site, ready for many hours. */
export interface NoiseAtFrequency {
	readonly fMHz: number;
	/** Median of the atmospheric part alone, dB above kT0b. */
	readonly atmosphericDb: (hour: AtmosphericHour) => number;
	/** dB above kT0b that no median is under: the louder of the man-made and the atmospheric part. Asked at little cost. */
	readonly leastDb: (hour: AtmosphericHour) => number;
	/**
	 * Writes median (dB above kT0b), upper and lower decile (dB from it) to `out` from `at` on, in place; allocates nothing.
	 * @param galactic whether the frequency lies above the critical frequency overhead
	 */
	readonly into: (out: Float64Array, hour: AtmosphericHour, galactic: boolean, at?: number) => void;
}

export function noiseAtFrequency({ fMHz, manMade, receiverDb = null }: NoiseSite): NoiseAtFrequency {
	const madeNoise = manMadeNoise(manMade, fMHz);
	const made = prepared(madeNoise);
	const galaxy = prepared(galacticNoise(fMHz));
	const receiverPower = receiverDb === null ? 0 : powerOf(receiverDb);
	const byNight = atmosphericLaw("night", fMHz);
	const byDay = atmosphericLaw("day", fMHz);
	const sums = new Float64Array(SUMS);
	const atmosphericDb = ({ fam1Db, dayShare }: AtmosphericHour): number => {
		const atNight = byNight.slope * fam1Db + byNight.level;
		return atNight + dayShare * (byDay.slope * fam1Db + byDay.level - atNight);
	};
	const leastDb = (hour: AtmosphericHour): number => Math.max(madeNoise.medianDb, atmosphericDb(hour));
	const into = (out: Float64Array, hour: AtmosphericHour, galactic: boolean, at = 0): void => {
		clearNoise(sums);
		addNoise(sums, made.power, made.upperRatio, made.lowerRatio);
		if (galactic) addNoise(sums, galaxy.power, galaxy.upperRatio, galaxy.lowerRatio);
		addNoise(sums, powerOf(atmosphericDb(hour)), hour.upperRatio, hour.lowerRatio);
		if (receiverPower > 0) addNoise(sums, receiverPower, 1, 1);
		noiseOfSums(out, sums, at);
	};
	return { fMHz, atmosphericDb, leastDb, into };
}

function prepared({ medianDb, upperDecileDb, lowerDecileDb }: NoiseSource) {
	return { power: powerOf(medianDb), upperRatio: meanOverMedian(upperDecileDb), lowerRatio: meanOverMedian(lowerDecileDb) };
}
