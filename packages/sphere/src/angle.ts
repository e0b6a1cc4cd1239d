export const RADIANS_PER_DEGREE = Math.PI / 180;
export const DEGREES_PER_RADIAN = 180 / Math.PI;

/** Degrees brought into [-180, 180). */
export function wrap180(degrees: number): number {
	return degrees - 360 * Math.floor((degrees + 180) / 360);
}

/** Degrees brought into [0, 360). */
export function wrap360(degrees: number): number {
	const wrapped = degrees - 360 * Math.floor(degrees / 360);
	return wrapped < 360 ? wrapped : 0; // a tiny negative angle rounds up to 360
}
