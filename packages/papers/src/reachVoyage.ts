import type { IsoDate } from "@skipwright/units";
import { type AreaColumn, reachArea } from "./reachArea.ts";
import { type DateScale, datesBetween, dateTicks, dateWords, dateX, daySpans, dayX } from "./reachDates.ts";
import { checkDay, checkGrades, type ReachGrade } from "./reachGrades.ts";
import { reachHatch } from "./reachHatch.ts";
import { checkedOffset, clock } from "./reachHours.ts";
import type { InkStyle } from "./reachInk.ts";
import { drawnLabel, labelInWords, labelLines, wordLines } from "./reachLabel.ts";
import { cannotTellEntry, gradeEntries, type LegendEntry, nightEntry, type Placed, predictionCaution } from "./reachLegend.ts";
import { checkLegs, legEnd, legLane, legLastDay, type ReachLeg } from "./reachLegs.ts";
import { textLines } from "./reachLines.ts";
import { FIGURES_FACE, MARGIN, type ReachLooks, svgPicture, themeOf, titleFoot, widthOf } from "./reachPicture.ts";
import { type MinuteSpan, spanPieces, spanWords } from "./reachSpans.ts";
import { broadcastDepths, broadcastMarks, minuteY, type NightColumn, nightBox, nightEdges, STRIP_HEIGHT } from "./reachStrip.ts";
import { figure, svgElement, svgWords } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";
import { daysByBestHour } from "./reachWords.ts";

/** Chances on one day of the voyage. */
export interface ReachCell {
	readonly date: IsoDate;
	/** 24, by UTC hour; one outside 0 to 1 is "cannot tell". */
	readonly chances: ArrayLike<number>;
}

/** One listing along the voyage. */
export interface ReachVoyageRow {
	/** Station and frequency; what stands after a line break goes under it, lighter. */
	readonly label: string;
	/** In the order of their dates; each stands for the days halfway to its neighbours. */
	readonly cells: readonly ReachCell[];
	/** The same on every day. */
	readonly broadcasts?: readonly MinuteSpan[];
}

/** When it is night aboard on one day of the voyage. */
export interface ReachNight {
	readonly date: IsoDate;
	readonly night: readonly MinuteSpan[];
}

export interface ReachVoyage extends ReachLooks {
	readonly title: string;
	readonly rows: readonly ReachVoyageRow[];
	/** Legs and stays. */
	readonly legs: readonly ReachLeg[];
	/** Words for chances, best first, down to one from 0. */
	readonly grades: readonly ReachGrade[];
	/** In the order of their dates; each stands for the days halfway to its neighbours. */
	readonly nights?: readonly ReachNight[];
	/** Boat time less UTC, minutes: for a voyage that keeps one. */
	readonly boatTimeOffsetMin?: number;
}

const LABEL_SHARE = 0.2;
/** px that the hours take on the left, and on the right with and without boat time. */
const SIDES = { utc: 42, boatTime: 64, none: 20 };
const FIGURE_GAP = 10;
const STRIP_GAP = 16;
const SMALL = { size: 11.5, lineHeight: 15 };
const HOUR_SIZE = 11;
const FIGURE_MINUTES = [0, 360, 720, 1_080, 1_440];
/** px from one date to the next, at least. */
const DATES_APART = 66;

/**
 * A voyage, one strip a listing: days run to the right, the hours of each day (UTC) down, in the same ink as a day's bar. Legs and stays
 * stand along the top, night is hatched, broadcasts lie across as dashed lines.
 * @throws RangeError for a cell without 24 chances, dates out of order or over ten years, times outside the day, grades that do not fall
 * to 0, a width outside 420 to 10 000, or nothing dated at all
 */
export function reachVoyage(voyage: ReachVoyage): string {
	checkGrades(voyage.grades);
	checkLegs(voyage.legs);
	const width = widthOf(voyage);
	const theme = themeOf(voyage);
	const style: InkStyle = { grades: voyage.grades, theme };
	const boat = voyage.boatTimeOffsetMin === undefined ? null : checkedOffset(voyage.boatTimeOffsetMin);
	const x = MARGIN + Math.round(width * LABEL_SHARE) + SIDES.utc;
	const scale: DateScale = { ...datesOf(voyage), x, width: width - x - MARGIN - (boat === null ? SIDES.none : SIDES.boatTime) };
	const nights = nightColumns(voyage.nights ?? [], scale);

	const laneY = titleFoot(voyage.title, width);
	const lane = legLane(voyage.legs, scale, laneY, theme);
	const laneFoot = laneY + lane.height;
	const top = laneFoot + 26;
	const strips: string[] = [];
	let y = top;
	for (const [i, row] of voyage.rows.entries()) {
		const { markup, height } = strip(row, `rows[${i}]`, { y, scale, nights, style, boat });
		strips.push(markup);
		y += height + STRIP_GAP;
	}
	const bottom = Math.max(top, y - STRIP_GAP + 5);
	const ticks = dateTicks(scale, DATES_APART);
	const dateY = bottom + 12;
	const key = textLines(lane.key.join("; "), width - x - MARGIN, SMALL.size);
	const keyStyle = { class: "reach-key", "font-size": SMALL.size };
	return svgPicture({
		id: voyage.id ?? "reach-voyage",
		title: voyage.title,
		description: description(voyage),
		width,
		theme,
		marks: [
			lane.markup,
			scaleNames(laneFoot + 15, scale, boat),
			gridLines(
				ticks.map((tick) => tick.x),
				{ top: top - 4, bottom },
				theme,
			),
			...strips,
			legBorders(voyage.legs, scale, { top: laneFoot, bottom }, theme),
			svgElement(
				"g",
				{ class: "reach-dates", "font-size": SMALL.size },
				ticks.map((tick) => svgWords("text", { x: tick.x, y: dateY }, tick.words)),
			),
			wordLines(key, x, dateY + 8 + SMALL.size, SMALL.lineHeight, keyStyle),
		],
		foot: dateY + 8 + (key.length === 0 ? 0 : key.length * SMALL.lineHeight + 6),
		legend: legendOf(voyage, style),
	});
}

/** First and last day of anything on the picture. */
function datesOf({ rows, legs, nights = [], title }: ReachVoyage): Pick<DateScale, "first" | "last"> {
	const dated = [...rows.flatMap(({ cells }) => cells), ...nights].map(({ date }) => date);
	return datesBetween([...dated, ...legs.flatMap((leg) => [leg.from, legLastDay(leg)])], title);
}

interface StripPlace {
	readonly y: number;
	readonly scale: DateScale;
	readonly nights: readonly NightColumn[];
	readonly style: InkStyle;
	readonly boat: number | null;
}

function strip(row: ReachVoyageRow, what: string, { y, scale, nights, style, boat }: StripPlace): Placed {
	const { theme } = style;
	const label = labelLines(row.label, scale.x - SIDES.utc - 2 * MARGIN);
	const right = scale.x + scale.width;
	const markup = svgElement("g", { class: "reach-row" }, [
		drawnLabel(label, MARGIN, y),
		reachHatch(
			nights.map((night) => nightBox(night, y)),
			theme,
		),
		reachArea(areaColumns(row.cells, scale, `${what}.cells`), y, STRIP_HEIGHT, style),
		nightEdges(nights, y, theme),
		hourFigures(y, scale, boat),
		frame(y, scale, theme),
		broadcastMarks(broadcastDepths(row.broadcasts ?? [], y, `${what}.broadcasts`), scale.x, right, theme),
	]);
	return { markup, height: Math.max(STRIP_HEIGHT, label.height) };
}

function areaColumns(cells: readonly ReachCell[], scale: DateScale, what: string): readonly AreaColumn[] {
	const dates = cells.map(({ date }) => date);
	return daySpans(dates, scale, what).map(({ fromDay, toDay }, i) => {
		const { chances } = cells[i]!; // one span a cell
		checkDay(chances, `${what}[${i}].chances`);
		return { chances, x1: dayX(fromDay, scale), x2: dayX(toDay, scale) };
	});
}

function nightColumns(nights: readonly ReachNight[], scale: DateScale): readonly NightColumn[] {
	const dates = nights.map(({ date }) => date);
	return daySpans(dates, scale, "nights").flatMap(({ fromDay, toDay }, i) =>
		nights[i]!.night.flatMap((span) => spanPieces(span, `nights[${i}].night`))
			.filter(({ fromMin, toMin }) => fromMin < toMin)
			.map(({ fromMin, toMin }) => ({ x1: dayX(fromDay, scale), x2: dayX(toDay, scale), fromMin, toMin })),
	);
}

function hourFigures(y: number, { x, width }: DateScale, boat: number | null): string {
	const style = { "font-size": HOUR_SIZE, "font-family": FIGURES_FACE };
	const figures = (at: number, offsetMin: number, isUtc: boolean) =>
		FIGURE_MINUTES.map((minute) => svgWords("text", { x: at, y: minuteY(minute, y) + 3.5 }, clock(minute, offsetMin, isUtc)));
	const utc = svgElement("g", { class: "reach-utc", ...style, "text-anchor": "end" }, figures(x - FIGURE_GAP, 0, true));
	if (boat === null) return utc;
	return `${utc}\n${svgElement("g", { class: "reach-boat-time", ...style }, figures(x + width + FIGURE_GAP, boat, false))}`;
}

function scaleNames(y: number, { x, width }: DateScale, boat: number | null): string {
	return svgElement("g", { "font-size": HOUR_SIZE, "font-weight": "bold" }, [
		svgWords("text", { x: x - FIGURE_GAP, y, "text-anchor": "end" }, "UTC"),
		boat === null ? "" : svgWords("text", { x: x + width + FIGURE_GAP, y }, "boat time"),
	]);
}

function frame(y: number, { x, width }: DateScale, theme: ReachTheme): string {
	const right = x + width;
	const ticks = FIGURE_MINUTES.map((minute) => {
		const at = figure(minuteY(minute, y));
		return `M${figure(x - 4)} ${at}h4M${figure(right)} ${at}h4`;
	});
	const edges = [y, y + STRIP_HEIGHT].map((at) => `M${figure(x)} ${figure(at)}H${figure(right)}`);
	return svgElement("path", { stroke: theme.quiet, "stroke-width": 0.6, fill: "none", d: [...ticks, ...edges].join("") });
}

interface Extent {
	readonly top: number;
	readonly bottom: number;
}

function gridLines(xs: readonly number[], extent: Extent, theme: ReachTheme): string {
	return svgElement("path", { class: "reach-grid", stroke: theme.hatch, "stroke-width": 0.6, fill: "none", d: uprights(xs, extent) });
}

/** Where one leg passes into the next: a dotted line through all strips. */
function legBorders(legs: readonly ReachLeg[], scale: DateScale, extent: Extent, theme: ReachTheme): string {
	const xs = new Set(legs.flatMap((leg) => [dateX(leg.from, scale), dateX(legEnd(leg), scale)]));
	const style = { class: "reach-borders", stroke: theme.text, "stroke-width": 0.8, "stroke-dasharray": "1.5 2.5", fill: "none" };
	return xs.size === 0 ? "" : svgElement("path", { ...style, d: uprights([...xs], extent) });
}

function uprights(xs: readonly number[], { top, bottom }: Extent): string {
	return xs.map((x) => `M${figure(x)} ${figure(top)}V${figure(bottom)}`).join("");
}

function legendOf({ rows, legs, nights = [] }: ReachVoyage, style: InkStyle): readonly LegendEntry[] {
	const { theme, grades } = style;
	const entries = [
		...gradeEntries(grades, (chances, { x, y, width, height }) => {
			const columns = chances.map((chance, i) => ({
				x1: x + (width * i) / chances.length,
				x2: x + (width * (i + 1)) / chances.length,
				chances: Array.from({ length: 24 }, () => chance),
			}));
			return reachArea(columns, y, height, style);
		}),
		cannotTellEntry(theme),
	];
	if (nights.length > 0) entries.push(nightEntry(theme));
	if (rows.some(({ broadcasts = [] }) => broadcasts.length > 0)) {
		entries.push({
			words: "broadcast: the line lies at its start, the pennants are as deep as it lasts",
			draw: ({ x, y, width, height }) => broadcastMarks([{ from: y + 5, to: y + height - 2, starts: true }], x + 6, x + width - 6, theme),
		});
	}
	if (legs.some(({ stay }) => stay === true)) {
		entries.push({ words: "stay", draw: ({ x, y, width, height }) => svgElement("rect", { x, y: y + height / 2 - 4, width, height: 8 }) });
	}
	return entries;
}

function description({ rows, legs, grades }: ReachVoyage): string {
	const told = legs.map(
		({ name, from, to, stay }) => `${stay === true ? "stay, " : ""}${name} ${dateWords(from, true)} to ${dateWords(to, true)}`,
	);
	const voyage = told.length === 0 ? "" : ` Voyage: ${told.join("; ")}.`;
	const strips = rows.map(({ label, cells, broadcasts = [] }) => {
		const days = daysByBestHour(
			cells.map(({ chances }) => chances),
			grades,
		);
		const sent = broadcasts.length === 0 ? "" : `; broadcasts ${broadcasts.map(spanWords).join(", ")}`;
		return ` ${labelInWords(label)}: ${days}${sent}.`;
	});
	return `Chance of copying each listing by date and by hour of day, UTC.${voyage}${strips.join("")} ${predictionCaution()}`;
}
