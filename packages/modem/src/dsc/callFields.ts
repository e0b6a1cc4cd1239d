import { type Position, position } from "@skipwright/units";
import type { DscArea, DscFrequency } from "./call.ts";

// Fields of a call as digits, two to a symbol. Each reader gives undefined for digits that cannot stand there.
// Source: ITU-R M.493 as digested in own words; what rests on memory says so in `call.ts`.

/** Stands in every symbol of an empty field. */
export const EMPTY = 126;

/** Comes before a position in the message (from memory of M.493). */
export const POSITION_FOLLOWS = 55;

export const NO_POSITION = "9999999999";
export const NO_TIME = "8888";

/** Nine digits and a 0. */
export function identityOf(digits: string): string | undefined {
	return digits.endsWith("0") ? digits.slice(0, 9) : undefined;
}

export function identityDigits(identity: string): string {
	if (!/^\d{9}$/.test(identity)) throw new RangeError(`Cannot send "${identity}" as an identity: expected nine digits`);
	return `${identity}0`;
}

/** Quadrant (0 NE, 1 NW, 2 SE, 3 SW), latitude ddmm, longitude dddmm. */
export function positionOf(digits: string): Position | undefined {
	const [quadrant, latDeg, latMin, lonDeg, lonMin] = numbers(digits, [1, 2, 2, 3, 2]);
	if (quadrant > 3 || latMin > 59 || lonMin > 59) return undefined;
	const [lat, lon] = [latDeg + latMin / 60, lonDeg + lonMin / 60];
	if (lat > 90 || lon > 180) return undefined;
	return position(signed(lat, quadrant >= 2), signed(lon, quadrant % 2 === 1));
}

export function positionDigits({ latDeg, lonDeg }: Position): string {
	const [lat, lon] = [Math.round(Math.abs(latDeg) * 60), Math.round(Math.abs(lonDeg) * 60)];
	return quadrantOf(latDeg, lonDeg) + sexagesimal(lat, 2) + sexagesimal(lon, 3);
}

/** UTC hhmm. */
export function timeOf(digits: string): string | undefined {
	const [hours, minutes] = [digits.slice(0, 2), digits.slice(2)];
	return Number(hours) < 24 && Number(minutes) < 60 ? `${hours}:${minutes}` : undefined;
}

export function timeDigits(time: string): string {
	const digits = time.replace(":", "");
	if (!/^\d\d:\d\d$/.test(time) || timeOf(digits) === undefined) {
		throw new RangeError(`Cannot send "${time}" as a time: expected hh:mm from 00:00 to 23:59`);
	}
	return digits;
}

/** Quadrant, latitude dd and longitude ddd of the north-west corner, degrees south, degrees east. */
export function areaOf(digits: string): DscArea | undefined {
	const [quadrant, lat, lon, heightDeg, widthDeg] = numbers(digits, [1, 2, 3, 2, 2]);
	if (quadrant > 3 || lat > 90 || lon > 180) return undefined;
	return { northDeg: signed(lat, quadrant >= 2), westDeg: signed(lon, quadrant % 2 === 1), heightDeg, widthDeg };
}

export function areaDigits({ northDeg, westDeg, heightDeg, widthDeg }: DscArea): string {
	const whole = [northDeg, westDeg, heightDeg, widthDeg].every(Number.isInteger);
	const fits = Math.abs(northDeg) <= 90 && Math.abs(westDeg) <= 180 && heightDeg >= 0 && heightDeg <= 99 && widthDeg >= 0 && widthDeg <= 99;
	if (!whole || !fits) {
		throw new RangeError(
			`Cannot send an area at ${northDeg}, ${westDeg} of ${heightDeg} by ${widthDeg} degrees: expected whole degrees, 0 to 99 in extent`,
		);
	}
	const corner = quadrantOf(northDeg, westDeg) + padded(Math.abs(northDeg), 2) + padded(Math.abs(westDeg), 3);
	return corner + padded(heightDeg, 2) + padded(widthDeg, 2);
}

/** Digits of a frequency field by its first symbol, or null where no such field begins. */
export function frequencyWidth(first: number): number | null {
	if (first <= 39 || first === 90) return 6;
	return first <= 49 ? 8 : null;
}

/** Six digits in steps of 100 Hz; 4 and seven digits in steps of 10 Hz; 3 and an HF channel; 90 and a VHF channel. */
export function frequencyOf(digits: string): DscFrequency {
	if (digits.length === 8) return { hz: Number(digits.slice(1)) * 10 };
	if (digits.startsWith("3")) return { hfChannel: Number(digits.slice(1)) };
	return digits.startsWith("90") ? { vhfChannel: Number(digits.slice(2)) } : { hz: Number(digits) * 100 };
}

export function frequencyDigits(frequency: DscFrequency): string {
	if ("hfChannel" in frequency) return `3${bounded(frequency.hfChannel, 5, "an HF channel")}`;
	if ("vhfChannel" in frequency) return `90${bounded(frequency.vhfChannel, 4, "a VHF channel")}`;
	const { hz } = frequency;
	if (hz % 100 === 0 && hz < 30_000_000) return bounded(hz / 100, 6, "a frequency in steps of 100 Hz");
	return `4${bounded(hz / 10, 7, "a frequency in steps of 10 Hz")}`;
}

function bounded(value: number, digits: number, what: string): string {
	if (!Number.isInteger(value) || value < 0 || String(value).length > digits) {
		throw new RangeError(`Cannot send ${value} as ${what}: expected a whole number of at most ${digits} digits`);
	}
	return padded(value, digits);
}

function numbers(digits: string, widths: readonly [number, number, number, number, number]): [number, number, number, number, number] {
	let at = 0;
	return widths.map((width) => {
		at += width;
		return Number(digits.slice(at - width, at));
	}) as [number, number, number, number, number]; // as many as widths
}

function quadrantOf(latDeg: number, lonDeg: number): string {
	return String((latDeg < 0 ? 2 : 0) + (lonDeg < 0 ? 1 : 0));
}

function signed(value: number, negative: boolean): number {
	return negative && value > 0 ? -value : value;
}

function sexagesimal(minutes: number, width: number): string {
	return padded(Math.floor(minutes / 60), width) + padded(minutes % 60, 2);
}

function padded(value: number, width: number): string {
	return String(value).padStart(width, "0");
}
