import { cos, pow } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";

const { strength, power, added, heightKm, perSunspot, zenithPower, zenithShare, zenithMostDeg, least } = MEMORY.absorption.value;
const { at60, fromLat, mostAtLat } = MEMORY.winterAnomaly.value;
const RADIANS = Math.PI / 180;

/** km at which a ray's slant through the absorbing layer is taken. */
export const ABSORBING_KM = heightKm;

/** How strongly the air over a place absorbs: 1 with the sun overhead and without spots, least by night. Form: `MEMORY.absorption`. */
export function absorptionIndex(zenithDeg: number, sunspots: number): number {
	const overhead = 1 + perSunspot * sunspots;
	const cosine = cos(zenithShare * Math.min(zenithDeg, zenithMostDeg) * RADIANS);
	// a power over 1 of what is under 1 is less still: by night it need not be taken
	return overhead * cosine <= least ? least : Math.max(least, overhead * pow(cosine, zenithPower));
}

/**
 * dB of absorption for each hop and each unit of the secant of the ray's angle at `ABSORBING_KM`.
 * @param index mean of `absorptionIndex` over the control points
 * @param gyroMHz their mean gyrofrequency at 100 km
 */
export function absorptionPerSecantDb(index: number, gyroMHz: number, fMHz: number): number {
	return (strength * index) / (pow(fMHz + gyroMHz, power) + added);
}

/** As `absorptionPerSecantDb`, or a little less: the power is rounded up to the square, which costs next to nothing. */
export function absorptionLeastPerSecantDb(index: number, gyroMHz: number, fMHz: number): number {
	const base = Math.max(1, fMHz + gyroMHz);
	return (strength * index) / (base * base + added);
}

/** Factor on absorption of winter days at middle latitudes, A_w of ITU-R P.533 section 5.3. @param month 1 to 12 */
export function winterAnomaly(month: number, latDeg: number): number {
	const most = at60[(latDeg >= 0 ? month - 1 : month + 5) % 12]!;
	const size = Math.abs(latDeg);
	const share = size <= mostAtLat ? (size - fromLat) / (mostAtLat - fromLat) : (90 - size) / (90 - mostAtLat);
	return 1 + (most - 1) * Math.max(0, share);
}
