import type { PlannedLeg, UsePlace, UseRun } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { MINUTES_PER_DAY } from "@skipwright/units";
import { folded, given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { inPageColours } from "./pictureColours.ts";
import { hourRunsOf, usualNight } from "./planNight.ts";
import type { PlanPage } from "./planPage.ts";
import { bankLetters, placeLink } from "./planPlaceLink.ts";
import { planSection, plural } from "./planSection.ts";
import { gradeIndex } from "./reachGrades.ts";
import { reachHatch } from "./reachHatch.ts";
import { HOURS_PER_DAY } from "./reachInk.ts";
import { spanWords } from "./reachSpans.ts";
import { escaped, svgElement } from "./reachSvg.ts";
import { REACH_THEMES } from "./reachTheme.ts";

const MINUTES_PER_HOUR = MINUTES_PER_DAY / HOURS_PER_DAY;
/** px of the drawing's own scale. */
const NIGHT = { hour: 40, height: 10 };

/** What to use when: one table a leg, one row of 24 hours a want. */
export function planUse(page: PlanPage): string {
	const { plan, grades } = page;
	const letters = bankLetters(page.profile);
	const named = [...letters].filter(([, letter]) => letter !== "").map(([bank, letter]) => `${letter} is bank ${bank}`);
	const shown = grades.filter(({ from }) => from > 0);
	return planSection({
		id: "use",
		heading: "What to use when",
		body: [
			htmlWords(
				"p",
				{},
				`By leg of the voyage and hour, UTC: the place to try first and, under or beside it, the next best. ${named.length === 0 ? "" : `${named.join(", ")}. `}A place number leads to its cell in the layout.`,
			),
			htmlElement("ul", { class: "legend" }, [
				...shown.map(({ word, from }, i) =>
					htmlElement("li", {}, [
						htmlElement("span", { class: `chance g${i}` }),
						escaped(`first choice ${word}: from ${Math.round(from * 100)} % of days`),
					]),
				),
				htmlWords("li", {}, "– nothing worth trying"),
			]),
			...plan.legs.map((leg, i) => legTable(leg, i, page, letters)),
		],
	});
}

function legTable(leg: PlannedLeg, index: number, page: PlanPage, letters: ReadonlyMap<string, string>): string {
	const { plan, samples } = page;
	const runs = Map.groupBy(
		plan.use.filter((run) => run.leg === leg.name),
		({ want }) => want,
	);
	const wants = [...new Set(plan.use.map(({ want }) => want))];
	const night = usualNight(samples.filter(({ stage }) => stage === leg.name));
	const hours = Array.from({ length: HOURS_PER_DAY }, (_, hour) => htmlWords("th", { scope: "col" }, String(hour).padStart(2, "0")));
	const days = plural(Math.round(leg.days), "day", "days");
	return folded(
		`${given(leg.name)} ${htmlWords("span", { class: "quiet" }, `from ${leg.from}, ${days}`)}`,
		[
			htmlElement("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": `What to use when, ${leg.name}` }, [
				htmlElement("table", { class: "use" }, [
					htmlElement("caption", { class: "said" }, [`${given(leg.name)}: first and second choice by hour`]),
					htmlElement("thead", {}, [htmlElement("tr", {}, [htmlWords("th", { scope: "col" }, "UTC"), ...hours])]),
					htmlElement("tbody", {}, [
						nightRow(night),
						...wants.map((want) =>
							htmlElement("tr", {}, [
								htmlWords("th", { scope: "row" }, WANT_WORDS[want]),
								...dayCells(runs.get(want) ?? [], page, letters),
							]),
						),
					]),
				]),
			]),
		],
		index === 0 ? { class: "leg", open: "open" } : { class: "leg" },
	);
}

/** When it is night aboard, hatched. */
function nightRow(night: readonly boolean[]): string {
	const runs = hourRunsOf(night);
	const words = runs.length === 0 ? "none" : runs.map(({ from, to }) => spanWords(inMinutes(from, to))).join(", ");
	const boxes = runs.map(({ from, to }) => ({ x1: from * NIGHT.hour, x2: to * NIGHT.hour, y1: 0, y2: NIGHT.height }));
	const size = { viewBox: `0 0 ${HOURS_PER_DAY * NIGHT.hour} ${NIGHT.height}`, preserveAspectRatio: "none", "aria-hidden": "true" };
	return htmlElement("tr", { class: "night" }, [
		htmlWords("th", { scope: "row" }, "night aboard"),
		htmlElement("td", { colspan: HOURS_PER_DAY }, [
			htmlWords("span", { class: "when" }, words),
			svgElement("svg", size, [inPageColours(reachHatch(boxes, REACH_THEMES.paper))]),
		]),
	]);
}

function inMinutes(from: number, to: number) {
	return { fromMin: from * MINUTES_PER_HOUR, toMin: to * MINUTES_PER_HOUR };
}

/** Cells that fill the day, one a run and one for each gap. */
function dayCells(runs: readonly UseRun[], page: PlanPage, letters: ReadonlyMap<string, string>): readonly string[] {
	const cells: string[] = [];
	let hour = 0;
	for (const run of runs.toSorted((a, b) => a.fromHour - b.fromHour)) {
		if (run.fromHour > hour) cells.push(gapCell(hour, run.fromHour));
		cells.push(runCell(run, page, letters));
		hour = run.toHour;
	}
	if (hour < HOURS_PER_DAY) cells.push(gapCell(hour, HOURS_PER_DAY));
	return cells;
}

function gapCell(from: number, to: number): string {
	return htmlElement("td", { colspan: to - from, class: "none" }, [when(from, to), "–"]);
}

function runCell({ fromHour, toHour, first, second }: UseRun, { plan, grades }: PlanPage, letters: ReadonlyMap<string, string>): string {
	const choice = (use: UsePlace) => {
		const tag = plan.places.find(({ bank, place }) => bank === use.bank && place === use.place)?.tag ?? "";
		const said = htmlElement("span", { class: "said" }, [` ${given(tag)}`]);
		return `${placeLink(use.bank, use.place, letters, use === first ? "b" : "span")}${said}`;
	};
	return htmlElement("td", { colspan: toHour - fromHour, class: `g${gradeIndex(first.chance, grades) ?? grades.length - 1}` }, [
		when(fromHour, toHour),
		htmlElement("span", { class: "first" }, [choice(first)]),
		second === null ? "" : htmlElement("span", { class: "second" }, [choice(second)]),
	]);
}

/** For who cannot see under which hours a cell stands. */
function when(from: number, to: number): string {
	return htmlWords("span", { class: "when" }, `${spanWords(inMinutes(from, to))} `);
}
