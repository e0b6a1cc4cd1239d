import { CAUTIONS } from "./cautions.ts";
import type { ReachGrade } from "./reachGrades.ts";
import { reachHatch } from "./reachHatch.ts";
import { DOT_SIZE } from "./reachInk.ts";
import { wordLines } from "./reachLabel.ts";
import { textBreadth, textLines } from "./reachLines.ts";
import { figure, svgElement } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";

const SIZE = 11.5;
const LINE_HEIGHT = 15;
const SAMPLE = { width: 30, height: 18 };
const GAP = 6;

export interface LegendBox {
	readonly x: number;
	readonly y: number;
	readonly width: number;
	readonly height: number;
}

/** What is drawn in a small box, and its words. */
export interface LegendEntry {
	readonly words: string;
	readonly draw: (box: LegendBox) => string;
}

/** A part of a picture with the height that it took, px. */
export interface Placed {
	readonly markup: string;
	readonly height: number;
}

/** What the marks mean, and under it what a prediction is worth. Entries that do not fit a line go on the next. */
export function reachLegend(entries: readonly LegendEntry[], { x, y, width }: Omit<LegendBox, "height">): Placed {
	const parts: string[] = [];
	let left = x;
	let top = y;
	for (const { words, draw } of entries) {
		const breadth = SAMPLE.width + GAP + textBreadth(words, SIZE);
		if (left > x && left + breadth > x + width) {
			left = x;
			top += SAMPLE.height + GAP;
		}
		const lines = textLines(words, width - SAMPLE.width - GAP, SIZE);
		parts.push(draw({ x: left, y: top, ...SAMPLE }));
		parts.push(wordLines(lines, left + SAMPLE.width + GAP, top + SAMPLE.height / 2 + 4, LINE_HEIGHT, {}));
		top += Math.max(0, lines.length - 1) * LINE_HEIGHT;
		left += breadth + 3 * GAP;
	}
	top += SAMPLE.height + LINE_HEIGHT;
	const caution = textLines(predictionCaution(), width, SIZE);
	parts.push(wordLines(caution, x, top, LINE_HEIGHT, { class: "reach-caution" }));
	return {
		markup: svgElement("g", { class: "reach-legend", "font-size": SIZE }, parts),
		height: top + (caution.length - 1) * LINE_HEIGHT + GAP - y,
	};
}

/**
 * An entry for each grade, best first, with four chances of it from its lowest up.
 * @param draw draws four chances beside each other
 */
export function gradeEntries(
	grades: readonly ReachGrade[],
	draw: (chances: readonly number[], box: LegendBox) => string,
): readonly LegendEntry[] {
	return grades.map((grade, i) => {
		const better = grades[i - 1];
		const top = better?.from ?? 1;
		// the upper end belongs to the grade above, where there is one
		const chances = [0, 1, 2, 3].map((step) => grade.from + ((top - grade.from) * step) / (better === undefined ? 3 : 4));
		return { words: gradeWords(grade, better), draw: (box) => draw(chances, box) };
	});
}

/** @example `"fair 45-75 %"`, `"good 75 % and more"`, `"none under 15 %"` */
function gradeWords({ word, from }: ReachGrade, better: ReachGrade | undefined): string {
	if (better === undefined) return `${word} ${percent(from)} % and more`;
	return from === 0 ? `${word} under ${percent(better.from)} %` : `${word} ${percent(from)}-${percent(better.from)} %`;
}

function percent(share: number): string {
	return String(Number((share * 100).toFixed(1)));
}

/** Two hours of which nothing is known. */
export function cannotTellEntry(theme: ReachTheme): LegendEntry {
	return {
		words: "cannot tell",
		draw: ({ x, y, width, height }) => {
			const d = [0.25, 0.75].map((share) => `M${figure(x + share * width)} ${figure(y + height / 2)}h0`).join("");
			return svgElement("path", { stroke: theme.quiet, "stroke-width": DOT_SIZE, "stroke-linecap": "round", fill: "none", d });
		},
	};
}

export function nightEntry(theme: ReachTheme): LegendEntry {
	return {
		words: "night aboard",
		draw: ({ x, y, width, height }) => reachHatch([{ x1: x, x2: x + width, y1: y, y2: y + height }], theme),
	};
}

/** The papers' own words for what a prediction is worth. */
export function predictionCaution(): string {
	return CAUTIONS.flatMap(({ lines }) => lines)
		.filter((line) => line.startsWith("Predictions"))
		.join(" ");
}
