/**
 * How far bits stand out from noise, in deviations of chance: by the lead of the stronger tone, which in noise is 0.51 give or take
 * 0.28 / sqrt(bits) (measured on noise), and by the place of the bit's borders, in noise `chance` give or take 1/3.
 */
export function keyingScore(lead: number, bits: number, deviations: number, chance: number): number {
	return Math.min(6, ((lead - 0.51) * Math.sqrt(bits)) / 0.28) + 3 * (deviations - chance);
}
