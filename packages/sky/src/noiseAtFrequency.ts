import { MEMORY } from "./fromMemory.ts";
import { type AtmosphericLaw, atmosphericLaw } from "./noiseAtmospheric.ts";
import { addNoise, meanOverMedian, type NoiseSource, noiseOfSums, powerOf, SUMS } from "./noiseCombined.ts";
import { galacticNoise } from "./noiseGalactic.ts";
import { type ManMadeClass, manMadeNoise } from "./noiseManMade.ts";

const { night, day } = MEMORY.atmosphericByFrequency.value;

export interface NoiseSite {
	readonly fMHz: number;
	readonly manMade: ManMadeClass;
	/** dB above kT0b of the receiver's own noise before its aerial's losses, as `receiverNoiseDb` gives it; absent: none. */
	readonly receiverDb?: number;
}

/** The noise of one frequency and site, ready for many hours: nothing is allocated in a call. */
export interface NoiseAtFrequency {
	/**
	 * Writes median (dB above kT0b), upper and lower decile (dB from it) to out[0..2], in place.
	 * @param fam1Db as `atmosphericAt1MHz`
	 * @param dayShare as `atmosphericDayShare`
	 * @param galactic whether fMHz lies above the critical frequency overhead
	 */
	readonly into: (out: Float64Array, fam1Db: number, dayShare: number, galactic: boolean) => void;
}

export function noiseAtFrequency({ fMHz, manMade, receiverDb }: NoiseSite): NoiseAtFrequency {
	const made = factors(manMadeNoise(manMade, fMHz));
	const fromGalaxy = factors(galacticNoise(fMHz));
	const nightLaw = atmosphericLaw("night", fMHz);
	const dayLaw = atmosphericLaw("day", fMHz);
	const receiverPower = receiverDb === undefined ? 0 : powerOf(receiverDb);
	const sums = new Float64Array(SUMS);
	const into = (out: Float64Array, fam1Db: number, dayShare: number, galactic: boolean): void => {
		sums.fill(0);
		addNoise(sums, made.power, made.upper, made.lower);
		if (galactic) addNoise(sums, fromGalaxy.power, fromGalaxy.upper, fromGalaxy.lower);
		const atmospheric = powerOf(atmosphericMedian(nightLaw, dayLaw, fam1Db, dayShare));
		addNoise(sums, atmospheric, meanOverMedian(upperDecile(dayShare)), meanOverMedian(lowerDecile(dayShare)));
		if (receiverPower > 0) addNoise(sums, receiverPower, 1, 1);
		noiseOfSums(out, sums);
	};
	return { into };
}

/** Atmospheric noise alone, in the same arguments. */
export function atmosphericNoise(fMHz: number, fam1Db: number, dayShare: number): NoiseSource {
	const medianDb = atmosphericMedian(atmosphericLaw("night", fMHz), atmosphericLaw("day", fMHz), fam1Db, dayShare);
	return { medianDb, upperDecileDb: upperDecile(dayShare), lowerDecileDb: lowerDecile(dayShare) };
}

function factors({ medianDb, upperDecileDb, lowerDecileDb }: NoiseSource) {
	return { power: powerOf(medianDb), upper: meanOverMedian(upperDecileDb), lower: meanOverMedian(lowerDecileDb) };
}

function atmosphericMedian(nightLaw: AtmosphericLaw, dayLaw: AtmosphericLaw, fam1Db: number, dayShare: number): number {
	const byNight = nightLaw.slope * fam1Db + nightLaw.level;
	const byDay = dayLaw.slope * fam1Db + dayLaw.level;
	return byNight + dayShare * (byDay - byNight);
}

function upperDecile(dayShare: number): number {
	return night.upperDecile + dayShare * (day.upperDecile - night.upperDecile);
}

function lowerDecile(dayShare: number): number {
	return night.lowerDecile + dayShare * (day.lowerDecile - night.lowerDecile);
}
