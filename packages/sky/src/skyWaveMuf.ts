import { dot } from "@skipwright/sphere";
import { cos } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import { operationalRatio } from "./mufOperational.ts";
import { E_SPREAD, f2Spread } from "./mufSpread.ts";
import type { SkyHour } from "./skyWaveHour.ts";
import { chanceOfSupport, type MufSpread } from "./support.ts";

const COS_OF_NIGHT = cos((MEMORY.dayAtMiddle.value * Math.PI) / 180);

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
export function operationalMuf(hour: SkyHour, eirpDbw: number): MufOverDays {
	const { eMufMHz, f2MufMHz, season } = hour;
	const byF2 = f2MufMHz * operationalRatio(season, isDay(hour), eirpDbw);
	const spread = f2SpreadOf(hour);
	return {
		medianMHz: Math.max(eMufMHz, byF2),
		nineDaysMHz: Math.max(eMufMHz * E_SPREAD.lower, byF2 * spread.lower),
		oneDayMHz: Math.max(eMufMHz * E_SPREAD.upper, byF2 * spread.upper),
	};
}

/** Chance from 0 to 1 that a layer carries the frequency on a day, by basic MUFs: the better layer's. Says nothing of strength. */
export function supportChance(hour: SkyHour, fMHz: number): number {
	const { eMufMHz, f2MufMHz } = hour;
	const byF2 = chanceOfSupport(fMHz, f2MufMHz, f2SpreadOf(hour));
	return eMufMHz === 0 ? byF2 : Math.max(byF2, chanceOfSupport(fMHz, eMufMHz, E_SPREAD));
}

function f2SpreadOf({ path, localHour }: SkyHour): MufSpread {
	return f2Spread(path.middle.latDeg, path.reachesAurora, localHour);
}

/** Whether the sun is up over the path's middle. */
function isDay({ path, month, utcHour }: SkyHour): boolean {
	return dot(path.middleVector, month.suns[utcHour]!) > COS_OF_NIGHT;
}
