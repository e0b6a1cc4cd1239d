import { formatHhmm, MINUTES_PER_DAY } from "@skipwright/units";

/**
 * A part of a day that repeats, in minutes after 0000 UTC. Over midnight either as 1410 to 30 or as 1410 to 1470; the same minute twice
 * is a moment, 0 to 1440 the whole day.
 */
export interface MinuteSpan {
	readonly fromMin: number;
	readonly toMin: number;
}

/** What of a span lies within one day drawn from 0000 to 2400. */
export interface SpanPiece extends MinuteSpan {
	/** False for the part after midnight of a span that began before it. */
	readonly starts: boolean;
}

/**
 * A span cut at midnight: one piece or two.
 * @param what named in the error
 * @throws RangeError unless it starts within the day, ends by the end of the next, and lasts a day at most
 */
export function spanPieces({ fromMin, toMin }: MinuteSpan, what: string): readonly SpanPiece[] {
	const endMin = toMin < fromMin ? toMin + MINUTES_PER_DAY : toMin;
	if (!(fromMin >= 0 && fromMin <= MINUTES_PER_DAY && toMin >= 0 && endMin - fromMin <= MINUTES_PER_DAY)) {
		throw new RangeError(
			`Cannot draw ${what} from minute ${fromMin} to ${toMin}: expected a start from 0 to ${MINUTES_PER_DAY} and a day's length at most`,
		);
	}
	if (fromMin === MINUTES_PER_DAY) return [{ fromMin: 0, toMin: endMin - MINUTES_PER_DAY, starts: true }];
	if (endMin <= MINUTES_PER_DAY) return [{ fromMin, toMin: endMin, starts: true }];
	return [
		{ fromMin, toMin: MINUTES_PER_DAY, starts: true },
		{ fromMin: 0, toMin: endMin - MINUTES_PER_DAY, starts: false },
	];
}

/** Whether it goes on all day. */
export function isEndless({ fromMin, toMin }: MinuteSpan): boolean {
	return toMin - fromMin === MINUTES_PER_DAY;
}

/** @example `spanWords({ fromMin: 1410, toMin: 1470 })` is `"2330-0030"`; a moment is `"2330"` */
export function spanWords({ fromMin, toMin }: MinuteSpan): string {
	const from = formatHhmm(fromMin);
	return fromMin === toMin ? from : `${from}-${formatHhmm(toMin > MINUTES_PER_DAY ? toMin - MINUTES_PER_DAY : toMin)}`;
}
