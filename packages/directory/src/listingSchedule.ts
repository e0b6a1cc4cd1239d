import type { IsoDate } from "@skipwright/units";
import { assumedLengthMin } from "./assumedLength.ts";
import { dayHoursOf } from "./dayHours.ts";
import { stationOf } from "./directory.ts";
import { readFinePrint } from "./finePrint.ts";
import { airtime, type Interval, type Occurrence, occurrences } from "./occurrences.ts";
import { parseSchedule } from "./parseSchedule.ts";
import type { Schedule } from "./schedule.ts";
import type { Directory, Listing } from "./types.ts";

const parsed = new WeakMap<Listing, Schedule>();

/** The schedule of a listing with what its finer remarks, its service and its station add. Parsed once per listing object. */
export function scheduleOf(listing: Listing): Schedule {
	const known = parsed.get(listing);
	if (known !== undefined) return known;
	const schedule: Schedule = {
		...parseSchedule(listing.status === "closed" ? "closed" : listing.schedule),
		fine: readFinePrint(listing.notes),
		assumedLengthMin: assumedLengthMin(listing.service),
		dayHours: dayHoursOf(listing.stationId),
	};
	parsed.set(listing, schedule);
	return schedule;
}

/** `occurrences` of a listing at its own station; a closed listing has none. */
export function occurrencesOf(directory: Directory, listing: Listing, date: IsoDate): readonly Occurrence[] {
	return occurrences(scheduleOf(listing), date, stationOf(directory, listing).position);
}

/** `airtime` of a listing at its own station; a closed listing has none. */
export function airtimeOf(directory: Directory, listing: Listing, date: IsoDate): readonly Interval[] {
	return airtime(scheduleOf(listing), date, stationOf(directory, listing).position);
}
