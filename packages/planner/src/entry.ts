import { channelsAt } from "@skipwright/rules";
import type { PlaceContent, Row } from "@skipwright/set";
import { formatKhz } from "@skipwright/units";
import { type Candidate, namingOf, type ScanKind, type Want } from "./candidate.ts";
import type { CandidateIndex } from "./candidateIndex.ts";
import type { Content } from "./contentKey.ts";
import { isNamed } from "./isNamed.ts";
import { marineBand } from "./marineBand.ts";

/** What the layout puts at a place. */
export interface Entry {
	readonly content: Content;
	/** Tag that it has already, null where one is to be made. */
	readonly tag: string | null;
	/** Texts to make one of. */
	readonly tagTexts: readonly string[];
	/** What it is for; null for something of the owner's that is in no list. */
	readonly candidate: Candidate | null;
	readonly pinned: boolean;
	readonly want: Want | null;
	/** null: nothing tells, so it suits any block. */
	readonly scan: ScanKind | null;
	readonly bandMhz: number;
	readonly what: string;
	readonly notes: readonly string[];
	/** Row of the list as found that it was, where it stands or was moved. */
	readonly found: Row | null;
}

export function entryOfCandidate(candidate: Candidate, pinned = false): Entry {
	const { content, want, scan, bandMhz, notes } = candidate;
	const { what, tags } = namingOf(candidate);
	return { content, tag: null, tagTexts: tags, candidate, pinned, want, scan, bandMhz, what, notes, found: null };
}

/** Something that stands at a place already, or that the job pins as it is. `found` is the row of the list as found that it was. */
export function entryOfContent(
	bank: string,
	held: PlaceContent,
	index: CandidateIndex,
	how: { readonly pinned: boolean; readonly found: Row | null },
): Entry {
	const { receive, transmit, mode, tag } = held;
	const content = { receive, transmit, mode };
	const candidate = index.held(bank, content)[0] ?? null;
	const bandMhz = marineBand(receive);
	if (candidate === null) {
		const tagTexts = [formatKhz(receive)];
		return { content, tag, tagTexts, candidate, want: null, scan: scanOf(content), bandMhz, what: channelText(content), notes: [], ...how };
	}
	const { want, scan, notes } = candidate;
	const { what, tags } = candidate.sources.find((source) => isNamed(tag, source)) ?? namingOf(candidate);
	return { content, tag, tagTexts: tags, candidate, want, scan, bandMhz, what, notes, ...how };
}

/** By the mode, and for speech by what Appendix 17 says of the carrier. */
function scanOf({ receive, transmit, mode }: Content): ScanKind | null {
	if (mode === "FSK") return "data";
	if (mode === "CW" || mode === "AM") return "timed";
	return transmit !== null || channelsAt(receive).length > 0 ? "speech" : null;
}

function channelText({ receive, transmit }: Content): string {
	const pair = channelsAt(receive).find(({ channel }) => transmit === null || channel.ship === transmit);
	if (pair === undefined) return `${formatKhz(receive)} kHz, as found`;
	const { number, use } = pair.channel;
	if (number !== null && use !== "simplex") return `channel ${number}`;
	return `${pair.side === "both" || use.startsWith("ship") ? "ship to ship" : "voice"}, ${formatKhz(receive)} kHz`;
}
