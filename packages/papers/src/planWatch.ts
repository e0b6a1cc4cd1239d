import type { LegOffWatch } from "@skipwright/planner";
import { formatKhz } from "@skipwright/units";
import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import type { PlanPage } from "./planPage.ts";
import { headRow, planSection } from "./planSection.ts";
import { spanWords } from "./reachSpans.ts";

/** The selective calling watch: its table in the set, and when it is off. */
export function planWatch({ plan: { watch } }: PlanPage): string {
	const { tableHz, problems, off } = watch;
	return planSection({
		id: "watch",
		heading: "Selective calling (DSC) watch",
		body: [
			tableHz === null
				? htmlWords("p", {}, "This set has no table of frequencies to watch.")
				: htmlElement("table", { class: "watch" }, [
						htmlWords("caption", {}, "The set's watch table, apart from its places"),
						headRow([{ text: "entry" }, { text: "kHz", class: "figure" }]),
						htmlElement(
							"tbody",
							{},
							tableHz.map((hz, i) =>
								htmlElement("tr", {}, [
									htmlWords("th", { scope: "row" }, String(i + 1)),
									htmlWords("td", { class: "figure" }, formatKhz(hz)),
								]),
							),
						),
					]),
			...problems.map((problem) =>
				htmlElement("div", { class: "fix" }, [htmlWords("span", { class: "word" }, "mind"), ` ${given(problem)}`]),
			),
			off === null ? htmlWords("p", {}, "A second receiver keeps the watch while the set takes broadcasts.") : offTable(off),
		],
	});
}

function offTable(off: readonly LegOffWatch[]): string {
	const rows = off.map(({ leg, minutes, times }) =>
		htmlElement("tr", {}, [
			htmlElement("th", { scope: "row" }, [given(leg)]),
			htmlWords("td", { class: "figure", "data-name": "hours a day" }, (minutes / 60).toFixed(1)),
			htmlWords("td", {}, times.length === 0 ? "never" : unionOf(times).map(spanWords).join(", ")),
		]),
	);
	return [
		htmlWords(
			"p",
			{},
			"The set has one receiver: while it takes a broadcast it keeps no watch. If everything that is named first above is taken, the watch is off at these times of the leg's middle day:",
		),
		htmlElement("table", { class: "stack off" }, [
			htmlWords("caption", {}, "When no watch is kept, UTC"),
			headRow([{ text: "leg or stay" }, { text: "hours a day", class: "figure" }, { text: "times" }]),
			htmlElement("tbody", {}, rows),
		]),
	].join("");
}

interface Span {
	readonly fromMin: number;
	readonly toMin: number;
}

/** What lies in any of some spans in order of their start, touching ones as one. */
function unionOf(spans: readonly Span[]): readonly Span[] {
	const merged: { fromMin: number; toMin: number }[] = [];
	for (const { fromMin, toMin } of spans) {
		const last = merged.at(-1);
		if (last !== undefined && fromMin <= last.toMin) last.toMin = Math.max(last.toMin, toMin);
		else merged.push({ fromMin, toMin });
	}
	return merged;
}
