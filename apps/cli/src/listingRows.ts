import { type Directory, type Listing, stationOf } from "@skipwright/directory";
import type { ServiceId } from "@skipwright/rules";
import type { TableRow, Terminal } from "@skipwright/sky";
import { coastPower, coastTerminal, signalOf } from "./terminals.ts";

/** Services in which the vessel sends too: the worse direction holds. */
const TWO_WAY: ReadonlySet<ServiceId> = new Set(["voice-working", "dsc-watch"]);

/** Listings as a reach table takes them. */
export interface ListingRows {
	readonly stations: readonly Terminal[];
	/** One for each listing whose station has a position, in their order. */
	readonly rows: readonly (TableRow & { readonly id: string; readonly isOneWay: boolean })[];
}

/** Listings of one station and power share a sender. */
export function listingRows(listings: readonly Listing[], directory: Directory): ListingRows {
	const senders = new Map<string, { readonly index: number; readonly terminal: Terminal }>();
	const rows = listings.flatMap((listing) => {
		const { id, powerKw, position } = stationOf(directory, listing);
		if (position === null) return [];
		const { powerW } = coastPower({ powerKw }, listing.service);
		const key = `${powerW} ${id}`;
		const sender = senders.get(key) ?? { index: senders.size, terminal: coastTerminal(position, powerW) };
		senders.set(key, sender);
		return [{ id: listing.id, station: sender.index, signal: signalOf(listing), isOneWay: !TWO_WAY.has(listing.service) }];
	});
	return { rows, stations: [...senders.values()].map(({ terminal }) => terminal) };
}
