import { channelsAt } from "@skipwright/rules";
import { WANT_ORDER } from "./candidate.ts";
import { SIMPLEX_CALLING_HZ } from "./candidates.ts";
import type { Entry } from "./entry.ts";

/**
 * Entries in the order of use, in which they stand in a block: guard carriers, carriers for calling, then by want, band and figure; ties by
 * id. What is in nobody's list comes last.
 */
export function inUseOrder<One extends Entry>(entries: readonly One[]): readonly One[] {
	return entries.toSorted(
		(a, b) =>
			classOf(a) - classOf(b) ||
			wantRank(a) - wantRank(b) ||
			a.bandMhz - b.bandMhz ||
			a.content.receive - b.content.receive ||
			byText(a.candidate?.id ?? "", b.candidate?.id ?? "") ||
			byText(a.content.mode, b.content.mode) ||
			(a.found?.line ?? 0) - (b.found?.line ?? 0),
	);
}

function classOf(entry: Entry): number {
	return entry.want === "guard" ? 0 : isForCalling(entry) ? 1 : 2;
}

function isForCalling({ want, content: { receive, transmit } }: Entry): boolean {
	if (want === "ship-calling") return SIMPLEX_CALLING_HZ.includes(receive);
	if (want !== "coast-calling") return false;
	return channelsAt(receive).some(({ channel, side }) => channel.use === "duplex-calling" && side === "coast" && transmit === channel.ship);
}

function wantRank({ want }: Entry): number {
	return want === null ? WANT_ORDER.length : WANT_ORDER.indexOf(want);
}

function byText(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0;
}
