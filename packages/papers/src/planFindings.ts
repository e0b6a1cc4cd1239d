import { folded, given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { placesText } from "./placesText.ts";
import type { PlanPage } from "./planPage.ts";
import { planSection, plural } from "./planSection.ts";
import { escaped } from "./reachSvg.ts";

/** What the checks say of the layout and only has to be minded, by kind. Stops and fixes stand at the head of the page. */
export function planFindings({ plan: { findings } }: PlanPage): string {
	const minds = findings.filter(({ severity }) => severity === "mind");
	const kinds = [...Map.groupBy(minds, ({ code }) => code)].toSorted((a, b) => b[1].length - a[1].length);
	return planSection({
		id: "findings",
		heading: "Other findings of the checks",
		body: [
			htmlWords("p", {}, minds.length === 0 ? "There are none." : `${plural(minds.length, "finding", "findings")} to mind, by kind.`),
			...kinds.map(([code, ones]) =>
				folded(`${escaped(code)} ${htmlWords("span", { class: "quiet" }, `${ones.length}: ${placesText(ones)}`)}`, [
					htmlElement("p", {}, ["To do: ", [...new Set(ones.map(({ remedy }) => remedy))].map(given).join("; or "), "."]),
					htmlElement(
						"ul",
						{ class: "columns" },
						ones.map(({ bank, place, message }) =>
							htmlElement("li", {}, [
								htmlWords("b", {}, bank === null || place === null ? "whole list" : `${bank} ${place}`),
								" ",
								given(message),
							]),
						),
					),
				]),
			),
		],
	});
}
