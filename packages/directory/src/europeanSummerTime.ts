import { dayStartMs, type IsoDate, isoDate, weekday } from "@skipwright/units";

/** Minutes after 0000 UTC at which the clocks of the European Union change. Source: Directive 2000/84/EC (from memory). */
const CHANGE_MIN = 60;

/** Whether European summer time is in force: from the last Sunday of March, 0100 UTC, to the last Sunday of October, 0100 UTC. */
export function isEuropeanSummer(date: IsoDate, minute: number): boolean {
	const year = date.slice(0, 4);
	const at = dayStartMs(date) + minute * 60_000;
	return at >= changeMs(isoDate(`${year}-03-31`)) && at < changeMs(isoDate(`${year}-10-31`));
}

function changeMs(lastOfMonth: IsoDate): number {
	return dayStartMs(lastOfMonth) + (CHANGE_MIN - weekday(lastOfMonth) * 1_440) * 60_000;
}
