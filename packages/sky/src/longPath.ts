import type { LongGeometry } from "./longPathGeometry.ts";

/** Within what frequencies ITU-R P.533's form for long paths lets one hour's signals through. */
export interface LongHour {
	/** f_L, below which absorption takes them. */
	readonly lowestMHz: number;
	/** f_M, above which the layer does not hold them. */
	readonly highestMHz: number;
	/** Mean over the control points, at 300 km. */
	readonly gyroMHz: number;
}

/** dB(uV/m) of 1 kW from an isotropic aerial: section 5.3. Far outside the two frequencies it goes below all measure, but stays finite. */
export function longFieldDb({ freeFieldDb, fixedDb }: LongGeometry, { lowestMHz, highestMHz, gyroMHz }: LongHour, fMHz: number): number {
	const lowest2 = (lowestMHz + gyroMHz) * (lowestMHz + gyroMHz);
	const highest2 = (highestMHz + gyroMHz) * (highestMHz + gyroMHz);
	const f2 = (fMHz + gyroMHz) * (fMHz + gyroMHz);
	const lost = (highest2 / (highest2 + lowest2)) * (lowest2 / f2 + f2 / highest2); // 1 at either frequency
	return freeFieldDb * (1 - lost) + fixedDb;
}
