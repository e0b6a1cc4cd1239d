import type { Plan, Served } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import type { PlanPage } from "./planPage.ts";
import { capital, headRow, planSection } from "./planSection.ts";

/** Hours a day served, as found and as planned, by want and leg. */
export function planServed({ plan }: PlanPage): string {
	const wants = [...Map.groupBy(plan.served, ({ want }) => want)];
	const heads = [
		{ text: "leg or stay" },
		{ text: "as found, hours a day", class: "figure" },
		{ text: "as planned, hours a day", class: "figure" },
		{ text: "of 24 hours: frame as found, ink as planned", class: "bars" },
		{ text: "broadcasts a day, as found and planned", class: "figure" },
	];
	return planSection({
		id: "served",
		heading: "Hours served, before and after",
		body: [
			htmlWords(
				"p",
				{},
				"Hours a day in which at least one place can be expected to serve, each broadcast counted for as long as it lasts times its chance. Broadcasts of one station on several frequencies count once.",
			),
			htmlElement("table", { class: "stack served" }, [
				htmlWords("caption", {}, "Hours and broadcasts a day, by what is wanted and leg of the voyage"),
				headRow(heads),
				...wants.map(([want, rows]) =>
					htmlElement("tbody", {}, [
						htmlElement("tr", { class: "group" }, [htmlWords("th", { colspan: 5, scope: "rowgroup" }, capital(WANT_WORDS[want]))]),
						...rows.map(servedRow),
						voyageRow(rows, plan),
					]),
				),
			]),
		],
	});
}

function servedRow({ leg, hoursPerDay, broadcastsPerDay }: Served): string {
	const { before, after } = hoursPerDay;
	const sent = broadcastsPerDay === null ? "" : `${broadcastsPerDay.before.toFixed(1)} → ${broadcastsPerDay.after.toFixed(1)}`;
	return htmlElement("tr", { class: "part" }, [
		htmlElement("th", { scope: "row" }, [given(leg)]),
		...figures(before, after),
		figureCell(sent, "broadcasts"),
	]);
}

function voyageRow(rows: readonly Served[], plan: Plan): string {
	const { before, after } = voyageHours(rows, plan);
	return htmlElement("tr", { class: "whole" }, [
		htmlWords("th", { scope: "row" }, "whole voyage"),
		...figures(before, after),
		figureCell("", ""),
	]);
}

/** Means over the voyage, each leg by its days. */
export function voyageHours(rows: readonly Served[], { legs }: Plan): { readonly before: number; readonly after: number } {
	const daysOf = (leg: string) => legs.find(({ name }) => name === leg)?.days ?? 0;
	const days = rows.reduce((sum, { leg }) => sum + daysOf(leg), 0);
	const mean = (side: "before" | "after") => rows.reduce((sum, { leg, hoursPerDay }) => sum + daysOf(leg) * hoursPerDay[side], 0) / days;
	return days === 0 ? { before: 0, after: 0 } : { before: mean("before"), after: mean("after") };
}

function figures(before: number, after: number): readonly string[] {
	const bars = htmlElement("td", { class: "bars", "aria-hidden": "true" }, [bar("bar before", before), bar("bar", after)]);
	return [figureCell(before.toFixed(1), "as found"), figureCell(after.toFixed(1), "as planned"), bars];
}

function bar(name: string, hours: number): string {
	return hours < 0.005 ? "" : htmlElement("span", { class: name, style: `width: ${((Math.min(24, hours) / 24) * 100).toFixed(1)}%` });
}

/** @param name stands before the figure where there is no room for a head of the column */
function figureCell(figure: string, name: string): string {
	return htmlElement("td", { class: "figure", ...(figure === "" ? {} : { "data-name": name }) }, [figure]);
}
