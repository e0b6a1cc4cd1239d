import { solarZenithDeg, subsolarPoint } from "@skipwright/sphere";
import type { Position } from "@skipwright/units";
import type { Ionosphere, PointDay } from "../src/controlPoints.ts";

const HOURS = 24;
const RADIANS = Math.PI / 180;

export interface Constant {
	readonly foF2MHz?: number;
	readonly m3000?: number;
	readonly foEMHz?: number;
	readonly zenithDeg?: number;
	readonly gyro300MHz?: number;
	readonly gyro100MHz?: number;
}

/** The same over every place at every hour. Made up: for tests of what must not depend on the maps. */
export function constantIonosphere(values: Constant = {}): Ionosphere {
	const { foF2MHz = 7, m3000 = 3, foEMHz = 2.5, zenithDeg = 50, gyro300MHz = 1.1, gyro100MHz = 1.2 } = values;
	const day = (value: number) => new Array<number>(HOURS).fill(value);
	const series = { foF2MHz: day(foF2MHz), m3000: day(m3000), foEMHz: day(foEMHz), zenithDeg: day(zenithDeg) };
	return (where) => ({ where, ...series, gyro300MHz, gyro100MHz });
}

/** Smooth, with a sun, a night, an equator and a pole of its own. Made up likewise. */
export function smoothIonosphere(year: number, month: number): Ionosphere {
	const suns = Array.from({ length: HOURS }, (_, hour) => subsolarPoint(Date.UTC(year, month - 1, 15, hour)));
	return (where: Position): PointDay => {
		const zenithDeg = suns.map((sun) => solarZenithDeg(where, sun));
		const light = zenithDeg.map((angle) => Math.max(0, Math.cos(angle * RADIANS)));
		const dip = Math.abs(Math.sin((where.latDeg + 11 * Math.cos((where.lonDeg + 70) * RADIANS)) * RADIANS));
		return {
			where,
			foF2MHz: light.map((share) => 4.5 + 5 * Math.sqrt(share) - 1.5 * dip),
			m3000: light.map((share) => 2.8 + 0.3 * share),
			foEMHz: light.map((share) => 0.5 + 3 * Math.sqrt(Math.sqrt(share))),
			zenithDeg,
			gyro300MHz: 0.8 + 0.7 * dip,
			gyro100MHz: 0.9 + 0.8 * dip,
		};
	};
}
