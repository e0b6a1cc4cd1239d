import type { Position } from "@skipwright/units";
import { MEMORY } from "./fromMemory.ts";
import {
	diurnalInto,
	EVEN_COUNT,
	FOF2_SHAPE,
	GEOGRAPHIC_COUNT,
	geographicInto,
	M3000_SHAPE,
	type MapShape,
	ODD_COUNT,
} from "./mapFunctions.ts";
import { type MonthMaps, monthMaps } from "./mapMonth.ts";
import { HOURS_PER_DAY } from "./skyWaveMonth.ts";

const HALF_DAY = 12;

/** The maps at one place: their course over the day. */
export interface PointMap {
	/** Median critical frequency of the ordinary wave, MHz. @param utcHour any hour, fractions too */
	readonly foF2MHz: (utcHour: number) => number;
	/** Median factor from foF2 to the highest frequency over 3000 km. @param utcHour any hour, fractions too */
	readonly m3000F2: (utcHour: number) => number;
}

/** Many places: as many numbers in each. */
export interface MapPoints {
	readonly latDeg: Float64Array;
	readonly lonDeg: Float64Array;
	/** Of the field 300 km up: `modifiedDipDeg` of `magneticField`. */
	readonly modifiedDipDeg: Float64Array;
}

// Reused from place to place.
const geographic = new Float64Array(GEOGRAPHIC_COUNT);
const foF2Day = new Float64Array(EVEN_COUNT + ODD_COUNT);
const m3000Day = new Float64Array(M3000_SHAPE.even + M3000_SHAPE.odd);

/** Functions of the hour at 0 to 11 UTC. */
const evenByHour = new Float64Array(HALF_DAY * EVEN_COUNT);
const oddByHour = new Float64Array(HALF_DAY * ODD_COUNT);
for (let hour = 0; hour < HALF_DAY; hour++) diurnalInto(hour, evenByHour, oddByHour, hour);

/**
 * Median foF2 and M(3000)F2 over a place by the CCIR maps (ITU-R P.1239 s.2). The functions of the place are summed first, so an
 * hour costs 22 multiplications.
 * @param modifiedDipDeg of the field 300 km up, at the epoch wanted
 */
export function pointMap(ask: {
	readonly month: number;
	readonly r12: number;
	readonly position: Position;
	readonly modifiedDipDeg: number;
}): PointMap {
	const maps = monthMaps(ask.month, ask.r12);
	sumPlace(maps, ask.position.latDeg, ask.position.lonDeg, ask.modifiedDipDeg);
	const [foF2, m3000] = [foF2Day.slice(), m3000Day.slice()];
	return {
		foF2MHz: (utcHour) => atHour(FOF2_SHAPE, foF2, utcHour),
		m3000F2: (utcHour) => Math.max(MEMORY.m3000F2Floor.value, atHour(M3000_SHAPE, m3000, utcHour)),
	};
}

/**
 * The maps at a place for 0, 1, ... 23 UTC, written from `at` on into both tables: the numbers that `pointMap` gives. Nothing is allocated.
 * @param maps from `monthMaps`, which serve every place
 */
export function hourlyMapInto(
	maps: MonthMaps,
	{ latDeg, lonDeg, modifiedDipDeg }: { readonly latDeg: number; readonly lonDeg: number; readonly modifiedDipDeg: number },
	foF2MHz: Float64Array,
	m3000F2: Float64Array,
	at: number,
): void {
	sumPlace(maps, latDeg, lonDeg, modifiedDipDeg);
	hoursInto(FOF2_SHAPE, foF2Day, foF2MHz, at);
	hoursInto(M3000_SHAPE, m3000Day, m3000F2, at);
	for (let i = at; i < at + HOURS_PER_DAY; i++) m3000F2[i] = Math.max(MEMORY.m3000F2Floor.value, m3000F2[i]!);
}

/** `hourlyMapInto` at many places: place p at hour h stands at `24 p + h`. */
export function hourlyMapsInto(maps: MonthMaps, points: MapPoints, foF2MHz: Float64Array, m3000F2: Float64Array): void {
	for (let p = 0; p < points.latDeg.length; p++) {
		const place = { latDeg: points.latDeg[p]!, lonDeg: points.lonDeg[p]!, modifiedDipDeg: points.modifiedDipDeg[p]! };
		hourlyMapInto(maps, place, foF2MHz, m3000F2, p * HOURS_PER_DAY);
	}
}

/** Leaves the sums over the functions of the place, one for each function of the hour, in `foF2Day` and `m3000Day`. */
function sumPlace(maps: MonthMaps, latDeg: number, lonDeg: number, modifiedDipDeg: number): void {
	geographicInto(latDeg, lonDeg, modifiedDipDeg, geographic);
	sumsInto(maps.foF2, FOF2_SHAPE.geographic, foF2Day);
	sumsInto(maps.m3000F2, M3000_SHAPE.geographic, m3000Day);
}

/**
 * V_j = sum_k G_k U_jk. Both maps have 4 n + 1 functions of the hour: five sums together, then four and four, so that a G is fetched once
 * for them and no sum waits for itself.
 */
function sumsInto(coefficients: Float64Array, count: number, into: Float64Array): void {
	let sum = 0;
	let sumA = 0;
	let sumB = 0;
	let sumC = 0;
	let sumD = 0;
	for (let k = 0; k < count; k++) {
		const g = geographic[k]!;
		sum += g * coefficients[k]!;
		sumA += g * coefficients[count + k]!;
		sumB += g * coefficients[2 * count + k]!;
		sumC += g * coefficients[3 * count + k]!;
		sumD += g * coefficients[4 * count + k]!;
	}
	into[0] = sum;
	into[1] = sumA;
	into[2] = sumB;
	into[3] = sumC;
	into[4] = sumD;
	for (let j = 5; j < into.length; j += 4) {
		const [a, b, c, d] = [j * count, (j + 1) * count, (j + 2) * count, (j + 3) * count] as const;
		sumA = 0;
		sumB = 0;
		sumC = 0;
		sumD = 0;
		for (let k = 0; k < count; k++) {
			const g = geographic[k]!;
			sumA += g * coefficients[a + k]!;
			sumB += g * coefficients[b + k]!;
			sumC += g * coefficients[c + k]!;
			sumD += g * coefficients[d + k]!;
		}
		into[j] = sumA;
		into[j + 1] = sumB;
		into[j + 2] = sumC;
		into[j + 3] = sumD;
	}
}

function hoursInto({ even, odd }: MapShape, day: Float64Array, into: Float64Array, at: number): void {
	for (let hour = 0; hour < HALF_DAY; hour++) {
		const evens = weighed(day, 0, evenByHour, hour * EVEN_COUNT, even);
		const odds = weighed(day, even, oddByHour, hour * ODD_COUNT, odd);
		into[at + hour] = evens + odds;
		into[at + hour + HALF_DAY] = evens - odds;
	}
}

function atHour({ even, odd }: MapShape, day: Float64Array, utcHour: number): number {
	const hour = utcHour - HALF_DAY * Math.floor(utcHour / HALF_DAY);
	const later = Math.floor(utcHour / HALF_DAY) % 2 !== 0;
	const evens = new Float64Array(EVEN_COUNT);
	const odds = new Float64Array(ODD_COUNT);
	diurnalInto(hour, evens, odds, 0);
	const sum = weighed(day, 0, evens, 0, even);
	const turned = weighed(day, even, odds, 0, odd);
	return later ? sum - turned : sum + turned;
}

function weighed(day: Float64Array, from: number, functions: Float64Array, at: number, count: number): number {
	let sum = 0;
	for (let i = 0; i < count; i++) sum += day[from + i]! * functions[at + i]!;
	return sum;
}
