import { addDays, type IsoDate } from "@skipwright/units";
import { type DateScale, dateX } from "./reachDates.ts";
import type { Placed } from "./reachLegend.ts";
import { textBreadth, textLines } from "./reachLines.ts";
import { figure, rectanglePath, svgElement, svgWords } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";

/** A leg of the voyage, or a stay: from the start of one day to the start of another, or that one day when both are the same. */
export interface ReachLeg {
	readonly name: string;
	readonly from: IsoDate;
	readonly to: IsoDate;
	readonly stay?: boolean;
}

/** Day at whose start the leg is over. */
export function legEnd({ from, to }: ReachLeg): IsoDate {
	return to > from ? to : addDays(from, 1);
}

/** Last day that the leg has a part of. */
export function legLastDay(leg: ReachLeg): IsoDate {
	return addDays(legEnd(leg), -1);
}

/** @throws RangeError when a leg ends before it begins */
export function checkLegs(legs: readonly ReachLeg[]): void {
	const wrong = legs.findIndex(({ from, to }) => to < from);
	if (wrong >= 0)
		throw new RangeError(`Cannot draw legs[${wrong}] from ${legs[wrong]!.from} to ${legs[wrong]!.to}: expected an end after its start`);
}

const SIZE = 11.5;
const ROW_HEIGHT = 14;
const LANE_HEIGHT = 14;
const BLOCK_HEIGHT = 8;
/** px between two names or numbers of one row. */
const APART = 5;
/** Lines of a name over its leg. */
const MOST_LINES = 2;

export interface LegLane extends Placed {
	/** Names that did not fit over their leg, each behind its number: for a line under the picture. */
	readonly key: readonly string[];
}

/** What stands over one leg, in lines from the top, and where. */
interface LegName {
	readonly lines: readonly string[];
	readonly x: number;
	/** Of its lowest line, counted up from the lane. */
	readonly row: number;
}

/** The lane above the strips: a line for each leg, a block for each stay, with their names over them or a number where a name is too long. */
export function legLane(legs: readonly ReachLeg[], scale: DateScale, y: number, theme: ReachTheme): LegLane {
	const { names, key } = legNames(legs, scale);
	const rows = Math.max(0, ...names.map(({ row, lines }) => row + lines.length));
	const lane = y + rows * ROW_HEIGHT + 2;
	const middle = lane + LANE_HEIGHT / 2;
	const arrows = legs
		.filter(({ stay }) => stay !== true)
		.map((leg) => arrow(dateX(leg.from, scale) + 1, dateX(legEnd(leg), scale) - 1, middle))
		.join("");
	const blocks = legs
		.filter(({ stay }) => stay === true)
		.map((leg) => rectanglePath(dateX(leg.from, scale), middle - BLOCK_HEIGHT / 2, dateX(legEnd(leg), scale), middle + BLOCK_HEIGHT / 2))
		.join("");
	return {
		key,
		height: lane + LANE_HEIGHT - y,
		markup: svgElement("g", { class: "reach-legs", "font-size": SIZE, "text-anchor": "middle" }, [
			...names.flatMap(({ lines, x, row }) =>
				lines.map((words, i) => svgWords("text", { x, y: lane - 4 - (row + lines.length - 1 - i) * ROW_HEIGHT }, words)),
			),
			arrows === ""
				? ""
				: svgElement("path", { class: "reach-under-way", stroke: theme.text, "stroke-width": 1.2, fill: "none", d: arrows }),
			blocks === "" ? "" : svgElement("path", { class: "reach-stays", fill: theme.text, d: blocks }),
		]),
	};
}

function legNames(legs: readonly ReachLeg[], scale: DateScale): { readonly names: readonly LegName[]; readonly key: readonly string[] } {
	const key: string[] = [];
	/** Where each row is taken up to, px. */
	const ends: number[] = [];
	const names = legs.map((leg) => {
		const [x1, x2] = [dateX(leg.from, scale), dateX(legEnd(leg), scale)];
		const inLines = textLines(leg.name, x2 - x1 - APART, SIZE);
		const whole = inLines.length <= MOST_LINES && inLines.join(" ") === leg.name.trim().replace(/\s+/g, " ");
		if (!whole) key.push(`${key.length + 1}\u00a0${leg.name}`);
		const lines = whole ? inLines : [String(key.length)];
		const x = (x1 + x2) / 2;
		const half = Math.max(0, ...lines.map((words) => textBreadth(words, SIZE))) / 2;
		let row = 0;
		while (lines.some((_, i) => x - half < (ends[row + i] ?? Number.NEGATIVE_INFINITY) + APART)) row++;
		for (const i of lines.keys()) ends[row + i] = Math.max(ends[row + i] ?? x, x + half);
		return { lines, x, row };
	});
	return { names, key };
}

function arrow(x1: number, x2: number, y: number): string {
	const [from, to] = [figure(x1), figure(x2)];
	const barb = figure(x2 - 4);
	return `M${from} ${figure(y)}H${to}M${barb} ${figure(y - 3)}L${to} ${figure(y)}L${barb} ${figure(y + 3)}`;
}
