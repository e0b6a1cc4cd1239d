import { log10 } from "@skipwright/units";
import { absolute } from "./complex.ts";
import type { Ground } from "./groundConstants.ts";
import { farAttenuationDb, rootsNeeded } from "./groundWaveFar.ts";
import { nearAttenuation } from "./groundWaveNear.ts";
import { type Roots, residueRoots } from "./groundWaveRoots.ts";
import { type DiffractionSphere, diffractionSphere } from "./groundWaveSphere.ts";

/** dB(uV/m) at 1 km of 1 kW e.m.r.p. over perfectly conducting flat ground: 300 mV/m (ITU-R P.368-7). */
const REFERENCE_DB = 20 * log10(300_000);
/** x up to which the near form is taken: there the two forms agree within 0.003 dB over every ground (tested). */
const NEAR_UP_TO_X = 0.25;
/** MHz. Where the method is tested. */
const LOWEST_MHZ = 0.13;
const HIGHEST_MHZ = 30;

export interface GroundWavePoint {
	readonly fMHz: number;
	readonly distanceKm: number;
	readonly ground: Ground;
}

/**
 * Field in dB(uV/m) of 1 kW e.m.r.p. (a short vertical aerial without loss) over smooth homogeneous ground: van der Pol's and
 * Bremmer's residue series over an earth of 4/3 radius, Norton's flat earth with its curvature terms near the sender.
 * The sphere stands in for ITU-R P.368's atmosphere (0.3 dB or so at MF and HF, about 1 dB high at 139 kHz). The sea's waves are not
 * counted: they cost nothing below 2 MHz, most at 10 to 15 MHz. Meant from 1 km on.
 * @throws RangeError when fMHz lies outside 0.13 to 30 MHz, or the distance is not positive and finite
 */
export function groundWaveField({ fMHz, distanceKm, ground }: GroundWavePoint): number {
	return groundWaveAt(fMHz, ground)(distanceKm);
}

/** As `groundWaveField` for many distances: the roots are found once, when first needed. */
export function groundWaveAt(fMHz: number, ground: Ground): (distanceKm: number) => number {
	if (!(fMHz >= LOWEST_MHZ && fMHz <= HIGHEST_MHZ)) {
		throw new RangeError(`Cannot reckon a ground wave at ${fMHz} MHz: expected ${LOWEST_MHZ} to ${HIGHEST_MHZ} MHz`);
	}
	const sphere = diffractionSphere(fMHz, ground);
	let roots: Roots | null = null;
	return (distanceKm) => {
		if (!(distanceKm > 0 && distanceKm < Number.POSITIVE_INFINITY)) {
			throw new RangeError(`Cannot reckon a ground wave at ${distanceKm} km: expected a distance above 0 km`);
		}
		const x = sphere.xPerKm * distanceKm;
		if (x > NEAR_UP_TO_X) roots ??= residueRoots(sphere.q, rootsNeeded(NEAR_UP_TO_X));
		return REFERENCE_DB - 20 * log10(distanceKm) + attenuationDb(x, sphere, roots);
	};
}

function attenuationDb(x: number, { q }: DiffractionSphere, roots: Roots | null): number {
	return roots === null || x <= NEAR_UP_TO_X ? 20 * log10(absolute(nearAttenuation(x, q))) : farAttenuationDb(x, q, roots);
}
