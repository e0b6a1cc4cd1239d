import { airtimeOf, type Directory, type Listing, scheduleKnown, scheduleOf, stationOf } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import type { Hearing } from "./hearing.ts";
import { isRelevant } from "./relevance.ts";

export const HOURS_PER_DAY = 24;

/** Share of each hour taken where a station is known to send but not when. Own choice: about an hour a day in all. */
const UNKNOWN_TIMES_SHARE = 1 / HOURS_PER_DAY;
/** Share of a listing's worth that counts where nobody knows whether it still sends. Own choice. */
const UNKNOWN_STATUS_SHARE = 0.5;

/**
 * How far a listing is heard along a voyage: for each sample and UTC hour, in that order, the share of the hour in which it is on the air and
 * heard, 0 to 1; nothing where it speaks of other waters. Null where it cannot be told.
 */
export function coverageOf(
	directory: Directory,
	listing: Listing,
	samples: readonly VoyageSample[],
	hearing: Hearing,
): Float64Array | null {
	const from = { listing, station: stationOf(directory, listing) };
	const known = scheduleKnown(scheduleOf(listing));
	const cells = new Float64Array(samples.length * HOURS_PER_DAY);
	if (known === "off") return cells;
	const share = listing.status === "unknown" ? UNKNOWN_STATUS_SHARE : 1;
	for (const [index, sample] of samples.entries()) {
		if (!isRelevant(listing, from.station, sample)) continue;
		const heard = new Float64Array(HOURS_PER_DAY);
		let any = false;
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			const chance = hearing.heard(from, sample, hour * 60 + 30);
			if (chance === null) return null;
			heard[hour] = chance;
			any ||= chance > 0;
		}
		if (!any) continue;
		const onAir = known === "cannot-tell" ? null : onAirShares(directory, listing, sample, known === "continuous");
		for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
			cells[index * HOURS_PER_DAY + hour] = heard[hour]! * share * (onAir === null ? UNKNOWN_TIMES_SHARE : onAir[hour]!);
		}
	}
	return cells;
}

function onAirShares(directory: Directory, listing: Listing, { date }: VoyageSample, always: boolean): Float64Array {
	const shares = new Float64Array(HOURS_PER_DAY);
	if (always) return shares.fill(1);
	for (const { fromMin, toMin } of airtimeOf(directory, listing, date)) {
		for (let hour = Math.floor(fromMin / 60); hour < Math.ceil(toMin / 60); hour++) {
			shares[hour]! += (Math.min(toMin, hour * 60 + 60) - Math.max(fromMin, hour * 60)) / 60;
		}
	}
	return shares;
}
