import { MEMORY } from "./fromMemory.ts";

const { overMuf, below60, from60 } = MEMORY.signalDeciles.value;
const HOUR = MEMORY.withinHour.value;
const GROUND_DB = MEMORY.groundWaveFading.value;

export interface NoiseDeciles {
	readonly upperDb: number;
	readonly lowerDb: number;
}

/** Which table of `MEMORY.signalDeciles`: whether the path passes geomagnetic latitude 60 or more. */
export type LatitudeClass = "below60" | "from60";

/** dB from the median up to a sky wave's upper decile from day to day. @param ratio frequency over the path's basic MUF */
export function signalUpperDb(ratio: number, latitude: LatitudeClass): number {
	return across((latitude === "from60" ? from60 : below60).upper, ratio);
}

/** dB from the median down to a sky wave's lower decile from day to day. */
export function signalLowerDb(ratio: number, latitude: LatitudeClass): number {
	return across((latitude === "from60" ? from60 : below60).lower, ratio);
}

/** Linear between the table's columns, level beyond them. */
function across(decibels: readonly number[], ratio: number): number {
	let column = 1;
	while (column < overMuf.length - 1 && ratio > overMuf[column]!) column++;
	const from = overMuf[column - 1]!;
	const share = Math.min(1, Math.max(0, (ratio - from) / (overMuf[column]! - from)));
	return decibels[column - 1]! + share * (decibels[column]! - decibels[column - 1]!);
}

/** dB from the median of signal to noise up to its upper decile, by sky wave: signal day to day, signal within the hour, noise. */
export function skyRatioUpperDb(ratio: number, latitude: LatitudeClass, noiseLowerDb: number): number {
	return root(signalUpperDb(ratio, latitude), HOUR.upper, noiseLowerDb);
}

/** dB down to its lower decile: there the noise stands high. */
export function skyRatioLowerDb(ratio: number, latitude: LatitudeClass, noiseUpperDb: number): number {
	return root(signalLowerDb(ratio, latitude), HOUR.lower, noiseUpperDb);
}

/** dB. No upper decile of signal to noise is wider: a sum of noises is spread no more than its most spread part. */
export const WIDEST_UPPER_DB = root(Math.max(...below60.upper, ...from60.upper), HOUR.upper, widestNoiseLowerDb());

function widestNoiseLowerDb(): number {
	const { manMadeNoise, galacticNoise, atmosphericByFrequency } = MEMORY;
	const sources = [...Object.values(manMadeNoise.value), galacticNoise.value, ...Object.values(atmosphericByFrequency.value)];
	return Math.max(...sources.map(({ lowerDecile }) => lowerDecile));
}

/** The same by ground wave, which does not change from day to day. */
export function groundRatioUpperDb(noiseLowerDb: number): number {
	return root(GROUND_DB, 0, noiseLowerDb);
}

export function groundRatioLowerDb(noiseUpperDb: number): number {
	return root(GROUND_DB, 0, noiseUpperDb);
}

function root(a: number, b: number, c: number): number {
	return Math.sqrt(a * a + b * b + c * c);
}
