import type { Directory, Listing } from "@skipwright/directory";
import type { Coverage } from "./choiceModel.ts";
import { listingWant } from "./listingWant.ts";

/**
 * A coast station answers a call only where its watch hears it: what its voice channels count in an hour is held down to the best of its
 * selective calling watches. A station of which no watch is known, or nothing tells how far it is heard, goes by its voice alone.
 */
export function answered(directory: Directory, coverage: Coverage): Coverage {
	const watches = Map.groupBy(
		directory.listings.filter(({ service, status }) => service === "dsc-watch" && status !== "closed"),
		({ stationId }) => stationId,
	);
	const bestWatch = (stationId: string): Float64Array | null => {
		let best: Float64Array | null = null;
		for (const watch of watches.get(stationId) ?? []) {
			const heard = coverage(watch);
			if (heard !== null) best = best === null ? heard : best.map((share, cell) => Math.max(share, heard[cell]!));
		}
		return best;
	};
	return (listing: Listing) => {
		const voice = coverage(listing);
		if (voice === null || listingWant(listing) !== "coast-calling" || listing.service === "dsc-watch") return voice;
		const best = bestWatch(listing.stationId);
		return best === null ? voice : voice.map((share, cell) => Math.min(share, best[cell]!));
	};
}
