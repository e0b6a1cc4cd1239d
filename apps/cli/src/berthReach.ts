import type { Directory, Listing } from "@skipwright/directory";
import type { Job } from "@skipwright/job";
import { chanceAtMinute, reachTable, type Sunspots, yearMonth } from "@skipwright/sky";
import { MINUTES_PER_DAY, type Position } from "@skipwright/units";
import { listingRows } from "./listingRows.ts";
import { monthSky } from "./monthSky.ts";
import { vesselTerminal } from "./terminals.ts";

const HOURS_PER_DAY = 24;
const MINUTE_MS = 60_000;

/** What is heard at one place in one month. */
export interface BerthReach {
	/** Chance by UTC hour, 24, of both ways the worse where the vessel sends too; null: nothing predicts it. */
	readonly hours: (listing: string) => readonly number[] | null;
	/** The same at a moment. */
	readonly at: (listing: string, atMs: number) => number | null;
}

/** Predicted reach of some listings at a berth; stations of unknown place are left out, which is told as null. */
export function berthReach(
	job: Job,
	directory: Directory,
	listings: readonly Listing[],
	berth: { readonly position: Position; readonly month: string; readonly spots: Sunspots },
): BerthReach {
	const { rows, stations } = listingRows(listings, directory);
	const { toVessel, toCoast } = reachTable({
		vessel: vesselTerminal(job),
		stations,
		rows,
		samples: [{ position: berth.position, ...monthSky(yearMonth(berth.month), berth.spots.r12Old) }],
		bothWays: true,
	});
	const known = new Map(
		rows.map(({ id, isOneWay }, row): [string, readonly number[] | null] => {
			const day = Array.from({ length: HOURS_PER_DAY }, (_, hour) => {
				const at = row * HOURS_PER_DAY + hour;
				return isOneWay ? toVessel[at]! : Math.min(toVessel[at]!, toCoast![at]!);
			});
			return [id, day.some(Number.isNaN) ? null : day];
		}),
	);
	const hours = (listing: string) => known.get(listing) ?? null;
	return {
		hours,
		at(listing, atMs) {
			const day = hours(listing);
			return day === null ? null : chanceAtMinute(day, (atMs / MINUTE_MS) % MINUTES_PER_DAY);
		},
	};
}
