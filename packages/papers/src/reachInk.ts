import { gradeBreadth, gradeIndex, type ReachGrade, shadeOf } from "./reachGrades.ts";
import { figure, rectanglePath, svgElement } from "./reachSvg.ts";
import { inkColour, type ReachTheme } from "./reachTheme.ts";

export const HOURS_PER_DAY = 24;
/** px across, where an hour has the room: the dot of "cannot tell". */
export const DOT_SIZE = 3;

/** px that ink spreads beyond its cells, so that neighbours meet without a seam of paper on any screen or printer. */
const SPREAD = 0.2;

/** Where one day of ink lies. Hours run to the right; the ink swells to both sides of its middle. */
export interface InkBox {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

export interface InkStyle {
	readonly grades: readonly ReachGrade[];
	readonly theme: ReachTheme;
}

/** Hours of the same look that follow each other; null stands for "cannot tell". */
interface InkRun {
	readonly fromHour: number;
	readonly toHour: number;
	readonly ink: { readonly grade: number; readonly shade: number } | null;
}

/**
 * One day of chances as ink: darker with chance and, in the steps of the grades, broader. The cell of hour h reaches from h to h + 1, as
 * the hours in words do. A thin line runs on through hours of the last grade; a dot stands in each hour of which nothing is known.
 * @param chances 24, by UTC hour; one outside 0 to 1 is "cannot tell"
 */
export function reachInk(chances: ArrayLike<number>, box: InkBox, { grades, theme }: InkStyle): string {
	const runs = inkRuns(chances, grades);
	const byShade = Map.groupBy(
		runs.filter(({ ink }) => ink !== null && ink.shade > 0),
		({ ink }) => ink!.shade,
	);
	const shades = [...byShade].sort(([a], [b]) => a - b);
	return svgElement("g", { class: "reach-ink" }, [
		...shades.map(([shade, same]) => inkPath(shade, same.map((run) => runPath(run, box, grades)).join(""), theme)),
		lastGradeLine(runs, box, { grades, theme }),
		dots(runs, box, theme),
	]);
}

/** Cells of one shade. Draw the darker after the paler: their spread then shows on neither side. */
export function inkPath(shade: number, d: string, theme: ReachTheme): string {
	const colour = inkColour(shade, theme);
	return svgElement("path", { fill: colour, stroke: colour, "stroke-width": 2 * SPREAD, d });
}

function inkRuns(chances: ArrayLike<number>, grades: readonly ReachGrade[]): readonly InkRun[] {
	const runs: InkRun[] = [];
	for (let hour = 0; hour < HOURS_PER_DAY; hour++) {
		const grade = gradeIndex(chances[hour], grades);
		const shade = shadeOf(chances[hour], grades);
		const ink = grade === null || shade === null ? null : { grade, shade };
		const before = runs.at(-1);
		if (before !== undefined && before.ink?.grade === ink?.grade && before.ink?.shade === ink?.shade) {
			runs[runs.length - 1] = { ...before, toHour: hour + 1 };
		} else {
			runs.push({ fromHour: hour, toHour: hour + 1, ink });
		}
	}
	return runs;
}

function runPath({ fromHour, toHour, ink }: InkRun, box: InkBox, grades: readonly ReachGrade[]): string {
	const breadth = gradeBreadth(ink!.grade, grades);
	const [low, high] = [(1 - breadth) / 2, (1 + breadth) / 2];
	const [from, to] = [fromHour / HOURS_PER_DAY, toHour / HOURS_PER_DAY];
	const { x, y, width, height } = box;
	return rectanglePath(x + from * width, y + low * height, x + to * width, y + high * height);
}

/** Keeps "not heard" apart from "cannot tell", over a trace of ink as well. */
function lastGradeLine(runs: readonly InkRun[], box: InkBox, { grades, theme }: InkStyle): string {
	const last = runs.filter(({ ink }) => grades.length > 1 && ink?.grade === grades.length - 1);
	const d = last.map(({ fromHour, toHour }) => `M${point(fromHour, box)}L${point(toHour, box)}`).join("");
	return d === "" ? "" : svgElement("path", { class: "reach-last-grade", stroke: theme.quiet, "stroke-width": 0.6, fill: "none", d });
}

function dots(runs: readonly InkRun[], box: InkBox, theme: ReachTheme): string {
	const hours = runs
		.filter(({ ink }) => ink === null)
		.flatMap(({ fromHour, toHour }) => Array.from({ length: toHour - fromHour }, (_, i) => fromHour + i));
	if (hours.length === 0) return "";
	const size = Math.min(DOT_SIZE, (0.6 * box.width) / HOURS_PER_DAY);
	const d = hours.map((hour) => `M${point(hour + 0.5, box)}h0`).join("");
	return svgElement("path", {
		class: "reach-unknown",
		stroke: theme.quiet,
		"stroke-width": size,
		"stroke-linecap": "round",
		fill: "none",
		d,
	});
}

/** A moment of the day on the middle line. */
function point(hour: number, { x, y, width, height }: InkBox): string {
	return `${figure(x + (hour / HOURS_PER_DAY) * width)} ${figure(y + height / 2)}`;
}
