import { shadeOf } from "./reachGrades.ts";
import { DOT_SIZE, HOURS_PER_DAY, type InkStyle, inkPath } from "./reachInk.ts";
import { figure, rectanglePath, svgElement } from "./reachSvg.ts";

/** One day's chances, and the part of the picture's breadth that they stand for. */
export interface AreaColumn {
	readonly x1: number;
	readonly x2: number;
	/** 24, by UTC hour; one outside 0 to 1 is "cannot tell". */
	readonly chances: ArrayLike<number>;
}

/** Days side by side, hours running down: the same shades as a day's bar, over the whole cell. A dot stands where the chance is not known. */
export function reachArea(columns: readonly AreaColumn[], y: number, height: number, { grades, theme }: InkStyle): string {
	const yOf = (hour: number) => y + (hour / HOURS_PER_DAY) * height;
	const cells = new Map<number, string[]>();
	const dots: string[] = [];
	for (const { x1, x2, chances } of columns) {
		const shades = Array.from({ length: HOURS_PER_DAY }, (_, hour) => shadeOf(chances[hour], grades));
		let from = 0;
		for (const [hour, shade] of shades.entries()) {
			if (shade === null) dots.push(`M${figure((x1 + x2) / 2)} ${figure(yOf(hour + 0.5))}h0`);
			if (shade === shades[hour + 1]) continue; // one rectangle for hours of one shade
			if (shade !== null && shade > 0) {
				const same = cells.get(shade) ?? [];
				cells.set(shade, same);
				same.push(rectanglePath(x1, yOf(from), x2, yOf(hour + 1)));
			}
			from = hour + 1;
		}
	}
	const shades = [...cells].sort(([a], [b]) => a - b);
	const size = Math.min(DOT_SIZE, (0.6 * height) / HOURS_PER_DAY);
	const round = { stroke: theme.quiet, "stroke-width": size, "stroke-linecap": "round", fill: "none" };
	return svgElement("g", { class: "reach-ink" }, [
		...shades.map(([shade, d]) => inkPath(shade, d.join(""), theme)),
		dots.length === 0 ? "" : svgElement("path", { class: "reach-unknown", ...round, d: dots.join("") }),
	]);
}
