import { log10 } from "@skipwright/units";
import type { GroundWaveTable } from "./groundWaveTable.ts";
import { type NeededSnr, neededSnr } from "./neededSnr.ts";
import { chanceOf } from "./reliabilityChance.ts";
import {
	groundRatioLowerDb,
	groundRatioUpperDb,
	type LatitudeClass,
	skyRatioLowerDb,
	skyRatioUpperDb,
	WIDEST_UPPER_DB,
} from "./reliabilitySpread.ts";
import { FIELD_TO_POWER_DB, KILOWATT_DB } from "./skyWave.ts";
import type { Signal, Terminal } from "./terminal.ts";

/** dBW. Thermal noise of 290 K in 1 Hz (kT0; ITU-R P.372). */
const THERMAL_DBW = -204;
/** Degrees: a ground wave comes in along the surface. */
const ALONG_SURFACE = 0;
/**
 * dB. The field of a ground wave holds its own reflection, and so does the gain of an aerial over sea: counted once. With it the ratio to
 * the noise is that of fields at a short monopole (ITU-R P.372: -95.5 dB), tested.
 */
const REFLECTION_DB = 20 * log10(2);

/** What one direction of a circuit needs and sends, the same at every hour. */
export interface Sending {
	/** By sky wave, which fades, and by ground wave, which hardly does. */
	readonly skyNeed: NeededSnr;
	readonly groundNeed: NeededSnr;
	/** dBW fed to the sender's aerial that counts for the need, times the aerial's efficiency. */
	readonly skyPowerDbw: number;
	readonly groundPowerDbw: number;
	/** dB between the median power of a sky wave and the noise it is held against, per 1 Hz noise figure: see `skyRatioDb`. */
	readonly skyNoiseDbw: number;
	readonly groundNoiseDbw: number;
}

/** MHz between which the method holds (ITU-R P.533 and P.372). */
const LOWEST_MHZ = 0.4;
const HIGHEST_MHZ = 30;

/** @returns null for an emission of which nothing is known, and outside the frequencies that the method is for */
export function sending(signal: Signal, sender: Terminal): Sending | null {
	if (!(signal.fMHz >= LOWEST_MHZ && signal.fMHz <= HIGHEST_MHZ)) return null;
	const options = signal.baud === undefined ? {} : { baud: signal.baud };
	const skyNeed = neededSnr(signal.emission, signal.grade, options);
	const groundNeed = neededSnr(signal.emission, signal.grade, { ...options, fading: false });
	if (skyNeed === null || groundNeed === null) return null;
	const radiatedDbw = 10 * log10(sender.powerW * sender.antenna.efficiency(signal.fMHz));
	return {
		skyNeed,
		groundNeed,
		skyPowerDbw: radiatedDbw - skyNeed.belowRatedDb,
		groundPowerDbw: radiatedDbw - groundNeed.belowRatedDb,
		skyNoiseDbw: THERMAL_DBW + 10 * log10(skyNeed.bandwidthHz),
		groundNoiseDbw: THERMAL_DBW + 10 * log10(groundNeed.bandwidthHz),
	};
}

/**
 * Chance from 0 to 1 by sky wave.
 * @param pathDb from `skyWaveDb` @param ratio frequency over the path's basic MUF @param noise at the receiver; the hour's stands from `at` on
 */
export function skyChance(sent: Sending, pathDb: number, ratio: number, latitude: LatitudeClass, noise: ArrayLike<number>, at = 0): number {
	const snrDb = sent.skyPowerDbw + pathDb - sent.skyNoiseDbw - noise[at]!;
	const neededDb = sent.skyNeed.snrDb;
	if (neededDb - snrDb > HOPELESS_DB) return 0;
	const upperDb = skyRatioUpperDb(ratio, latitude, noise[at + 2]!);
	return chanceOf({ snrDb, neededDb, upperDb, lowerDb: skyRatioLowerDb(ratio, latitude, noise[at + 1]!) });
}

/** Chance from 0 to 1 by ground wave. @param pathDb from `groundPathDb` @param noise as `skyChance` */
export function groundChance(sent: Sending, pathDb: number, noise: ArrayLike<number>, at = 0): number {
	const snrDb = sent.groundPowerDbw + pathDb - sent.groundNoiseDbw - noise[at]!;
	const neededDb = sent.groundNeed.snrDb;
	if (neededDb - snrDb > HOPELESS_DB) return 0;
	return chanceOf({ snrDb, neededDb, upperDb: groundRatioUpperDb(noise[at + 2]!), lowerDb: groundRatioLowerDb(noise[at + 1]!) });
}

/** dB from the power radiated as a ground wave to the power that the receiver's aerial gives. */
export function groundPathDb(table: GroundWaveTable, km: number, fMHz: number, receiver: Terminal): number {
	const gainDb = receiver.antenna.directivityDb(ALONG_SURFACE) - REFLECTION_DB;
	return table.fieldAt(km) - KILOWATT_DB + gainDb - 20 * log10(fMHz) + FIELD_TO_POWER_DB;
}

/** dB for rounding. */
const A_LITTLE_DB = 0.1;

/**
 * dB. A ratio that stands further under its need has no chance at all: `chanceOf` comes to 0 at 5/3 of the upper decile, and none is
 * wider than with the widest of every part.
 */
export const HOPELESS_DB = (5 / 3) * WIDEST_UPPER_DB + A_LITTLE_DB;
