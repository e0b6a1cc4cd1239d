import { dayStartMs, isoDate } from "@skipwright/units";

const DATE_TIME = /^(\d{4}-\d{2}-\d{2})(?:T(\d{2}):(\d{2})(?::(\d{2})(?:\.\d+)?)?(Z|[+-]\d{2}:\d{2}))?$/;
const NOON_MS = 43_200_000;

/**
 * A time of the voyage to milliseconds since 1970-01-01T00:00Z: a day (`2027-02-01`, taken as noon UTC, the ship's day)
 * or a day and time with its zone (`2027-02-01T06:30Z`, `...T06:30:00+02:00`). Parts of a second are dropped.
 * @throws SyntaxError naming the two forms
 */
export function utcTime(text: string): number {
	const match = DATE_TIME.exec(text.trim());
	const expected = `expected a day as YYYY-MM-DD or a time with its zone as YYYY-MM-DDThh:mmZ, got "${text}"`;
	if (match === null) throw new SyntaxError(expected);
	const [, day = "", hour, minute, second = "0", zone = "Z"] = match;
	const dayMs = dayStartMs(isoDate(day));
	if (hour === undefined || minute === undefined) return dayMs + NOON_MS;
	if (Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59) throw new SyntaxError(expected);
	return dayMs + (Number(hour) * 60 + Number(minute) - zoneMinutes(zone)) * 60_000 + Number(second) * 1_000;
}

function zoneMinutes(zone: string): number {
	if (zone === "Z") return 0;
	const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(4, 6));
	return zone.startsWith("-") ? -minutes : minutes;
}
