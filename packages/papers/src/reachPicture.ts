import { wordLines } from "./reachLabel.ts";
import type { LegendEntry } from "./reachLegend.ts";
import { reachLegend } from "./reachLegend.ts";
import { textLines } from "./reachLines.ts";
import { type SvgAttributes, svgElement, svgWords } from "./reachSvg.ts";
import { REACH_THEMES, type ReachTheme, type ReachThemeName } from "./reachTheme.ts";

/** What every picture of reach can be told about its looks. */
export interface ReachLooks {
	/** px of the drawing's own scale, 420 to 10 000; it can be shown at any size. Default 720. */
	readonly width?: number;
	/** Default "paper". */
	readonly theme?: ReachThemeName;
	/** Begins every id of the picture: give each picture of one page its own. */
	readonly id?: string;
}

/** A4 less margins of 12 mm is 186 mm: at this width a px is about a quarter of a millimetre, and the smallest type (11 px) 8 points. */
const DEFAULT_WIDTH = 720;
const NARROWEST = 420;
const BROADEST = 10_000;

const FACE = "'Source Sans 3', sans-serif";
export const FIGURES_FACE = "'Source Code Pro', monospace";

export const MARGIN = 6;
const TITLE = { size: 16, lineHeight: 20 };
const HEADING_SIZE = 11.5;

/** @throws RangeError unless the width is a number from 420 to 10 000 */
export function widthOf({ width = DEFAULT_WIDTH }: ReachLooks): number {
	if (width >= NARROWEST && width <= BROADEST) return width;
	throw new RangeError(`Cannot draw reach ${width} px wide: expected ${NARROWEST} to ${BROADEST}`);
}

export function themeOf({ theme = "paper" }: ReachLooks): ReachTheme {
	return REACH_THEMES[theme];
}

/** Where the picture goes on under its title, px. */
export function titleFoot(title: string, width: number): number {
	return MARGIN + titleLines(title, width).length * TITLE.lineHeight + 4;
}

function titleLines(title: string, width: number): readonly string[] {
	return textLines(title, width - 2 * MARGIN, TITLE.size);
}

export interface Picture {
	readonly id: string;
	readonly title: string;
	/** What the picture shows, in words, for who cannot see it. */
	readonly description: string;
	readonly width: number;
	readonly theme: ReachTheme;
	readonly marks: readonly string[];
	/** How far down the marks reach, px. */
	readonly foot: number;
	readonly legend: readonly LegendEntry[];
}

/**
 * The picture around its marks: background, title over them, legend under them, and title and description for screen readers. Ends with a
 * line break.
 * @throws RangeError for an id that is no plain name
 */
export function svgPicture({ id, title, description, width, theme, marks, foot, legend }: Picture): string {
	if (!/^[A-Za-z][\w-]*$/.test(id)) throw new RangeError(`Cannot name a picture "${id}": expected a letter, then letters, digits, - and _`);
	const { markup, height: legendHeight } = reachLegend(legend, { x: MARGIN, y: foot + 22, width: width - 2 * MARGIN });
	const height = Math.ceil(foot + 22 + legendHeight + MARGIN);
	const attributes: SvgAttributes = {
		xmlns: "http://www.w3.org/2000/svg",
		id,
		viewBox: `0 0 ${width} ${height}`,
		width,
		height,
		role: "img",
		"aria-labelledby": `${id}-title`,
		"aria-describedby": `${id}-desc`,
		"font-family": FACE,
		fill: theme.text,
	};
	const titleStyle = { class: "reach-title", "font-size": TITLE.size, "font-weight": "bold" };
	const picture = svgElement("svg", attributes, [
		svgWords("title", { id: `${id}-title` }, title),
		svgWords("desc", { id: `${id}-desc` }, description),
		svgElement("rect", { width, height, fill: theme.paper }),
		wordLines(titleLines(title, width), MARGIN, MARGIN + TITLE.size, TITLE.lineHeight, titleStyle),
		...marks,
		svgWords(
			"text",
			{ x: MARGIN, y: foot + 14, "font-size": HEADING_SIZE, "font-weight": "bold" },
			"Share of days on which it is copied well enough",
		),
		markup,
	]);
	return `${picture}\n`;
}
