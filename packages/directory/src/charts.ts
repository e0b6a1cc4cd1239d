import type { Hz, IsoDate } from "@skipwright/units";
import type { Confidence, Directory, Listing } from "./types.ts";

/** One row of a published timetable of a chart (facsimile) station. */
export interface ChartRow {
	readonly stationId: string;
	/** Minutes after 0000 UTC. */
	readonly startMin: number;
	/** Minutes after 0000 UTC, where published; at or before `startMin` it lies on the next day. */
	readonly endMin: number | null;
	/** `window`: only says that the station is on the air, not what it sends. */
	readonly kind: "chart" | "window";
	readonly product: string;
	/** Frequencies the row is limited to, empty for all of the station's. */
	readonly hz: readonly Hz[];
	/** Lines a minute and index of cooperation as published ("120/576"), or "". */
	readonly rpmIoc: string;
	readonly source: string;
	readonly asOf: string;
	readonly confidence: Confidence;
}

/** A chart of the timetable at its time on one listing. */
export interface ChartOccurrence {
	readonly row: ChartRow;
	/** Minutes after 0000 UTC of the day asked for. */
	readonly fromMin: number;
	readonly toMin: number;
	readonly length: "published" | "assumed";
}

/** Timetable of a station in order of time; empty when none is held. */
export function chartTimetable(stationId: string): readonly ChartRow[] {
	throw new Error(`not built yet: ${stationId}`);
}

/** Charts that start on a UTC day while the listing is on the air. */
export function chartsOf(directory: Directory, listing: Listing, date: IsoDate): readonly ChartOccurrence[] {
	throw new Error(`not built yet: ${listing.id} ${date} ${directory.edition}`);
}
