import type { Directory, Listing } from "@skipwright/directory";
import type { VoyageSample } from "@skipwright/job";
import { answered } from "./answered.ts";
import type { Coverage } from "./choiceModel.ts";
import { type CoverageOptions, coverageOf, graded } from "./coverage.ts";
import type { Hearing } from "./hearing.ts";
import { shipCells } from "./shipCells.ts";

/** What a hearing says of every listing along a voyage, counted in each way that is needed; each listing is worked out once, when it is asked for. */
export interface Coverages {
	/** Airtime and chance, whether or not the station's watch hears a call. */
	readonly heard: Coverage;
	/** Airtime and chance; voice channels of coast stations only as far as their watch hears. So the others. */
	readonly airtime: Coverage;
	readonly broadcasts: Coverage;
	/** Chance in every hour, whatever is sent. */
	readonly reach: Coverage;
	/** Broadcasts by grades: what the choice counts. */
	readonly graded: Coverage;
	/** Of a marine band, chance by sample and hour that a ship near by, or far off, is reached; null: it cannot be told. */
	readonly shipsNear: (bandMhz: number) => Float64Array | null;
	readonly shipsFar: (bandMhz: number) => Float64Array | null;
}

export function coveragesBy(hearing: Hearing, directory: Directory, samples: readonly VoyageSample[]): Coverages {
	const by = (options: CoverageOptions) => remembered((listing: Listing) => coverageOf(directory, listing, samples, hearing, options));
	const withWatch = (coverage: Coverage) => remembered(answered(directory, coverage));
	const heard = by({});
	return {
		heard,
		airtime: withWatch(heard),
		broadcasts: withWatch(by({ measure: "broadcasts" })),
		reach: withWatch(by({ measure: "reach" })),
		graded: withWatch(by({ measure: "broadcasts", counting: graded })),
		shipsNear: remembered((bandMhz: number) => shipCells(bandMhz, "near", samples, hearing)),
		shipsFar: remembered((bandMhz: number) => shipCells(bandMhz, "far", samples, hearing)),
	};
}

export function remembered<Key, Result>(read: (key: Key) => Result): (key: Key) => Result {
	const known = new Map<Key, Result>();
	return (key) => {
		if (!known.has(key)) known.set(key, read(key));
		return known.get(key) as Result;
	};
}
