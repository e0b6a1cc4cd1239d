import { dot } from "@skipwright/sphere";
import { exp, log } from "@skipwright/units";
import { winterAnomaly } from "./absorption.ts";
import { byHour } from "./byHour.ts";
import { MEMORY } from "./fromMemory.ts";
import type { LongGeometry } from "./longPathGeometry.ts";
import type { SkyPath } from "./path.ts";
import type { SkyMonth } from "./skyWaveMonth.ts";

const { lowest, winterAtEnds, night } = MEMORY.longPath.value;

/**
 * MHz by UTC hour: how low the form for long paths reaches, f_L of ITU-R P.533 section 5.3. By day from the sun on every crossing of
 * 90 km; at dusk it decays to a night level, under which it does not go.
 * @param gyroMHz mean over the control points
 */
export function lowestMHz(path: SkyPath, geometry: LongGeometry, month: SkyMonth, gyroMHz: number): readonly number[] {
	const { crossings, secAbsorbing, slantKm } = geometry;
	const strength = ((1 + lowest.perSunspot * month.sunspots) * secAbsorbing) / log(lowest.logOf / slantKm);
	const ends = winterAtEndsOf(path, month.month);
	const anomaly = winterAnomaly(month.month, path.middle.latDeg);
	const byDay = month.suns.map((sun) => {
		let lit = 0;
		for (const crossing of crossings) {
			const height = dot(crossing, sun);
			if (height > 0) lit += Math.sqrt(height);
		}
		return (lowest.times * ends * Math.sqrt(strength * lit) - gyroMHz) * anomaly;
	});
	return withNight(byDay, Math.sqrt(path.km / night.km));
}

/**
 * The day's figure, but not under the night's: from where the day's falls through twice the night level, that twice falling by e^-0.23
 * an hour for three hours, which brings it to the level itself, and then the level. @param level MHz
 */
export function withNight(byDay: ArrayLike<number>, level: number): readonly number[] {
	return byHour((hour) => {
		const value = byDay[hour]!;
		if (value >= 2 * level) return value;
		const since = hoursSinceDusk(byDay, hour, 2 * level);
		const falling = since < night.hours ? 2 * level * exp(-night.falls * since) : level;
		return Math.max(value, falling, level);
	});
}

/** Hours since the day's figure fell through `threshold`, linear between hours; infinite when that is longer ago than matters. */
function hoursSinceDusk(byDay: ArrayLike<number>, hour: number, threshold: number): number {
	const at = (back: number) => byDay[(hour - back + byDay.length) % byDay.length]!;
	for (let back = 1; back <= night.hours; back++) {
		if (at(back) >= threshold) return back - (at(back) - threshold) / (at(back) - at(back - 1));
	}
	return Number.POSITIVE_INFINITY;
}

/** The factor I: greater in the winter of the ends' hemisphere, by half where only one end lies in it and the other near the equator. */
function winterAtEndsOf({ from, to }: SkyPath, month: number): number {
	const excess = (latitudes: readonly number[], shifted: number) => {
		if (latitudes.some((lat) => lat < -winterAtEnds.fromLat)) return 0;
		const ends = latitudes.filter((lat) => lat > winterAtEnds.fromLat).length;
		return (winterAtEnds.excess[shifted % 12]! * ends) / 2;
	};
	return 1 + excess([from.latDeg, to.latDeg], month - 1) + excess([-from.latDeg, -to.latDeg], month + 5);
}
