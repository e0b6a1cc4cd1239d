import { GYRO_MHZ_PER_NT, magneticComponentsInto, magneticModel, modifiedDipDeg } from "@skipwright/sphere";
import { atan2, type Position } from "@skipwright/units";
import type { Ionosphere, PointDay } from "./controlPoints.ts";
import { eLayer, foEMHz } from "./foE.ts";
import { sunAt, sunOver, underSun } from "./foESun.ts";
import { phi12 } from "./indices.ts";
import { monthMaps } from "./mapMonth.ts";
import { hourlyMapInto } from "./mapPoint.ts";
import { HOURS_PER_DAY } from "./skyWaveMonth.ts";
import { MIDDLE_DAY, middleOf, type YearMonth } from "./solarMonth.ts";

const RADIANS_PER_DEGREE = Math.PI / 180;
const MS_PER_HOUR = 3_600_000;
/** km. Heights at which the field is taken: of the F2 layer, and of absorption (ITU-R P.533). */
export const F2_FIELD_KM = 300;
export const ABSORPTION_FIELD_KM = 100;

export interface IonosphereWanted extends YearMonth {
	/** Smoothed sunspot number of the old scale, as `sunspots` gives it. */
	readonly r12: number;
	/** Decimal year of the magnetic field; by default that of the month's middle. */
	readonly fieldEpoch?: number;
}

/**
 * The ionosphere of a month by the CCIR maps, the E layer of ITU-R P.1239 and the Earth's field: give it a place and it tells the
 * layers there hour by hour, with the sun of the month's 15th. Some 150 000 places a second on one core; nothing is remembered.
 * @throws RangeError for a month, sunspot number or epoch that is none
 */
export function mapIonosphere({ year, month, r12, fieldEpoch }: IonosphereWanted): Ionosphere {
	const maps = monthMaps(month, r12);
	const field = magneticModel(fieldEpoch ?? middleOf({ year, month }));
	const flux = phi12(r12);
	const dayMs = Date.UTC(year, month - 1, MIDDLE_DAY);
	const suns = Array.from({ length: HOURS_PER_DAY }, (_, hour) => sunAt(dayMs + hour * MS_PER_HOUR));
	const components = new Float64Array(6);
	const foF2Day = new Float64Array(HOURS_PER_DAY);
	const m3000Day = new Float64Array(HOURS_PER_DAY);
	return (where: Position): PointDay => {
		magneticComponentsInto(field, { latDeg: where.latDeg, lonDeg: where.lonDeg, heightKm: F2_FIELD_KM }, components, 0);
		magneticComponentsInto(field, { latDeg: where.latDeg, lonDeg: where.lonDeg, heightKm: ABSORPTION_FIELD_KM }, components, 3);
		// plain arrays: they are many, and short
		const foF2MHz = new Array<number>(HOURS_PER_DAY);
		const m3000 = new Array<number>(HOURS_PER_DAY);
		const foE = new Array<number>(HOURS_PER_DAY);
		const zenithDeg = new Array<number>(HOURS_PER_DAY);
		const place = { latDeg: where.latDeg, lonDeg: where.lonDeg, modifiedDipDeg: modifiedDipDeg(dipDeg(components), where.latDeg) };
		hourlyMapInto(maps, place, foF2Day, m3000Day, 0);
		const under = underSun(where);
		const layer = eLayer(where.latDeg, flux);
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			const sun = sunOver(under, suns[hour]!);
			foF2MHz[hour] = foF2Day[hour]!;
			m3000[hour] = m3000Day[hour]!;
			zenithDeg[hour] = sun.zenithDeg;
			foE[hour] = foEMHz(layer, sun);
		}
		const gyro = (at: number) => GYRO_MHZ_PER_NT * strength(components[at]!, components[at + 1]!, components[at + 2]!);
		return { where, foF2MHz, m3000, foEMHz: foE, zenithDeg, gyro300MHz: gyro(0), gyro100MHz: gyro(3) };
	};
}

function dipDeg(components: Float64Array): number {
	const [north, east, down] = [components[0]!, components[1]!, components[2]!];
	return atan2(down, Math.sqrt(north * north + east * east)) / RADIANS_PER_DEGREE;
}

function strength(north: number, east: number, down: number): number {
	return Math.sqrt(north * north + east * east + down * down);
}
