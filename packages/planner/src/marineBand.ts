/** Lowest hertz of each band as fitters group places, by the marine band that lies in it. Common practice, no source. */
const FROM_MHZ: readonly (readonly [number, number])[] = [
	[22_855_001, 25],
	[19_990_000, 22],
	[17_480_000, 18],
	[14_000_000, 16],
	[10_000_000, 12],
	[7_000_000, 8],
	[5_000_000, 6],
	[3_000_000, 4],
	[1_605_000, 2],
];

/** The marine band a figure is grouped with, MHz; 0 below 1605 kHz. @example `marineBand(13_089_000)` is 12 */
export function marineBand(hertz: number): number {
	return FROM_MHZ.find(([from]) => hertz >= from)?.[1] ?? 0;
}
