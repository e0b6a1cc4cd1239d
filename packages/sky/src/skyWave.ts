import { exp, log10 } from "@skipwright/units";
import { absorptionPerSecantDb } from "./absorption.ts";
import { MEMORY } from "./fromMemory.ts";
import { longFieldDb } from "./longPath.ts";
import { emptyRay, type NearHour, type Ray, traceE, traceF2 } from "./modes.ts";
import { eMufMHz } from "./mufE.ts";
import { FAR_FORM_FROM_KM, NEAR_FORM_UP_TO_KM } from "./path.ts";
import type { PathGain } from "./pathGain.ts";
import type { SkyHour } from "./skyWaveHour.ts";

/** dB by which 1 kW, to which fields are referred, stands over 1 W. */
export const KILOWATT_DB = 30;
/** dBW of an isotropic aerial in a field of 1 uV/m at 1 MHz: 20 log10 of lambda / (4 pi) times the field, over 30 ohms (ITU-R P.533 section 6). */
export const FIELD_TO_POWER_DB = -107.2;
/** dB. Free-space loss between isotropic aerials at 1 km and 1 MHz (ITU-R P.525). */
export const FREE_SPACE_DB = 32.45;
/** dB between sender and receiver at 1 km and 1 MHz, before all losses. */
export const AT_ONE_KM_DB = MEMORY.fieldConstant.value - KILOWATT_DB - FREE_SPACE_DB + FIELD_TO_POWER_DB - MEMORY.otherLosses.value;

/** dB. What is weaker than this against the power sent is nothing: the floor of `skyWaveDb`. */
export const NOTHING_DB = -300;

const NEPERS_PER_DB = Math.LN10 / 10;

/** Overwritten by each mode in turn. */
const ray: Ray = emptyRay();

/**
 * Median power that the receiver's aerial gives, over the power fed to the sender's, in dB: ITU-R P.533 sections 5 and 6. Modes add in
 * power. The same in both directions.
 * @param fMHz 0.5 to 30 or so
 */
export function skyWaveDb(hour: SkyHour, fMHz: number, gain: PathGain): number {
	const { km } = hour.path;
	if (km <= NEAR_FORM_UP_TO_KM) return nearFormDb(hour, fMHz, gain);
	if (km >= FAR_FORM_FROM_KM) return farFormDb(hour, fMHz, gain);
	return mixedDb(km, nearFormDb(hour, fMHz, gain), farFormDb(hour, fMHz, gain));
}

export function nearFormDb({ near, auroralDb }: SkyHour, fMHz: number, gain: PathGain): number {
	if (near === null) return NOTHING_DB;
	const sum = nearPower(near, fMHz, gain);
	return Math.max(NOTHING_DB, sum === 0 ? NOTHING_DB : 10 * log10(sum / (fMHz * fMHz)) + AT_ONE_KM_DB - auroralDb);
}

/** Sum over the modes of gain over slant range squared, less the losses that differ between modes. */
function nearPower(near: NearHour, fMHz: number, gain: PathGain): number {
	let sum = 0;
	const { eAbsorbing, f2Absorbing } = near;
	const perSecantDb = absorptionPerSecantDb(f2Absorbing.index, f2Absorbing.gyroMHz, fMHz);
	const ePerSecantDb = eAbsorbing === f2Absorbing ? perSecantDb : absorptionPerSecantDb(eAbsorbing.index, eAbsorbing.gyroMHz, fMHz);
	for (const eRay of near.path.eRays) {
		traceE(eRay, eMufMHz(near.foEMHz, eRay), fMHz, ePerSecantDb, ray);
		if (ray.fate === "counts") sum += rayPower(ray, gain);
	}
	for (let mode = 0; mode < near.f2Hops.length; mode++) {
		traceF2(near, mode, fMHz, perSecantDb, ray);
		if (ray.fate === "counts") sum += rayPower(ray, gain);
	}
	return sum;
}

/** Power by one mode that counts, but for what all modes share. */
export function rayPower({ sinElevation, slantKm, absorptionDb, aboveMufDb, groundDb }: Readonly<Ray>, gain: PathGain): number {
	return (gain.at(sinElevation) * exp(-NEPERS_PER_DB * (absorptionDb + aboveMufDb + groundDb))) / (slantKm * slantKm);
}

export function farFormDb({ path, long }: SkyHour, fMHz: number, gain: PathGain): number {
	if (long === null || path.long === null) return NOTHING_DB;
	const fieldDb = longFieldDb(path.long, long, fMHz);
	return Math.max(NOTHING_DB, fieldDb - KILOWATT_DB + 10 * log10(gain.low / (fMHz * fMHz)) + FIELD_TO_POWER_DB);
}

/** P.533 section 5.4. */
function mixedDb(km: number, nearDb: number, farDb: number): number {
	const hundredth = (decibels: number) => exp((NEPERS_PER_DB * decibels) / 10);
	const share = (km - NEAR_FORM_UP_TO_KM) / (FAR_FORM_FROM_KM - NEAR_FORM_UP_TO_KM);
	return Math.max(NOTHING_DB, 100 * log10(hundredth(nearDb) + share * (hundredth(farDb) - hundredth(nearDb))));
}
