import type { EmissionClass, ListedMeans, ServiceId } from "@skipwright/rules";
import type { Hz, Position } from "@skipwright/units";

/** Where the frequency was read, best first; the lowest source behind the frequency counts. */
export const CONFIDENCES = ["official", "secondary", "memory"] as const;
export type Confidence = (typeof CONFIDENCES)[number];

/** Words for screens and papers. */
export const CONFIDENCE_WORDS: Readonly<Record<Confidence, string>> = {
	official: "read in an official publication",
	secondary: "read in a secondary list or copy",
	memory: "from memory",
};

export const STATUSES = ["active", "closed", "seasonal", "unknown"] as const;
export type Status = (typeof STATUSES)[number];

export const ORIGINS = ["shipped", "shop", "owner"] as const;

export interface Station {
	readonly id: string;
	readonly name: string;
	readonly callSign: string;
	/** ISO 3166 two-letter code. */
	readonly administration: string;
	readonly mmsi: string | null;
	readonly position: Position | null;
	readonly powerKw: number | null;
	readonly source: string;
	/** `YYYY`, `YYYY-MM` or `YYYY-MM-DD`. */
	readonly asOf: string;
	readonly confidence: Confidence;
	readonly status: Status;
	readonly notes: string;
}

/** One published frequency of a service of a station. */
export interface Listing {
	/** `station/service/kHz`, with `/2`, `/3` where one station lists the same figure again. Stable over editions. */
	readonly id: string;
	readonly stationId: string;
	readonly service: ServiceId;
	readonly hz: Hz;
	readonly means: ListedMeans;
	/** Coast station's sending carrier, where a pair is published. */
	readonly coastTx: Hz | null;
	/** Ship's sending carrier, where a pair is published. */
	readonly shipTx: Hz | null;
	readonly channel: number | null;
	readonly emission: EmissionClass;
	/** As published; `parseSchedule` reads it. */
	readonly schedule: string;
	readonly coverage: string;
	/** Finer remarks of the source ("as noted"). */
	readonly notes: string;
	readonly receiveOnly: boolean;
	readonly sideband: "upper" | "lower";
	readonly source: string;
	readonly asOf: string;
	readonly confidence: Confidence;
	readonly status: Status;
	/** `shipped`: in the directory as delivered; `shop`: added or edited by the shop; `owner`: the owner's own (nets and friends). */
	readonly origin: (typeof ORIGINS)[number];
}

export interface Directory {
	readonly stations: readonly Station[];
	readonly listings: readonly Listing[];
	/** Newest day of the shipped data. */
	readonly edition: string;
}
