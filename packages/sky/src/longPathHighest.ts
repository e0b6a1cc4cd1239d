import { pow } from "@skipwright/units";
import type { PointDay } from "./controlPoints.ts";
import { f2LayerAt } from "./controlPointsF2.ts";
import { MEMORY } from "./fromMemory.ts";
import { f2Muf3000MHz, f2MufOfLongestHopMHz } from "./mufF2.ts";

const { over3000, eastWest, northSouth, noonRatio } = MEMORY.longPath.value;
const HOURS = 24;
const NOON = 12;

/** The F2 layer over a control point as the form for long paths sees it, MHz by UTC hour. */
export interface LongF2Day {
	/** fg: over 3000 km, with the form's own factor. */
	readonly fgMHz: readonly number[];
	/** Basic MUF of the longest hop. */
	readonly mufMHz: readonly number[];
}

export function longF2Day(point: PointDay): LongF2Day {
	const fgMHz = new Array<number>(HOURS);
	const mufMHz = new Array<number>(HOURS);
	for (let hour = 0; hour < HOURS; hour++) {
		const layer = f2LayerAt(point, hour);
		fgMHz[hour] = over3000 * f2Muf3000MHz(layer);
		mufMHz[hour] = f2MufOfLongestHopMHz(layer);
	}
	return { fgMHz, mufMHz };
}

/**
 * MHz by UTC hour: how high the form for long paths reaches over one control point, f_M of ITU-R P.533 section 5.3: K times fg, where K
 * weighs the MUF against local noon's and the day's least.
 * @param bearingDeg of the path, at its middle
 * @param f2 of the point
 */
export function highestMHz(point: PointDay, bearingDeg: number, f2 = longF2Day(point)): readonly number[] {
	const fg = f2.fgMHz;
	let leastMHz = Number.POSITIVE_INFINITY;
	for (const value of fg) leastMHz = Math.min(leastMHz, value);
	const noonMHz = atHour(fg, NOON - point.where.lonDeg / 15);
	const toNorthSouth = awayFromEastWest(bearingDeg) / 90;
	const weight = (name: "w" | "x" | "y") => eastWest[name] + toNorthSouth * (northSouth[name] - eastWest[name]);
	const [w, x, y] = [weight("w"), weight("x"), weight("y")];
	const least = leastMHz / noonMHz;
	return fg.map((value) => value * (noonRatio + (w * value) / noonMHz + x * (pow(noonMHz / value, 1 / 3) - 1) + y * least * least));
}

/** Degrees, 0 to 90, between a bearing and the line from east to west. */
function awayFromEastWest(bearingDeg: number): number {
	const half = (((bearingDeg + 90) % 180) + 180) % 180; // 0 along east-west, 90 along north-south
	return half <= 90 ? half : 180 - half;
}

/** Linear between the hours, round the clock. */
function atHour(series: readonly number[], hour: number): number {
	const before = Math.floor(hour);
	const share = hour - before;
	return series[round(before)]! * (1 - share) + series[round(before + 1)]! * share;
}

function round(hour: number): number {
	return ((hour % HOURS) + HOURS) % HOURS;
}
