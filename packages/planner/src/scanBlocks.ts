import type { Profile } from "@skipwright/set";
import type { ScanKind } from "./candidate.ts";
import { round } from "./heardPlaces.ts";
import { catchChance, revisitS, type ScanTraffic } from "./scanTimes.ts";

/** A block of places, and what it is to scan it. */
export interface ScanBlock {
	readonly bank: string;
	/** Numbers of its first and last place. */
	readonly first: number;
	readonly last: number;
	/** Places that hold something. */
	readonly filled: number;
	/** `timed`: speech and time signals at set times; `mixed`: speech beside anything else, or set times beside data. */
	readonly kind: ScanKind | "mixed" | "empty";
	/** Whether it is for scanning. Data needs the set for itself, and what comes at set times is tuned to then: neither is swept. */
	readonly isScanned: boolean;
	/** Places that a sweep visits; 0 where it is not for scanning. */
	readonly swept: number;
	/** Mean seconds from one visit to a place to the next; null where it is not for scanning. */
	readonly revisitS: number | null;
	/** Chance that a call of so many seconds is caught; empty where it is not for scanning. */
	readonly catches: readonly { readonly callS: number; readonly chance: number }[];
}

/** Seconds of the calls whose chance is told: a ship's name, a call, a call that is repeated, a minute. */
export const CALL_LENGTHS_S: readonly number[] = [5, 10, 30, 60];

export interface ScannedPlace {
	readonly bank: string;
	readonly place: number;
	/** null: nothing tells. */
	readonly kind: ScanKind | null;
}

/**
 * The blocks of a set, how often a sweep comes by and what it catches. A block with speech alone is for scanning; a mixed one only where the set
 * can leave places out, and then its speech is swept. Empty places are swept unless the set passes them over or can leave them out.
 */
export function scanBlocks(profile: Profile, places: readonly ScannedPlace[], traffic: ScanTraffic = {}): readonly ScanBlock[] {
	const { scan } = profile;
	return profile.banks.flatMap(({ id: bank, places: size, blockLength }) =>
		Array.from({ length: Math.ceil(size / blockLength) }, (_, i): ScanBlock => {
			const [first, last] = [i * blockLength + 1, Math.min(size, (i + 1) * blockLength)];
			const own = places.filter((one) => one.bank === bank && one.place >= first && one.place <= last);
			const kind = kindOf(own);
			const block = { bank, first, last, filled: own.length, kind };
			const byPlace = scan?.sweptFlag === "place";
			const speech = own.filter((one) => one.kind === "speech" || (one.kind === null && kind === "speech")).length;
			const isScanned = scan !== null && (kind === "speech" || (kind === "mixed" && byPlace && speech > 0));
			if (!isScanned) return { ...block, isScanned, swept: 0, revisitS: null, catches: [] };
			const swept = byPlace || scan.skipsEmpty ? speech : last - first + 1;
			return {
				...block,
				isScanned,
				swept,
				revisitS: round(revisitS(scan, swept, traffic), 2),
				catches: CALL_LENGTHS_S.map((callS) => ({ callS, chance: round(catchChance(scan, swept, callS, traffic), 3) })),
			};
		}),
	);
}

/** What nothing tells of goes with the rest of its block. */
function kindOf(places: readonly ScannedPlace[]): ScanBlock["kind"] {
	const kinds = new Set(places.flatMap(({ kind }) => (kind === null ? [] : [kind])));
	const [only] = kinds;
	if (only === undefined) return places.length === 0 ? "empty" : "speech";
	return kinds.size > 1 ? "mixed" : only;
}
