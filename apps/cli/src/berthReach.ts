import { type Directory, type Listing, stationOf } from "@skipwright/directory";
import type { Job } from "@skipwright/job";
import type { ServiceId } from "@skipwright/rules";
import { chanceAtMinute, mapIonosphere, reachTable, type Sunspots, skyMonth, type Terminal, yearMonth } from "@skipwright/sky";
import { MINUTES_PER_DAY, type Position } from "@skipwright/units";
import { coastPower, coastTerminal, signalOf, vesselTerminal } from "./terminals.ts";

/** Services in which the vessel sends too: the worse direction holds. */
const TWO_WAY: ReadonlySet<ServiceId> = new Set(["voice-working", "dsc-watch"]);
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
	const senders = new Map<string, { readonly index: number; readonly terminal: Terminal }>();
	const rows = listings.flatMap((listing) => {
		const station = stationOf(directory, listing);
		if (station.position === null) return [];
		const { powerW } = coastPower(station, listing.service);
		const key = `${powerW} ${station.id}`;
		const sender = senders.get(key) ?? { index: senders.size, terminal: coastTerminal(station.position, powerW) };
		senders.set(key, sender);
		return [{ id: listing.id, station: sender.index, signal: signalOf(listing), isOneWay: !TWO_WAY.has(listing.service) }];
	});
	const month = yearMonth(berth.month);
	const r12 = berth.spots.r12Old;
	const { toVessel, toCoast } = reachTable({
		vessel: vesselTerminal(job),
		stations: [...senders.values()].map(({ terminal }) => terminal),
		rows,
		samples: [{ position: berth.position, month: skyMonth({ ...month, sunspots: r12 }), ionosphere: mapIonosphere({ ...month, r12 }) }],
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
