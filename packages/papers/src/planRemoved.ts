import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import type { PlanPage } from "./planPage.ts";
import { headRow, planSection } from "./planSection.ts";
import { escaped } from "./reachSvg.ts";

/** Rows of the list as found that go, each with its reason. */
export function planRemoved({ plan: { removed } }: PlanPage): string {
	const rows = removed.map(({ bank, place, tag, why }) =>
		htmlElement("tr", {}, [
			htmlElement("th", { scope: "row" }, [`${escaped(bank)} ${place} `, htmlElement("span", { class: "tag" }, [given(tag)])]),
			htmlElement("td", {}, [given(why)]),
		]),
	);
	return planSection({
		id: "removed",
		heading: "Taken out of the list as found",
		body: [
			rows.length === 0
				? htmlWords("p", {}, "Nothing is taken out.")
				: htmlElement("table", { class: "stack removed" }, [
						htmlWords("caption", { class: "said" }, "Rows that are taken out"),
						headRow([{ text: "it was at" }, { text: "why it goes" }]),
						htmlElement("tbody", {}, rows),
					]),
		],
	});
}
