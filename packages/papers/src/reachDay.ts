import { MINUTES_PER_DAY } from "@skipwright/units";
import { reachBroadcasts } from "./reachBroadcasts.ts";
import { checkDay, checkGrades, type ReachGrade } from "./reachGrades.ts";
import { reachHatch } from "./reachHatch.ts";
import { checkedOffset, clock } from "./reachHours.ts";
import { HOURS_PER_DAY, type InkStyle, reachInk } from "./reachInk.ts";
import { drawnLabel, labelInWords, labelLines, WORDS, wordLines } from "./reachLabel.ts";
import { cannotTellEntry, gradeEntries, type LegendEntry, nightEntry, type Placed, predictionCaution } from "./reachLegend.ts";
import { textLines } from "./reachLines.ts";
import { FIGURES_FACE, MARGIN, type ReachLooks, svgPicture, themeOf, titleFoot, widthOf } from "./reachPicture.ts";
import { type MinuteSpan, spanPieces, spanWords } from "./reachSpans.ts";
import { figure, svgElement, svgWords } from "./reachSvg.ts";
import type { ReachTheme } from "./reachTheme.ts";
import { hoursByGrade } from "./reachWords.ts";

/** One listing on one day. */
export interface ReachDayRow {
	/** Station and frequency; what stands after a line break goes under it, lighter. */
	readonly label: string;
	/** 24, by UTC hour; one outside 0 to 1 is "cannot tell". */
	readonly chances: ArrayLike<number>;
	readonly broadcasts: readonly MinuteSpan[];
	/** The hours in words. */
	readonly note?: string;
}

export interface ReachDay extends ReachLooks {
	readonly title: string;
	readonly rows: readonly ReachDayRow[];
	/** When it is night aboard. */
	readonly night: readonly MinuteSpan[];
	/** Words for chances, best first, down to one from 0. */
	readonly grades: readonly ReachGrade[];
	/** Boat time less UTC, minutes. */
	readonly boatTimeOffsetMin?: number;
}

const LABEL_SHARE = 0.215;
const NOTE_SHARE = 0.235;
const NOTE_GAP = 10;
const AXIS_LINE = 14;
/** px. The ink keeps `inset` off the edges of its bar, so that night shows behind the fullest. */
const BAR = { height: 30, inset: 5 };
const ROW_GAP = 9;
/** A picture of more rows has its hours at the foot as well. */
const ROWS_UNDER_ONE_AXIS = 6;
/** Hours that bear a figure. */
const FIGURE_MINUTES = Array.from({ length: 9 }, (_, i) => i * 180);

/** Where the day lies across the picture. */
interface DayColumn {
	readonly x: number;
	readonly width: number;
}

/**
 * One day, one bar a listing: ink that is darker and broader where the chance is better, night hatched, broadcasts as pennants on a staff
 * at their start, the hours in words beside it. Hours are UTC, with boat time under it where that is given.
 * @throws RangeError for a row without 24 chances, times outside the day, grades that do not fall to 0, or a width outside 420 to 10 000
 */
export function reachDay(day: ReachDay): string {
	checkGrades(day.grades);
	const width = widthOf(day);
	const theme = themeOf(day);
	const style: InkStyle = { grades: day.grades, theme };
	const labelWidth = Math.round(width * LABEL_SHARE);
	// whole px an hour, so that cells meet without a seam
	const hourWidth = Math.floor((width - labelWidth - Math.round(width * NOTE_SHARE) - 2 * MARGIN) / HOURS_PER_DAY);
	const column: DayColumn = { x: MARGIN + labelWidth, width: hourWidth * HOURS_PER_DAY };
	const night = day.night.flatMap((span, i) => spanPieces(span, `night[${i}]`));
	const hours = hourScales(day.boatTimeOffsetMin, column);

	const axisY = titleFoot(day.title, width);
	const top = axisY + hours.height;
	const rows: string[] = [];
	let y = top;
	for (const [i, row] of day.rows.entries()) {
		const { markup, height } = dayRow(row, `rows[${i}]`, { y, width, column, night, style });
		rows.push(markup);
		y += height + ROW_GAP;
	}
	const marks = [hours.at(axisY), gridLines(column, top - 4, Math.max(top, y - ROW_GAP + 4), theme), ...rows];
	if (day.rows.length > ROWS_UNDER_ONE_AXIS) {
		marks.push(hours.at(y - 4));
		y += hours.height;
	}
	return svgPicture({
		id: day.id ?? "reach-day",
		title: day.title,
		description: description(day),
		width,
		theme,
		marks,
		foot: y,
		legend: legendOf(day, style),
	});
}

function xOf(minute: number, { x, width }: DayColumn): number {
	return x + (minute / MINUTES_PER_DAY) * width;
}

interface RowPlace {
	readonly y: number;
	readonly width: number;
	readonly column: DayColumn;
	readonly night: readonly MinuteSpan[];
	readonly style: InkStyle;
}

function dayRow(row: ReachDayRow, what: string, { y, width, column, night, style }: RowPlace): Placed {
	checkDay(row.chances, `${what}.chances`);
	const { theme } = style;
	const label = labelLines(row.label, column.x - MARGIN - NOTE_GAP);
	const noteX = column.x + column.width + NOTE_GAP;
	const note = textLines(row.note ?? "", width - noteX - MARGIN, WORDS.size);
	const height = Math.max(BAR.height, label.height, note.length * WORDS.lineHeight);
	const middle = y + height / 2;
	const noteFoot = middle - (note.length * WORDS.lineHeight) / 2 + WORDS.size - 0.5;
	const bar = { x: column.x, y: middle - BAR.height / 2, width: column.width, height: BAR.height };
	const markup = svgElement("g", { class: "reach-row" }, [
		drawnLabel(label, MARGIN, middle - label.height / 2),
		reachHatch(
			night.map((span) => nightBox(span, column, bar.y)),
			theme,
		),
		reachInk(row.chances, { ...bar, y: bar.y + BAR.inset, height: BAR.height - 2 * BAR.inset }, style),
		reachBroadcasts(row.broadcasts, bar, theme, `${what}.broadcasts`),
		wordLines(note, noteX, noteFoot, WORDS.lineHeight, { class: "reach-note", "font-size": WORDS.size }),
	]);
	return { markup, height };
}

function nightBox({ fromMin, toMin }: MinuteSpan, column: DayColumn, barY: number) {
	const ends = fromMin === toMin ? [] : [fromMin, toMin].filter((minute) => minute > 0 && minute < MINUTES_PER_DAY);
	return {
		x1: xOf(fromMin, column),
		x2: xOf(toMin, column),
		y1: barY,
		y2: barY + BAR.height,
		edgesX: ends.map((minute) => xOf(minute, column)),
	};
}

/** The figures over the bars: UTC, and under it boat time. */
function hourScales(boatTimeOffsetMin: number | undefined, column: DayColumn) {
	const scales = [{ name: "UTC", offsetMin: 0, weight: "bold" }];
	if (boatTimeOffsetMin !== undefined) {
		scales.push({ name: "boat time", offsetMin: checkedOffset(boatTimeOffsetMin), weight: "normal" });
	}
	const at = (y: number) =>
		scales.map(({ name, offsetMin, weight }, i) => {
			const foot = y + 11 + i * AXIS_LINE;
			const figures = FIGURE_MINUTES.map((minute) =>
				svgWords("text", { x: xOf(minute, column), y: foot }, clock(minute, offsetMin, i === 0)),
			);
			return svgElement("g", { class: i === 0 ? "reach-utc" : "reach-boat-time", "font-size": 11 }, [
				svgWords("text", { x: column.x - 20, y: foot, "text-anchor": "end", "font-weight": "bold" }, name),
				svgElement("g", { "text-anchor": "middle", "font-family": FIGURES_FACE, "font-weight": weight }, figures),
			]);
		});
	return { height: scales.length * AXIS_LINE + 8, at: (y: number) => at(y).join("\n") };
}

function gridLines(column: DayColumn, top: number, bottom: number, theme: ReachTheme): string {
	const d = FIGURE_MINUTES.map((minute) => `M${figure(xOf(minute, column))} ${figure(top)}V${figure(bottom)}`).join("");
	return svgElement("path", { class: "reach-grid", stroke: theme.hatch, "stroke-width": 0.6, fill: "none", d });
}

function legendOf({ rows, night }: ReachDay, style: InkStyle): readonly LegendEntry[] {
	const { theme, grades } = style;
	const entries = [
		// six hours of each chance
		...gradeEntries(grades, (chances, box) =>
			reachInk(
				chances.flatMap((chance) => Array.from({ length: 6 }, () => chance)),
				box,
				style,
			),
		),
		cannotTellEntry(theme),
	];
	if (night.length > 0) entries.push(nightEntry(theme));
	if (rows.some(({ broadcasts }) => broadcasts.length > 0)) {
		entries.push({
			words: "broadcast: the staff stands at its start, the pennant is as long as it lasts",
			draw: (box) => reachBroadcasts([{ fromMin: 480, toMin: 1_200 }], box, theme, "legend"),
		});
	}
	return entries;
}

function description({ rows, night, grades }: ReachDay): string {
	const nights = night.length === 0 ? "" : ` Night aboard ${night.map(spanWords).join(" and ")}.`;
	const told = rows.map(({ label, note, chances, broadcasts }) => {
		const sent = broadcasts.length === 0 ? "" : `; broadcasts ${broadcasts.map(spanWords).join(", ")}`;
		return ` ${labelInWords(label)}: ${note ?? hoursByGrade(chances, grades)}${sent}.`;
	});
	return `Chance of copying each listing by hour of day, UTC.${nights}${told.join("")} ${predictionCaution()}`;
}
