/**
 * Monthly mean flux of the sun at 10.7 cm, smoothed over twelve months, in units of 1e-22 W/(m2 Hz), by the smoothed sunspot number of
 * the old scale (ITU-R P.371; agrees with PyIRI 0.1.6).
 */
export function phi12(r12: number): number {
	return 63.7 + r12 * (0.728 + r12 * 8.9e-4);
}
