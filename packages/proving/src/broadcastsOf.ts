import { chartsOf, type Directory, type Listing, occurrencesOf, type ScheduleKnown } from "@skipwright/directory";
import { addDays, dateOfMs, dayStartMs } from "@skipwright/units";

/** One sending of a listing. */
export interface Broadcast {
	/** Milliseconds since 1970-01-01T00:00Z. */
	readonly fromMs: number;
	readonly toMs: number;
	/** What is sent, where a timetable names it ("surface analysis"), or "". */
	readonly product: string;
	/** What is in doubt about it, or "". */
	readonly doubt: string;
}

const MINUTE_MS = 60_000;
/** Minutes by which a sending may be early or late, or a clock at the recorder wrong, and still be the one published. Own choice. */
export const LATE_MIN = 10;

/** What a listing sends from one moment up to another, in order of time, not cut at its ends; nothing where the times are not known. */
export function broadcastsOf(directory: Directory, listing: Listing, fromMs: number, toMs: number): readonly Broadcast[] {
	const found: Broadcast[] = [];
	for (let date = addDays(dateOfMs(fromMs), -1); dayStartMs(date) < toMs; date = addDays(date, 1)) {
		const start = dayStartMs(date);
		const at = (minute: number) => start + minute * MINUTE_MS;
		const charts = chartsOf(directory, listing, date).filter(({ onAir }) => onAir === true);
		for (const { row, fromMin, toMin } of charts) found.push({ fromMs: at(fromMin), toMs: at(toMin), product: row.product, doubt: "" });
		for (const { fromMin, toMin, doubt } of occurrencesOf(directory, listing, date)) {
			found.push({ fromMs: at(fromMin), toMs: at(toMin), product: "", doubt });
		}
	}
	return found.filter((one) => one.toMs > fromMs && one.fromMs < toMs).sort((a, b) => a.fromMs - b.fromMs || a.toMs - b.toMs);
}

/** Whether something was sent, by the broadcasts of a stretch of time; null where the times are not known. */
export function isOnAir(broadcasts: readonly Broadcast[], known: ScheduleKnown): boolean | null {
	return known === "cannot-tell" ? null : broadcasts.length > 0;
}
