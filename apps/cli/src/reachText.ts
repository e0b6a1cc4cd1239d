import { bestHours, hhmm, hoursInWords, NOT_HEARD, type ReachHour, type ReachRow, type Sunspots } from "@skipwright/sky";
import { formatKhz, hz } from "@skipwright/units";

/** Past this the listener would be told more than a monthly median knows. */
const AS_GOOD_AS_SURE = 0.99;

/** One frequency: its hours in words, and when it is best. */
export function reachLine({ signal, hours }: ReachRow, what: string): string {
	const figure = `${formatKhz(hz(Math.round(signal.fMHz * 1_000_000))).padStart(8)} kHz ${signal.emission}`;
	const about = what === "" ? "" : `\n             ${what}`;
	return `${figure}  ${hours === null ? "cannot tell: nothing is known here of this emission or frequency" : dayText(hours)}${about}`;
}

function dayText(hours: readonly ReachHour[]): string {
	const chances = hours.map(({ chance }) => chance);
	const best = bestHours(chances);
	const { chance, by } = hours[best.hour]!; // an hour of the day
	const words = hoursInWords(chances);
	if (words === NOT_HEARD) return chance < 0.01 ? words : `${words} (at most ${percent(chance)})`;
	const isAllDay = best.fromHour === 0 && best.toHour === 24;
	return isAllDay
		? `${words} (${percent(chance)}, by ${by})`
		: `${words}; best ${hhmm(best.fromHour)}-${hhmm(best.toHour)} (${percent(chance)}, by ${by})`;
}

/** A chance for people to read. @example `percent(0.123)` is `"12 %"` */
export function percent(chance: number): string {
	return chance > AS_GOOD_AS_SURE ? "over 99 %" : `${Math.round(chance * 100)} %`;
}

/** @example `"sunspot number 66, 50 to 82 by lower and higher forecasts (NOAA ...)"` */
export function sunspotsText({ r12Old, low, high, source }: Sunspots): string {
	const range = low === high ? "" : `, ${Math.round(low)} to ${Math.round(high)} by lower and higher forecasts`;
	return `sunspot number ${Math.round(r12Old)}${range} (${source})`;
}
