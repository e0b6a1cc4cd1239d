import type { Mode } from "@skipwright/rules";
import { isInAppendix17Voice } from "@skipwright/rules";
import type { Row } from "../types.ts";
import { type DialIndex, dialsNear, type Known, type KnownDial } from "./knownDials.ts";
import { tagNames, tagWords } from "./tagNames.ts";

/** Hz. A list is written to a tenth of a kilohertz or finer; slips are looked for in the digits written. */
const COARSEST_DIGIT_HZ = 100;
/** Hz. A slip of one digit lands exactly; this only absorbs listings finer than the digits. */
const EXACT_HZ = 50;

/** Whether a slip of a row may be looked for here: nothing closed, no former distress traffic, no broadcast for a row that sends. */
function mayBeMeant({ guard, listing, published }: Known, sends: boolean): boolean {
	const isBroadcast = listing === null ? published.service === "navtex" || published.service === "nbdp-msi" : listing.receiveOnly;
	return guard?.kind !== "nbdp" && listing?.status !== "closed" && !(sends && isBroadcast);
}

/**
 * The one published dial that a single keying slip (one digit changed, two neighbours swapped, a moved point) would
 * turn this row into, or null when there is none or more than one. What the tag names counts first, whatever it is; inside the
 * Appendix 17 voice ranges, where every 3 kHz is a channel, nothing else does.
 * @param canReceive whether the set reaches a dial; what it cannot hear was not meant
 */
export function nearMiss(row: Row, index: DialIndex, canReceive: (dialHz: number) => boolean): KnownDial | null {
	const inVoiceRange = isVoiceMode(row.mode) && isInAppendix17Voice({ lowHz: row.receive, highHz: row.receive });
	const hits = new Map<number, KnownDial>();
	const words = tagWords(row.tag);
	const named = new Map<number, KnownDial>();
	for (const variant of slips(row.receive)) {
		if (!canReceive(variant)) continue;
		for (const dial of dialsNear(index, row.mode, variant, EXACT_HZ)) {
			if (dial.fit !== "right") break; // sorted: the rest fits worse
			const isNamed = tagNames(words, dial.known.names);
			if (isNamed && !named.has(dial.dialHz)) named.set(dial.dialHz, dial);
			if (dial.known.channel === null && mayBeMeant(dial.known, row.transmit !== null) && !hits.has(dial.dialHz))
				hits.set(dial.dialHz, dial);
		}
	}
	if (named.size === 1) return only(named);
	return !inVoiceRange && hits.size === 1 ? only(hits) : null;
}

function only(hits: ReadonlyMap<number, KnownDial>): KnownDial | null {
	return hits.values().next().value ?? null;
}

function isVoiceMode(mode: Mode): boolean {
	return mode === "USB" || mode === "LSB" || mode === "AM";
}

/** Every figure that one slip of keying away from `dialHz` stands for, in hertz. */
export function slips(dialHz: number): ReadonlySet<number> {
	const unit = dialHz % COARSEST_DIGIT_HZ === 0 ? COARSEST_DIGIT_HZ : dialHz % 10 === 0 ? 10 : 1;
	const digits = String(dialHz / unit);
	const out = new Set<number>();
	for (let i = 0; i < digits.length; i++) {
		for (const digit of "0123456789") out.add(Number(digits.slice(0, i) + digit + digits.slice(i + 1)) * unit);
		if (i > 0) out.add(Number(digits.slice(0, i - 1) + digits[i] + digits[i - 1] + digits.slice(i + 1)) * unit);
	}
	for (const factor of [10, 100, 1_000]) {
		out.add(dialHz * factor);
		if (dialHz % factor === 0) out.add(dialHz / factor);
	}
	out.delete(dialHz);
	return out;
}
