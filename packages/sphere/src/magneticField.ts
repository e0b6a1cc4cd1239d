import { atan, atan2, cos, type IsoDate, type Position } from "@skipwright/units";
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from "./angle.ts";
import { COMPONENTS, magneticComponentsInto } from "./magneticComponents.ts";
import { type MagneticModel, magneticModel } from "./magneticModel.ts";

/** MHz for one nT: the gyrofrequency of an electron, e / (2 pi m), by the charge and mass of CODATA. */
export const GYRO_MHZ_PER_NT = 2.799249e-5;

/** The Earth's main field at a place, height and time. */
export interface MagneticField {
	readonly northNt: number;
	readonly eastNt: number;
	/** Positive downward. */
	readonly downNt: number;
	readonly totalNt: number;
	/** Degrees below the horizontal, -90 to 90; positive in the north. */
	readonly dipDeg: number;
	/** Degrees east of true north, -180 to 180. */
	readonly declinationDeg: number;
	/** Degrees, -90 to 90: see `modifiedDipDeg`. */
	readonly modifiedDipDeg: number;
	/** MHz of an electron in the total field. */
	readonly gyroMHz: number;
	/** MHz in the vertical part of the field: gyrofrequency times |sin dip|. */
	readonly longitudinalGyroMHz: number;
	/** True after 2030.0, past the last model's time: an answer that rests on it should say so. */
	readonly pastLastEpoch: boolean;
}

/**
 * Main field by spherical harmonics to degree 13; storms, the daily variation and rocks are not in it.
 * @param heightKm above the ellipsoid WGS 84, as `where` is geodetic: 300 for the F2 layer, 100 for absorption (ITU-R P.533 s.3.4)
 * @param when decimal year or a day, or a model from `magneticModel` that serves many places at one time
 * @throws RangeError before 1900, or for a height that is not a number of km from -10 to 2000
 */
export function magneticField(where: Position, heightKm: number, when: number | IsoDate | MagneticModel): MagneticField {
	if (!(heightKm >= -10 && heightKm <= 2000)) {
		throw new RangeError(`Cannot take ${heightKm} km as a height in the field: expected -10 to 2000`);
	}
	const model = typeof when === "object" ? when : magneticModel(when);
	const components = new Float64Array(COMPONENTS);
	magneticComponentsInto(model, { ...where, heightKm }, components, 0);
	const [northNt = 0, eastNt = 0, downNt = 0] = components;
	const horizontalNt = Math.sqrt(northNt * northNt + eastNt * eastNt);
	const totalNt = Math.sqrt(northNt * northNt + eastNt * eastNt + downNt * downNt);
	const dipDeg = atan2(downNt, horizontalNt) * DEGREES_PER_RADIAN;
	return {
		northNt,
		eastNt,
		downNt,
		totalNt,
		dipDeg,
		declinationDeg: atan2(eastNt, northNt) * DEGREES_PER_RADIAN,
		modifiedDipDeg: modifiedDipDeg(dipDeg, where.latDeg),
		gyroMHz: GYRO_MHZ_PER_NT * totalNt,
		longitudinalGyroMHz: GYRO_MHZ_PER_NT * Math.abs(downNt),
		pastLastEpoch: model.pastLastEpoch,
	};
}

/**
 * Rawer's modified dip: tan X = I / sqrt(cos latitude), with the dip I in radians (ITU-R P.1239). Between dip and latitude, it is
 * what the maps of the F2 layer are drawn along. ±90 degrees at the poles.
 */
export function modifiedDipDeg(dipDeg: number, latDeg: number): number {
	const cosLat = Math.max(0, cos(latDeg * RADIANS_PER_DEGREE));
	return atan((dipDeg * RADIANS_PER_DEGREE) / Math.sqrt(cosLat)) * DEGREES_PER_RADIAN;
}
