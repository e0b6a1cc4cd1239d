import { auroralLossDb } from "./auroral.ts";
import { f2MufPlaces, type Ionosphere, type PointDay, pointsOf } from "./controlPoints.ts";
import type { LongHour } from "./longPath.ts";
import type { LongGeometry } from "./longPathGeometry.ts";
import { highestMHz, longF2Day } from "./longPathHighest.ts";
import { lowestMHz } from "./longPathLowest.ts";
import type { NearHour } from "./modes.ts";
import { type NearPoints, nearHour, nearPoints } from "./modesNear.ts";
import { eMufMHz } from "./mufE.ts";
import { FAR_FORM_FROM_KM, type SkyPath } from "./path.ts";
import { type Season, seasonAt } from "./season.ts";
import type { SkyMonth } from "./skyWaveMonth.ts";

/** A path in one month: what its hours share. */
export interface SkyDay {
	readonly path: SkyPath;
	readonly month: SkyMonth;
	/** Of the path's middle. */
	readonly season: Season;
	/** null from 9000 km on. */
	readonly near: NearPoints | null;
	/** null up to 7000 km, so that one of the two is there. */
	readonly long: LongDay | null;
}

/** Series by UTC hour. */
interface LongDay {
	readonly lowestMHz: readonly number[];
	readonly highestMHz: readonly number[];
	readonly gyroMHz: number;
	/** Basic MUF, of the lower end. */
	readonly f2MufMHz: readonly number[];
}

/** A path in one hour of a month, at no frequency yet. */
export interface SkyHour {
	readonly path: SkyPath;
	readonly month: SkyMonth;
	readonly utcHour: number;
	readonly near: NearHour | null;
	readonly long: LongHour | null;
	/** Basic MUF by the E layer, 0 where it carries none, and by the F2 layer. */
	readonly eMufMHz: number;
	readonly f2MufMHz: number;
	readonly season: Season;
	/** Local mean time at the path's middle, [0, 24). */
	readonly localHour: number;
	/** Auroral and other losses; 0 in the form for long paths, which has none. */
	readonly auroralDb: number;
}

export function skyDay(path: SkyPath, ionosphere: Ionosphere, month: SkyMonth): SkyDay {
	const pointAt = pointsOf(path, ionosphere);
	const near = path.km < FAR_FORM_FROM_KM ? nearPoints(path, pointAt) : null;
	const season = seasonAt(month.month, path.middle.latDeg);
	if (path.long === null) return { path, month, season, near, long: null };
	const ends = f2MufPlaces(path.km, path.long.hop.km).map(pointAt);
	return { path, month, season, near, long: longDay(path, path.long, ends, month) };
}

function longDay(path: SkyPath, geometry: LongGeometry, ends: readonly PointDay[], month: SkyMonth): LongDay {
	const gyroMHz = ends.reduce((sum, { gyro300MHz }) => sum + gyro300MHz, 0) / ends.length;
	const layers = ends.map(longF2Day);
	return {
		lowestMHz: lowestMHz(path, geometry, month, gyroMHz),
		highestMHz: lower(ends.map((point, end) => highestMHz(point, geometry.bearingDeg, layers[end]))),
		gyroMHz,
		f2MufMHz: lower(layers.map(({ mufMHz }) => mufMHz)),
	};
}

/** The lower of both ends' series, hour by hour. */
function lower([one, other]: readonly (readonly number[])[]): readonly number[] {
	return one!.map((value, hour) => Math.min(value, other![hour]!));
}

/** @param utcHour 0 to 23 */
export function skyHour({ path, month, season, near, long }: SkyDay, utcHour: number): SkyHour {
	const localHour = (((utcHour + path.middle.lonDeg / 15) % 24) + 24) % 24;
	const modes = near === null ? null : nearHour(path, near, month, utcHour);
	return {
		path,
		month,
		utcHour,
		near: modes,
		long: long === null ? null : hourOf(long, utcHour),
		eMufMHz: modes === null ? 0 : lowestOrderEMufMHz(modes),
		f2MufMHz: modes === null ? long!.f2MufMHz[utcHour]! : modes.f2MufsMHz[0]!,
		season,
		localHour,
		auroralDb: modes === null ? 0 : auroralLossDb({ pathKm: path.km, geomagneticLatDeg: path.geomagneticLatDeg, season, localHour }),
	};
}

function hourOf({ lowestMHz: lowest, highestMHz: highest, gyroMHz }: LongDay, hour: number): LongHour {
	return { lowestMHz: lowest[hour]!, highestMHz: highest[hour]!, gyroMHz };
}

function lowestOrderEMufMHz({ path, foEMHz }: NearHour): number {
	const ray = path.eRays[0];
	return ray === undefined ? 0 : eMufMHz(foEMHz, ray);
}
