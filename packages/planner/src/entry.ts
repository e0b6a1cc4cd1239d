import { channelsAt, guardsAt } from "@skipwright/rules";
import type { PlaceContent, Row } from "@skipwright/set";
import { formatKhz } from "@skipwright/units";
import { type Candidate, namingOf, type ScanKind, type Want } from "./candidate.ts";
import type { CandidateIndex } from "./candidateIndex.ts";
import type { Content } from "./contentKey.ts";
import { isNamed } from "./isNamed.ts";
import { marineBand } from "./marineBand.ts";
import type { WrongRow } from "./reviewAsFound.ts";

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

/** What a wrong row was meant to be. Its tag stays where it says nothing that is not so: it is what the owner knows. */
export function entryOfMeant({ row, why }: WrongRow, candidate: Candidate): Entry {
	const entry = entryOfCandidate(candidate);
	const notes = [...entry.notes, `put right, ${why}`];
	const named = candidate.sources.find((source) => isNamed(row.tag, source));
	// the checks ask a guard word of a place that sends on a guard carrier
	if (candidate.want === "guard" || (named === undefined && candidate.naming === null)) return { ...entry, notes };
	const { what, tags } = named ?? namingOf(candidate);
	return { ...entry, what, tagTexts: figuresAgree(row.tag, candidate) ? [...leadingWords(row.tag), ...tags] : tags, notes };
}

/** "A B C", "A B", "A": what an owner wrote, shorter and shorter. */
export function leadingWords(tag: string): readonly string[] {
	const words = tag.trim().split(/\s+/);
	return words.map((_, i) => words.slice(0, words.length - i).join(" "));
}

/** Whether every figure in a tag is one that the candidate goes by: dial or published kilohertz, whole or not, band or channel. */
function figuresAgree(tag: string, { content, sources }: Candidate): boolean {
	const frequencies = [content.receive, ...sources.map(({ listing }) => listing.hz)];
	const known = new Set([
		...frequencies.flatMap((frequency) => [
			formatKhz(frequency),
			String(Math.floor(frequency / 1_000)),
			String(Math.floor(frequency / 1_000_000)),
		]),
		...sources.map(({ listing }) => String(listing.channel)),
	]);
	return (tag.match(/\d+(\.\d+)?/g) ?? []).every((figure) => known.has(figure));
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

/** By the mode, and for speech by what Appendix 17 and the guard table say of the carrier. */
function scanOf({ receive, transmit, mode }: Content): ScanKind | null {
	if (mode === "FSK") return "data";
	if (mode === "CW" || mode === "AM") return "timed";
	return transmit !== null || channelsAt(receive).length > 0 || guardsAt(receive).length > 0 ? "speech" : null;
}

function channelText({ receive, transmit }: Content): string {
	const pair = channelsAt(receive).find(({ channel }) => transmit === null || channel.ship === transmit);
	if (pair === undefined) return `${formatKhz(receive)} kHz, as found`;
	const { number, use } = pair.channel;
	if (number !== null && use !== "simplex") return `channel ${number}`;
	return `${pair.side === "both" || use.startsWith("ship") ? "ship to ship" : "voice"}, ${formatKhz(receive)} kHz`;
}
