/**
 * A length of time as people say it, from hours.
 * @example `hoursLong(1.72)` is `"1.7 hours"`, `hoursLong(0.08)` `"5 minutes"`, `hoursLong(0)` `"no time"`
 */
export function hoursLong(hours: number): string {
	if (hours === 0) return "no time";
	const minutes = Math.round(hours * 60);
	if (minutes < 1) return "under a minute";
	if (minutes < 60) return minutes === 1 ? "1 minute" : `${minutes} minutes`;
	const tenths = hours.toFixed(1);
	return tenths === "1.0" ? "1 hour" : `${tenths.replace(/\.0$/, "")} hours`;
}
