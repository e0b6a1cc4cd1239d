import type { Listing, Station } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";

/** One published frequency at the place it is sent from. */
export interface HeardFrom {
	readonly listing: Listing;
	readonly station: Station;
}

/** Tells what will be heard aboard. The planner takes it as an argument: a rule of thumb today, predicted reach later. */
export interface Hearing {
	/** What it rests on, for papers. */
	readonly basis: string;
	/**
	 * Chance from 0 to 1 that a broadcast is copied at a dated position.
	 * @param minute after 0000 UTC of the sample's day
	 * @returns null for "cannot tell", as where the station's position is not known
	 */
	heard(from: HeardFrom, sample: VoyageSample, minute: number): number | null;
}
