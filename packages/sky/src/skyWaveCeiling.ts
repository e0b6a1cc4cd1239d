import { eAboveMufDb, f2AboveMufDb } from "./aboveMuf.ts";
import { absorptionLeastPerSecantDb } from "./absorption.ts";
import { longFieldDb } from "./longPath.ts";
import { FAR_FORM_FROM_KM, NEAR_FORM_UP_TO_KM } from "./path.ts";
import { AT_ONE_KM_DB, FIELD_TO_POWER_DB, KILOWATT_DB, NOTHING_DB } from "./skyWave.ts";
import type { SkyHour } from "./skyWaveHour.ts";

/**
 * A bound for a small part of the cost: dB that `skyWaveDb` never passes, but for the aerials' gains and the frequency. Add 10 log10 of the
 * most gain towards any elevation and take away 20 log10 of the frequency. As if all modes took the straightest way, the least absorbed one
 * and the highest MUF; between the forms, that of the stronger.
 */
export function skyWaveCeilingDb(hour: SkyHour, fMHz: number): number {
	const { km } = hour.path;
	const nearDb = km < FAR_FORM_FROM_KM ? nearCeilingDb(hour, fMHz) : NOTHING_DB;
	return km > NEAR_FORM_UP_TO_KM ? Math.max(nearDb, farCeilingDb(hour, fMHz)) : nearDb;
}

function nearCeilingDb({ path, near, auroralDb, eMufMHz }: SkyHour, fMHz: number): number {
	if (near === null) return NOTHING_DB;
	const { f2Absorbing, eAbsorbing, f2HighestMufMHz } = near;
	const index = Math.min(f2Absorbing.index, eAbsorbing.index);
	const perSecantDb = absorptionLeastPerSecantDb(index, Math.max(f2Absorbing.gyroMHz, eAbsorbing.gyroMHz), fMHz);
	let aboveMufDb = f2AboveMufDb(fMHz, f2HighestMufMHz, path.km);
	if (path.eRays.length > 0) aboveMufDb = Math.min(aboveMufDb, eAboveMufDb(fMHz, eMufMHz));
	return AT_ONE_KM_DB + path.modesDb - auroralDb - aboveMufDb - perSecantDb * path.leastSecants;
}

function farCeilingDb({ path, long }: SkyHour, fMHz: number): number {
	return long === null || path.long === null ? NOTHING_DB : longFieldDb(path.long, long, fMHz) - KILOWATT_DB + FIELD_TO_POWER_DB;
}
