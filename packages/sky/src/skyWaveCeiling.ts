import { log10 } from "@skipwright/units";
import { eAboveMufDb, f2AboveMufDb } from "./aboveMuf.ts";
import { absorptionLeastPerSecantDb } from "./absorption.ts";
import { longFieldDb } from "./longPath.ts";
import { F2_ORDERS } from "./modesNear.ts";
import { FAR_FORM_FROM_KM, NEAR_FORM_UP_TO_KM, type SkyPath } from "./path.ts";
import { AT_ONE_KM_DB, FIELD_TO_POWER_DB, KILOWATT_DB, NOTHING_DB } from "./skyWave.ts";
import type { SkyHour } from "./skyWaveHour.ts";

/** What bounds a path at 1 MHz whatever the hour, dB: as if no layer took anything. */
export interface SkyCeiling {
	readonly nearDb: number;
	readonly farDb: number;
}

/** @param mostGain of `PathGain`, towards any elevation */
export function skyCeiling({ km, eRays }: SkyPath, mostGain: number): SkyCeiling {
	const modes = eRays.length + F2_ORDERS;
	return {
		nearDb: 10 * log10((modes * mostGain) / (km * km)) + AT_ONE_KM_DB,
		farDb: 10 * log10(mostGain) - KILOWATT_DB + FIELD_TO_POWER_DB,
	};
}

/**
 * A bound that `skyWaveDb` never passes, for a small part of its cost: as if all modes took the straightest way, the least absorbed one
 * and the highest MUF; between the forms, that of the stronger. What it drops cannot be heard by the full sum either.
 * @param fDb 20 log10 of the frequency in MHz
 */
export function skyWaveCeilingDb(ceiling: SkyCeiling, hour: SkyHour, fMHz: number, fDb = 20 * log10(fMHz)): number {
	const { km } = hour.path;
	const nearDb = km < FAR_FORM_FROM_KM ? nearCeilingDb(ceiling, hour, fMHz) : NOTHING_DB;
	const farDb = km > NEAR_FORM_UP_TO_KM ? farCeilingDb(ceiling, hour, fMHz) : NOTHING_DB;
	return Math.max(NOTHING_DB, Math.max(nearDb, farDb) - fDb);
}

function nearCeilingDb({ nearDb }: SkyCeiling, { path, near, auroralDb, eMufMHz }: SkyHour, fMHz: number): number {
	if (near === null) return NOTHING_DB;
	const { f2Absorbing, eAbsorbing, f2HighestMufMHz } = near;
	const index = Math.min(f2Absorbing.index, eAbsorbing.index);
	const perSecantDb = absorptionLeastPerSecantDb(index, Math.max(f2Absorbing.gyroMHz, eAbsorbing.gyroMHz), fMHz);
	let aboveMufDb = f2AboveMufDb(fMHz, f2HighestMufMHz, path.km);
	if (path.eRays.length > 0) aboveMufDb = Math.min(aboveMufDb, eAboveMufDb(fMHz, eMufMHz));
	return nearDb - auroralDb - aboveMufDb - perSecantDb * path.leastSecants;
}

function farCeilingDb({ farDb }: SkyCeiling, { path, long }: SkyHour, fMHz: number): number {
	return long === null || path.long === null ? NOTHING_DB : farDb + longFieldDb(path.long, long, fMHz);
}
