import type { IsoDate } from "@skipwright/units";
import type { Occurrence } from "./occurrences.ts";
import type { Schedule } from "./schedule.ts";
import type { Directory, Listing } from "./types.ts";

/** The schedule of a listing with what its finer remarks, its service and its station add. Parsed once per listing object. */
export function scheduleOf(listing: Listing): Schedule {
	throw new Error(`not built yet: ${listing.id}`);
}

/** `occurrences` of a listing at its own station; a closed listing has none. */
export function occurrencesOf(directory: Directory, listing: Listing, date: IsoDate): readonly Occurrence[] {
	throw new Error(`not built yet: ${listing.id} ${date} ${directory.edition}`);
}
