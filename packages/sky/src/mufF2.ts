import { sin } from "@skipwright/units";

/** Length of one hop, km, that no basic MUF of the F2 layer passes: ITU-R P.533 section 3.5. */
export const LONGEST_F2_HOP_KM = 4000;
/** Numbers of hops that count, from the least on: section 5.2. */
export const F2_ORDERS = 6;
/** Least foF2/foE that the equations take: section 3.5.1. */
const LEAST_RATIO = 2;
/** km. The length that M(3000)F2 is named for. */
const STANDARD_KM = 3000;

/** The F2 layer over one control point in one hour, as the MUF sees it. */
export interface F2Layer {
	readonly foF2MHz: number;
	/** Gyrofrequency at 300 km. */
	readonly gyroMHz: number;
	/** B of P.533 equation (6). */
	readonly b: number;
	/** dmax of equation (5), not capped. */
	readonly longestHopKm: number;
}

export interface F2Measured {
	readonly foF2MHz: number;
	readonly m3000: number;
	readonly foEMHz: number;
	readonly gyroMHz: number;
}

export function f2Layer({ foF2MHz, m3000, foEMHz, gyroMHz }: F2Measured): F2Layer {
	const x = Math.max(foF2MHz / foEMHz, LEAST_RATIO);
	const b = m3000 - 0.124 + (m3000 * m3000 - 4) * (0.0215 + 0.005 * sin(7.854 / x - 1.9635));
	const perX2 = 1 / (x * x);
	const perX4 = perX2 * perX2;
	const longestHopKm = 4780 + (12610 + 2140 * perX2 - 49720 * perX4 + 688900 * perX4 * perX2) * (1 / b - 0.303);
	return { foF2MHz, gyroMHz, b, longestHopKm };
}

/** dmax as the basic MUF takes it. */
export function longestHopKm(layer: F2Layer): number {
	return Math.min(layer.longestHopKm, LONGEST_F2_HOP_KM);
}

/** C_d of equation (4): 0 for no distance, 1 for the longest hop. */
export function distanceShare(hopKm: number, longestKm: number): number {
	const z = 1 - (2 * hopKm) / longestKm;
	return 0.74 + z * (-0.591 + z * (-0.424 + z * (-0.09 + z * (0.088 + z * (0.181 + z * 0.096)))));
}

/** C_3000: the same for every hop under one layer. */
export function standardShare(longestKm: number): number {
	return distanceShare(STANDARD_KM, longestKm);
}

/** Basic MUF of one hop, MHz: equation (3), of the extraordinary wave. @param longestKm dmax @param standard from `standardShare` of it */
export function f2MufMHz({ foF2MHz, gyroMHz, b }: F2Layer, hopKm: number, longestKm: number, standard = standardShare(longestKm)): number {
	const share = distanceShare(hopKm, longestKm) / standard;
	return (1 + share * (b - 1)) * foF2MHz + (gyroMHz / 2) * (1 - hopKm / longestKm);
}

/** The same for 3000 km: near M(3000)F2 times foF2. */
export function f2Muf3000MHz(layer: F2Layer): number {
	return f2MufMHz(layer, STANDARD_KM, longestHopKm(layer));
}

/** MUF of a path longer than one hop, MHz, as one control point sees it: that of the longest hop. */
export function f2MufOfLongestHopMHz(layer: F2Layer): number {
	const longest = longestHopKm(layer);
	return f2MufMHz(layer, longest, longest);
}
