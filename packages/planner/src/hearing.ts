import type { Listing, Station } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";

/** One published frequency at the place it is sent from. */
export interface HeardFrom {
	readonly listing: Listing;
	readonly station: Station;
}

/** Tells what will be heard aboard. The planner takes it as an argument. */
export interface Hearing {
	/** What it rests on, for papers. */
	readonly basis: string;
	/**
	 * Chance from 0 to 1 that a broadcast is copied at a dated position.
	 * @param minute after 0000 UTC of the sample's day
	 * @returns null for "cannot tell", as where the station's position is not known
	 */
	heard(from: HeardFrom, sample: VoyageSample, minute: number): number | null;
	/**
	 * Chance that a vessel of the same kind `SHIP_DISTANCE_NM` away, near or far, is copied, and copies, on a carrier of a marine band.
	 * @param bandMhz 2, 4, 6, 8, 12, 16, 18, 22 or 25
	 * @returns null for "cannot tell"
	 */
	heardShip(bandMhz: number, sample: VoyageSample, minute: number, distance: ShipDistance): number | null;
}

/** nm. How far off another vessel is taken to be: in the same waters, a day or two away; and over the same ocean. Own choice. */
export const SHIP_DISTANCE_NM = { near: 300, far: 1_200 } as const;
export type ShipDistance = keyof typeof SHIP_DISTANCE_NM;
