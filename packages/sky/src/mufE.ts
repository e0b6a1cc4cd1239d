import { sin } from "@skipwright/units";
import { ABSORBING_KM } from "./absorption.ts";
import { cosElevation, legLength, secIncidence, sinElevation, slantKm } from "./elevation.ts";
import { MEMORY } from "./fromMemory.ts";
import { E_MIRROR_KM } from "./mirrorHeight.ts";
import { type Hop, hopOf } from "./pathHop.ts";

/** km. ITU-R P.533 section 3.3: no path over the one, no hop over the other, by the E layer. */
const LONGEST_E_PATH_KM = 4000;
const LONGEST_E_HOP_KM = 2000;
/** Hops more than the least number, of those that count: section 5.2. */
const E_ORDERS = [0, 1, 2] as const;

/** Sine of the elevation under which no mode counts. */
export const LEAST_SIN_ELEVATION = sin((MEMORY.lowestElevation.value * Math.PI) / 180);

/** A ray by the E layer, whose mirror stands still: all but the frequency is geometry. */
export interface ERay {
	readonly hop: Hop;
	readonly sinElevation: number;
	readonly slantKm: number;
	/** 1 / cos of its angle from the vertical at the layer and where it is absorbed. */
	readonly secAtMirror: number;
	readonly secAbsorbing: number;
	/** Whether it leaves high enough to count for the field. */
	readonly counts: boolean;
}

/** By number of hops from the least one on; none over 4000 km. */
export function eRays(pathKm: number): readonly ERay[] {
	if (pathKm > LONGEST_E_PATH_KM) return [];
	const fewest = Math.max(1, Math.ceil(pathKm / LONGEST_E_HOP_KM));
	return E_ORDERS.map((more) => eRay(hopOf(pathKm, fewest + more)));
}

function eRay(hop: Hop): ERay {
	const leg = legLength(hop, E_MIRROR_KM);
	const sine = sinElevation(hop, E_MIRROR_KM, leg);
	const cosine = cosElevation(hop, leg);
	return {
		hop,
		sinElevation: sine,
		slantKm: slantKm(hop, E_MIRROR_KM, leg),
		secAtMirror: secIncidence(cosine, E_MIRROR_KM),
		secAbsorbing: secIncidence(cosine, ABSORBING_KM),
		counts: sine >= LEAST_SIN_ELEVATION,
	};
}

/** Basic MUF of a mode by the E layer, MHz. */
export function eMufMHz(foEMHz: number, { secAtMirror }: ERay): number {
	return foEMHz * secAtMirror;
}
