import type { PlannedPlace } from "@skipwright/planner";
import { MINUTES_PER_DAY } from "@skipwright/units";
import { inPageColours } from "./pictureColours.ts";
import { hourRunsOf } from "./planNight.ts";
import type { ReachGrade } from "./reachGrades.ts";
import { reachHatch } from "./reachHatch.ts";
import { HOURS_PER_DAY, reachInk } from "./reachInk.ts";
import { spanPieces } from "./reachSpans.ts";
import { rectanglePath, svgElement, svgWords } from "./reachSvg.ts";
import { REACH_THEMES } from "./reachTheme.ts";

/** px of the drawing's own scale: six an hour. */
const WIDTH = 144;
const INK = { y: 1.5, height: 13 };
const TICKS = { y: 17, height: 4, least: 1.5 };
const HEIGHT = 22;
/** Id of the night that all ribbons of a page show. */
const NIGHT_ID = "usual-night";

/** What ribbons refer to: once a page, before the first. */
export function ribbonNight(night: readonly boolean[]): string {
	const boxes = hourRunsOf(night).map(({ from, to }) => ({
		x1: (from * WIDTH) / HOURS_PER_DAY,
		x2: (to * WIDTH) / HOURS_PER_DAY,
		y1: 0,
		y2: 16,
	}));
	const hatch = svgElement("symbol", { id: NIGHT_ID }, [inPageColours(reachHatch(boxes, REACH_THEMES.paper))]);
	return svgElement("svg", { width: 0, height: 0, "aria-hidden": "true", class: "said" }, [hatch]);
}

/**
 * A day of one place for a cell: ink for the chance, night hatched behind it, and under it what is sent, as ticks as long as it lasts.
 * @param label the same in words
 */
export function placeRibbon({ chances, broadcasts }: PlannedPlace["day"], grades: readonly ReachGrade[], label: string): string {
	const { paper: theme } = REACH_THEMES;
	const day = chances ?? Array.from({ length: HOURS_PER_DAY }, () => Number.NaN);
	const quarters = [6, 12, 18].map((hour) => `M${(hour * WIDTH) / HOURS_PER_DAY} 15.5V${HEIGHT}`).join("");
	const ribbon = svgElement("svg", { class: "ribbon", viewBox: `0 0 ${WIDTH} ${HEIGHT}`, role: "img" }, [
		svgWords("title", {}, label),
		svgElement("use", { href: `#${NIGHT_ID}` }),
		svgElement("path", { class: "ribbon-quarters", stroke: theme.hatch, "stroke-width": 1, fill: "none", d: quarters }),
		reachInk(day, { x: 0, width: WIDTH, ...INK }, { grades, theme }),
		svgElement("path", { class: "ribbon-sent", fill: theme.mark, d: (broadcasts ?? []).map(tick).join("") }),
	]);
	return inPageColours(ribbon);
}

function tick(span: { readonly fromMin: number; readonly toMin: number }): string {
	const xOf = (minute: number) => (minute * WIDTH) / MINUTES_PER_DAY;
	return spanPieces(span, "a broadcast")
		.map(({ fromMin, toMin }) => {
			const x = Math.min(xOf(fromMin), WIDTH - TICKS.least);
			return rectanglePath(x, TICKS.y, Math.max(xOf(toMin), x + TICKS.least), TICKS.y + TICKS.height);
		})
		.join("");
}
