import type { ResolvedJob } from "@skipwright/job";
import type { Row } from "@skipwright/set";
import { chooseTag } from "./chooseTag.ts";
import { contentKey } from "./contentKey.ts";
import type { Entry } from "./entry.ts";
import type { Layout } from "./layout.ts";
import type { PlannedPlace, RemovedRow } from "./planDocument.ts";

/** A filled place with the tag that it is given. */
export interface TaggedEntry {
	readonly bank: string;
	readonly place: number;
	readonly tag: string;
	readonly entry: Entry;
}

/** Every place with a tag that is its own within the bank: tags that stand are kept, the others made. */
export function tagged(layout: Layout, profile: ResolvedJob["profile"]): readonly TaggedEntry[] {
	const taken = new Map(profile.banks.map(({ id }) => [id, new Set<string>()]));
	const claim = (bank: string, tag: string) => taken.get(bank)?.add(tag.trim().toUpperCase());
	for (const { bank, entry } of layout.all()) if (entry.tag !== null) claim(bank, entry.tag);
	return layout.all().map(({ bank, place, entry }) => {
		const tag = entry.tag ?? chooseTag(profile, entry.tagTexts, taken.get(bank) ?? new Set());
		claim(bank, tag);
		return { bank, place, tag, entry };
	});
}

/** All of a planned place but what it hears and does. */
export function plannedPlace(
	{ bank, place, tag, entry }: TaggedEntry,
	asFound: readonly Row[],
): Omit<PlannedPlace, "hears" | "serves" | "day"> {
	const { content, candidate, pinned, want, what, notes } = entry;
	const { receive: receiveHz, transmit: transmitHz, mode } = content;
	const found = asFound.findLast((row) => row.bank === bank && row.place === place);
	const same = found !== undefined && found.tag === tag && contentKey(found) === contentKey(content);
	const source = candidate?.sources.find((one) => one.what === what) ?? candidate?.sources[0];
	const listing = candidate?.want === "guard" ? candidate.id : (source?.listing.id ?? candidate?.id ?? null);
	return { bank, place, tag, receiveHz, transmitHz, mode, listing, pinned, changed: !same, what, want, notes };
}

/** Rows of the list as found of which nothing stands in the layout. */
export function removedRows(
	asFound: readonly Row[],
	filled: readonly TaggedEntry[],
	whys: ReadonlyMap<number, string>,
): readonly RemovedRow[] {
	const lines = new Set(filled.map(({ entry }) => entry.found?.line));
	const contents = new Set(filled.map(({ bank, entry }) => `${bank} ${contentKey(entry.content)}`));
	return asFound
		.filter((row) => !lines.has(row.line) && !contents.has(`${row.bank} ${contentKey(row)}`))
		.map(({ bank, place, tag, line }) => ({ bank, place, tag, why: whys.get(line) ?? "its place is pinned" }));
}
