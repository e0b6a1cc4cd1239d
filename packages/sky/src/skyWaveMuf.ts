import { operationalRatio } from "./mufOperational.ts";
import { E_SPREAD } from "./mufSpread.ts";
import type { SkyHour } from "./skyWaveHour.ts";
import { chanceOfSupport } from "./support.ts";

/** MHz: what the days of a month hold at one hour. */
export interface MufOverDays {
	readonly medianMHz: number;
	/** Exceeded on nine days of ten: ITU-R P.1240's optimum working frequency. */
	readonly nineDaysMHz: number;
	/** Exceeded on one day of ten. */
	readonly oneDayMHz: number;
}

/** Basic MUF of the path, MHz: the layers' higher one. */
export function basicMufMHz({ eMufMHz, f2MufMHz }: SkyHour): number {
	return Math.max(eMufMHz, f2MufMHz);
}

/** Operational MUF of the path, which scatter lifts over the basic one. @param eirpDbw radiated power */
export function operationalMuf({ eMufMHz, f2MufMHz, f2Spread, season, isDay }: SkyHour, eirpDbw: number): MufOverDays {
	const byF2 = f2MufMHz * operationalRatio(season, isDay, eirpDbw);
	return {
		medianMHz: Math.max(eMufMHz, byF2),
		nineDaysMHz: Math.max(eMufMHz * E_SPREAD.lower, byF2 * f2Spread.lower),
		oneDayMHz: Math.max(eMufMHz * E_SPREAD.upper, byF2 * f2Spread.upper),
	};
}

/** Chance from 0 to 1 that a layer carries the frequency on a day, by basic MUFs: the better layer's. Says nothing of strength. */
export function supportChance({ eMufMHz, f2MufMHz, f2Spread }: SkyHour, fMHz: number): number {
	const byF2 = chanceOfSupport(fMHz, f2MufMHz, f2Spread);
	return eMufMHz === 0 ? byF2 : Math.max(byF2, chanceOfSupport(fMHz, eMufMHz, E_SPREAD));
}
