import type { Job, Pin } from "@skipwright/job";
import { hz } from "@skipwright/units";
import type { CandidateIndex } from "./candidateIndex.ts";
import { type Entry, entryOfCandidate, entryOfContent } from "./entry.ts";
import type { Layout } from "./layout.ts";

/** Puts what the job pins; returns in words what cannot be kept. */
export function placePins({ pins, bans }: Job, layout: Layout, index: CandidateIndex): readonly string[] {
	const conflicts: string[] = [];
	for (const pin of pins) {
		const where = `pin ${pin.bank} ${pin.place}`;
		const entry = pinned(pin, index);
		if (!layout.has(pin.bank, pin.place)) conflicts.push(`${where}: the set has no such place`);
		else if (layout.at(pin.bank, pin.place) !== null)
			conflicts.push(`${where}: another pin has this place already, for ${layout.at(pin.bank, pin.place)?.what}`);
		else if (entry === null) conflicts.push(`${where}: ${whyNone(pin, bans)}`);
		else layout.put(pin.bank, pin.place, entry);
	}
	return conflicts;
}

function whyNone({ listing = "" }: Pin, bans: readonly string[]): string {
	const ban = bans.find((id) => listing === id || listing.startsWith(`${id}/`));
	if (ban !== undefined) return `${listing} is banned by the job itself (${ban})`;
	return `no listing, channel or guard carrier ${listing} that this set can hold`;
}

function pinned({ bank, listing, content }: Pin, index: CandidateIndex): Entry | null {
	if (content !== undefined) {
		const { tag, receiveHz, transmitHz, mode } = content;
		const held = { tag, receive: hz(receiveHz), transmit: transmitHz === null ? null : hz(transmitHz), mode };
		return entryOfContent(bank, held, index, { pinned: true, found: null });
	}
	const candidate = index.byId(listing ?? "");
	return candidate === null ? null : entryOfCandidate(candidate, true);
}
