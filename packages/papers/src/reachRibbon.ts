import { checkDay, checkGrades, type ReachGrade } from "./reachGrades.ts";
import { reachInk } from "./reachInk.ts";
import { themeOf } from "./reachPicture.ts";
import { svgElement, svgWords } from "./reachSvg.ts";
import type { ReachThemeName } from "./reachTheme.ts";

export interface ReachRibbonLooks {
	/** px */
	readonly width: number;
	readonly height: number;
	/** Words for chances, best first, down to one from 0. */
	readonly grades: readonly ReachGrade[];
	/** Default "paper". */
	readonly theme?: ReachThemeName;
	/** What it shows, for screen readers. Without it the ribbon is hidden from them: then the same must stand beside it in words. */
	readonly label?: string;
}

/**
 * One day of reach as a small picture, for a cell of a list or of a layout: the ink of a day's bar and nothing else, on no ground of its own.
 * @param chances 24, by UTC hour; one outside 0 to 1 is "cannot tell"
 * @throws RangeError for any other number of chances, grades that do not fall to 0, or a size that is not positive
 */
export function reachRibbon(chances: ArrayLike<number>, { width, height, grades, theme, label }: ReachRibbonLooks): string {
	checkGrades(grades);
	checkDay(chances, "chances");
	if (!(width > 0 && height > 0)) throw new RangeError(`Cannot draw a ribbon of ${width} by ${height} px: expected more than 0`);
	const told = label === undefined ? { "aria-hidden": "true" } : { role: "img" };
	const size = { xmlns: "http://www.w3.org/2000/svg", viewBox: `0 0 ${width} ${height}`, width, height };
	return svgElement("svg", { ...size, ...told }, [
		label === undefined ? "" : svgWords("title", {}, label),
		reachInk(chances, { x: 0, y: 0, width, height }, { grades, theme: themeOf(theme === undefined ? {} : { theme }) }),
	]);
}
