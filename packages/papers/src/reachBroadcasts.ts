import { MINUTES_PER_DAY } from "@skipwright/units";
import { isEndless, type MinuteSpan, spanPieces } from "./reachSpans.ts";
import { figure, rectanglePath, svgElement } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";

/** px. A pennant is never shorter than this, however short the broadcast. */
const SHORTEST_PENNANT = 4;
const PENNANT_HEIGHT = 5;
const STAFF_WIDTH = 1.4;
/** px of bare paper round a staff, so that it shows on full ink. */
const CASING = 1.3;
/** px. One that never ends is a thin line on top, without a staff. */
const ENDLESS_HEIGHT = 2;
/** px. Staffs that would stand closer than this to the one before are left out: they would hide the ink. Their pennants stay. */
const CLOSEST_STAFFS = 5;

export interface DayBox {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

/** Broadcasts on a day that runs to the right: a staff through the bar at the start, and a pennant on top as long as the broadcast. */
export function reachBroadcasts(broadcasts: readonly MinuteSpan[], box: DayBox, theme: ReachTheme, what: string): string {
	const xOf = (minute: number) => box.x + (minute / MINUTES_PER_DAY) * box.width;
	const right = box.x + box.width;
	const pieces = broadcasts.flatMap((span) => spanPieces(span, what));
	const pennants = pieces.map((piece) => {
		const { fromMin, toMin } = piece;
		if (isEndless(piece)) return rectanglePath(box.x, box.y, right, box.y + ENDLESS_HEIGHT);
		const from = Math.min(xOf(fromMin), right - SHORTEST_PENNANT);
		return rectanglePath(from, box.y, Math.max(xOf(toMin), from + SHORTEST_PENNANT), box.y + PENNANT_HEIGHT);
	});
	const staffs = apart(pieces.filter((piece) => piece.starts && !isEndless(piece)).map(({ fromMin }) => xOf(fromMin)));
	const d = staffs.map((x) => `M${figure(x)} ${figure(box.y)}V${figure(box.y + box.height)}`).join("");
	if (pieces.length === 0) return "";
	return svgElement("g", { class: "reach-broadcasts" }, [
		d === "" ? "" : svgElement("path", { stroke: theme.paper, "stroke-width": STAFF_WIDTH + 2 * CASING, fill: "none", d }),
		svgElement("path", { class: "reach-pennants", fill: theme.mark, stroke: theme.paper, "stroke-width": 0.6, d: pennants.join("") }),
		d === "" ? "" : svgElement("path", { class: "reach-staffs", stroke: theme.mark, "stroke-width": STAFF_WIDTH, fill: "none", d }),
	]);
}

function apart(positions: readonly number[]): readonly number[] {
	const kept: number[] = [];
	for (const position of [...positions].sort((a, b) => a - b)) {
		const before = kept.at(-1);
		if (before === undefined || position - before >= CLOSEST_STAFFS) kept.push(position);
	}
	return kept;
}
