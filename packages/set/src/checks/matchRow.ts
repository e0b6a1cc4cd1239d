import type { Freshness } from "@skipwright/directory";
import type { Row } from "../types.ts";
import { FITS, type Fit } from "./expectedDials.ts";
import { type DialIndex, dialsNear, type KnownDial } from "./knownDials.ts";
import { tagNames, tagWords } from "./tagNames.ts";

/** What the receive side of a row stands for, best first; empty when it matches nothing. */
export interface Match {
	readonly best: KnownDial | null;
	/** Everything that fits as well as the best does. */
	readonly equals: readonly KnownDial[];
	/** Listings that the row tunes to, whatever the mode, as far as the best fit allows. */
	readonly fit: Fit | null;
}

/** Whether a fit tunes to what is published (if perhaps in a wrong mode), as against a slip of conversion. */
export function isTuned(fit: Fit | null): boolean {
	return fit !== null && FITS.indexOf(fit) <= FITS.indexOf("wrong-mode");
}

/**
 * Matches the receive side. Among equal fits: what the tag names, then what a row of this kind is likeliest to be
 * (a two-frequency row a channel, a receive-only row a broadcast, otherwise what the Regulations fix, which never
 * goes stale), then open before closed, fresh before stale, then by listing id.
 */
export function matchRow(row: Row, index: DialIndex, toleranceHz: number): Match {
	const words = tagWords(row.tag);
	const near = dialsNear(index, row.mode, row.receive, toleranceHz);
	const nearest = near[0]?.fit ?? null;
	const isOffset = nearest === "offset-missing" || nearest === "offset-twice";
	// one reading may be either slip of two services: what the tag names decides
	const named = isOffset ? near.find(({ known }) => tagNames(words, known.names)) : undefined;
	const fit = named?.fit ?? nearest;
	const equals = near.filter((dial) => dial.fit === fit);
	if (equals.length < 2) return { best: equals[0] ?? null, equals, fit };
	const keyed = equals.map((dial) => ({ dial, key: rank(row, words, dial) }));
	keyed.sort((a, b) => compareKeys(a.key, b.key));
	return { best: keyed[0]?.dial ?? null, equals, fit };
}

type Key = readonly (number | string)[];

const GRADES: Readonly<Record<Freshness["grade"], number>> = { fresh: 0, ageing: 1, stale: 2 };

function rank(row: Row, words: readonly string[], { known, dialHz }: KnownDial): Key {
	const { listing } = known;
	const likely =
		listing === null ? (row.transmit === null && known.channel !== null ? 2 : 1) : row.transmit === null && listing.receiveOnly ? 1 : 2;
	return [
		tagNames(words, known.names) ? 0 : 1,
		known.guard !== null ? 0 : likely,
		listing?.status === "closed" ? 1 : 0,
		GRADES[known.freshness],
		Math.abs(dialHz - row.receive),
		listing?.id ?? "",
	];
}

function compareKeys(a: Key, b: Key): number {
	for (const [i, left] of a.entries()) {
		const right = b[i]!;
		if (left !== right) return left < right ? -1 : 1;
	}
	return 0;
}
