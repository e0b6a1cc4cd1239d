import type { MemoryId, ReachHour, ReachRow, Sunspots } from "@skipwright/sky";
import type { Position } from "@skipwright/units";

export interface ReachAnswer {
	/** `YYYY-MM`. */
	readonly month: string;
	readonly spots: Sunspots;
	readonly from: Position;
	readonly to: Position;
	readonly rows: readonly ReachRow[];
	/** Of the assumptions made before the rows were worked out. */
	readonly basis: readonly MemoryId[];
	/** UTC hour to be explained; null for none. */
	readonly whyHour: number | null;
}

/** Contracts, commands' JSON: positions [lat, lon], powers in dBW in the bandwidth that the emission needs; more keys than those named there. */
export function reachJson({ month, spots, from, to, rows, basis, whyHour }: ReachAnswer): object {
	const at = ({ latDeg, lonDeg }: Position) => [latDeg, lonDeg];
	return { month, sunspots: spots.r12Old, from: at(from), to: at(to), rows: rows.map((row) => rowJson(row, basis, whyHour)) };
}

function rowJson({ signal, hours, basis }: ReachRow, more: readonly MemoryId[], whyHour: number | null): object {
	const head = { frequencyHz: Math.round(signal.fMHz * 1_000_000), emission: signal.emission };
	if (hours === null) {
		const nothing = { chance: null, snrDb: null, signalDb: null, noiseDb: null, mufMHz: null, basis: [] };
		return { ...head, ...nothing, cannotTell: "nothing is known here of this emission or frequency" };
	}
	const series = (pick: (hour: ReachHour) => number) => hours.map(pick);
	return {
		...head,
		chance: series(({ chance }) => chance),
		snrDb: series(({ snrDb }) => snrDb),
		snrUpperDecileDb: series(({ upperDb }) => upperDb),
		snrLowerDecileDb: series(({ lowerDb }) => lowerDb),
		signalDb: series(({ signalDbw }) => signalDbw),
		noiseDb: series(({ noiseDbw }) => noiseDbw),
		mufMHz: series(({ mufMHz }) => mufMHz),
		by: hours.map(({ by }) => by),
		basis: withAlso(basis, more),
		...(whyHour === null ? {} : { why: hours[whyHour] }),
	};
}

/** Each once, in the order of the alphabet. */
export function withAlso(basis: readonly MemoryId[], more: readonly MemoryId[]): readonly MemoryId[] {
	return [...new Set([...basis, ...more])].sort();
}
