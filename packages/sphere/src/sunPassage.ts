import { dayStartMs, type IsoDate, MINUTES_PER_DAY, type Position } from "@skipwright/units";
import { MINUTES_PER_DEGREE } from "./localMeanTime.ts";
import { subsolarPoint } from "./subsolarPoint.ts";
import { hourAngleDeg, solarZenithDeg } from "./sun.ts";

/**
 * Degrees from the zenith of the sun's centre: at sunrise and sunset (upper limb on the horizon: 34' refraction, 16'
 * semidiameter) and at the ends of the twilights, as almanacs define them (from memory).
 */
export const ZENITH_DEG = { sunrise: 90 + 50 / 60, civil: 96, nautical: 102, astronomical: 108 } as const;

/** One local day's passages of the sun through a zenith angle. Minutes after 0000 UTC of the date; under 0 or over 1440 where the local day reaches over. */
export interface SunPassage {
	/** Upper transit: local apparent noon. */
	readonly noonMin: number;
	/** null when the sun does not come up through the angle between local midnight and noon. */
	readonly riseMin: number | null;
	/** null when the sun does not go down through the angle between local noon and midnight. */
	readonly setMin: number | null;
	/** Where the sun is at noon: with both passages null, it stays there all day. */
	readonly noonIs: "above" | "below";
}

const MS_PER_MINUTE = 60_000;
const HALF_DAY_MIN = MINUTES_PER_DAY / 2;

/**
 * When the sun rises above a zenith angle and sets below it on the local (mean time) day with that date at `where`.
 * Good to 0.1 minute up to latitude 60; nearer the poles, where the sun grazes the angle, half a minute and at the edges of polar
 * day and night a few. That is the closed form alone: the horizon is the open sea's at eye height zero, with refraction as usual.
 * @param zenithDeg one of `ZENITH_DEG`
 */
export function sunPassage(where: Position, date: IsoDate, zenithDeg: number = ZENITH_DEG.sunrise): SunPassage {
	const startMs = dayStartMs(date);
	const sunAt = (minute: number) => subsolarPoint(startMs + minute * MS_PER_MINUTE);
	const isAbove = (minute: number) => solarZenithDeg(where, sunAt(minute)) < zenithDeg;
	const meanNoonMin = HALF_DAY_MIN - MINUTES_PER_DEGREE * where.lonDeg;
	const noonMin = meanNoonMin - MINUTES_PER_DEGREE * hourAngleDeg(where, sunAt(meanNoonMin));
	return {
		noonMin,
		riseMin: change(isAbove, noonMin - HALF_DAY_MIN, noonMin),
		setMin: change((minute) => !isAbove(minute), noonMin, noonMin + HALF_DAY_MIN),
		noonIs: isAbove(noonMin) ? "above" : "below",
	};
}

/** Minute between `from` and `to` at which `holds` turns true, to a twentieth of a second; null when it holds at both or at neither. */
function change(holds: (minute: number) => boolean, from: number, to: number): number | null {
	if (holds(from) || !holds(to)) return null;
	let before = from;
	let after = to;
	for (let halving = 0; halving < 20; halving++) {
		const middle = (before + after) / 2;
		if (holds(middle)) after = middle;
		else before = middle;
	}
	return after;
}
