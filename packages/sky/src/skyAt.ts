import { magneticField } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";
import { eLayer, foEMHz } from "./foE.ts";
import { sunAt, sunOver, underSun } from "./foESun.ts";
import { phi12 } from "./indices.ts";
import { F2_FIELD_KM } from "./mapIonosphere.ts";
import { pointMap } from "./mapPoint.ts";
import { MIDDLE_DAY, middleOf, yearMonth } from "./solarMonth.ts";

const MS_PER_HOUR = 3_600_000;

/** The ionosphere over a place: monthly medians. */
export interface SkyAt {
	readonly foF2MHz: number;
	readonly m3000F2: number;
	readonly foEMHz: number;
	/** Of the Earth's field 300 km up. */
	readonly dipDeg: number;
	readonly modifiedDipDeg: number;
	readonly gyroMHz: number;
}

/**
 * Layers and field over a place at an hour of a month, with the sun of the month's 15th.
 * @param ask.month `YYYY-MM`
 * @param ask.utcHour 0 to 24, fractions too
 * @param ask.r12 smoothed sunspot number of the old scale: `sunspots(month).r12Old`, or the user's own
 * @param ask.fieldEpoch decimal year of the magnetic field; by default the month's middle
 * @throws SyntaxError for text that is no month; RangeError for an hour, sunspot number or epoch that is none
 */
export function skyAt(ask: {
	readonly position: Position;
	readonly month: string;
	readonly utcHour: number;
	readonly r12: number;
	readonly fieldEpoch?: number;
}): SkyAt {
	const { position, utcHour, r12 } = ask;
	if (!(utcHour >= 0 && utcHour <= 24)) throw new RangeError(`Cannot take ${utcHour} as an hour of UTC: expected 0 to 24`);
	const { year, month } = yearMonth(ask.month);
	const field = magneticField(position, F2_FIELD_KM, ask.fieldEpoch ?? middleOf({ year, month }));
	const { dipDeg, modifiedDipDeg, gyroMHz } = field;
	const maps = pointMap({ month, r12, position, modifiedDipDeg });
	const sun = sunAt(Date.UTC(year, month - 1, MIDDLE_DAY) + Math.round(utcHour * MS_PER_HOUR));
	return {
		foF2MHz: maps.foF2MHz(utcHour),
		m3000F2: maps.m3000F2(utcHour),
		foEMHz: foEMHz(eLayer(position.latDeg, phi12(r12)), sunOver(underSun(position), sun)),
		dipDeg,
		modifiedDipDeg,
		gyroMHz,
	};
}
