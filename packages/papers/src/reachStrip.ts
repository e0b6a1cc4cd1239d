import { MINUTES_PER_DAY } from "@skipwright/units";
import type { HatchBox } from "./reachHatch.ts";
import { HOURS_PER_DAY } from "./reachInk.ts";
import { isEndless, type MinuteSpan, spanPieces } from "./reachSpans.ts";
import { figure, rectanglePath, svgElement } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";

/** px a day is deep. */
export const STRIP_HEIGHT = 3 * HOURS_PER_DAY;
/** px */
const SHORTEST_PENNANT = 2;
const PENNANT = { from: 2, to: 6 };

/** Where a minute of the day lies on a strip that begins at `top`, px. */
export function minuteY(minute: number, top: number): number {
	return top + (minute / MINUTES_PER_DAY) * STRIP_HEIGHT;
}

/** One night's part of a strip. */
export interface NightColumn extends MinuteSpan {
	readonly x1: number;
	readonly x2: number;
}

export function nightBox({ x1, x2, fromMin, toMin }: NightColumn, top: number): HatchBox {
	return { x1, x2, y1: minuteY(fromMin, top), y2: minuteY(toMin, top) };
}

/** Nightfall and daybreak, to lie over the ink: each a line between two of bare paper. */
export function nightEdges(columns: readonly NightColumn[], top: number, theme: ReachTheme): string {
	const d = columns
		.flatMap(({ x1, x2, fromMin, toMin }) =>
			[fromMin, toMin]
				.filter((minute) => minute > 0 && minute < MINUTES_PER_DAY)
				.map((minute) => `M${figure(x1)} ${figure(minuteY(minute, top))}H${figure(x2)}`),
		)
		.join("");
	if (d === "") return "";
	return svgElement("g", { class: "reach-night-edges", fill: "none" }, [
		svgElement("path", { stroke: theme.paper, "stroke-width": 2.4, d }),
		svgElement("path", { stroke: theme.quiet, d }),
	]);
}

/** A broadcast's depth on the picture, px. */
export interface BroadcastDepth {
	readonly from: number;
	readonly to: number;
	/** Whether it starts there: not so after midnight, nor where it never ends. */
	readonly starts: boolean;
}

export function broadcastDepths(broadcasts: readonly MinuteSpan[], top: number, what: string): readonly BroadcastDepth[] {
	return broadcasts
		.flatMap((span) => spanPieces(span, what))
		.map((piece) => ({ from: minuteY(piece.fromMin, top), to: minuteY(piece.toMin, top), starts: piece.starts && !isEndless(piece) }));
}

/** A dashed line across where a broadcast starts, and outside at either end a pennant as deep as it lasts. */
export function broadcastMarks(depths: readonly BroadcastDepth[], left: number, right: number, theme: ReachTheme): string {
	if (depths.length === 0) return "";
	const pennants = depths.map(({ from, to }) => {
		const foot = Math.max(to, from + SHORTEST_PENNANT);
		return (
			rectanglePath(left - PENNANT.to, from, left - PENNANT.from, foot) +
			rectanglePath(right + PENNANT.from, from, right + PENNANT.to, foot)
		);
	});
	const d = depths
		.filter(({ starts }) => starts)
		.map(({ from }) => `M${figure(left - PENNANT.to)} ${figure(from)}H${figure(right + PENNANT.to)}`)
		.join("");
	return svgElement("g", { class: "reach-broadcasts", fill: "none" }, [
		svgElement("path", { class: "reach-pennants", fill: theme.mark, d: pennants.join("") }),
		d === "" ? "" : svgElement("path", { stroke: theme.paper, "stroke-width": 2, d }),
		d === "" ? "" : svgElement("path", { class: "reach-staffs", stroke: theme.mark, "stroke-dasharray": "6 2", d }),
	]);
}
