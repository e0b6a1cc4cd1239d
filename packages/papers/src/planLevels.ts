import type { Directory } from "@skipwright/directory";
import type { PlanLevel, Swayed } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { listingName } from "./listingName.ts";
import type { PlanPage } from "./planPage.ts";
import { capital, headRow, planSection } from "./planSection.ts";
import { voyageHours } from "./planServed.ts";

/** How far it all rests on the strength of signals. Empty where nobody asked. */
export function planLevels({ plan, directory }: PlanPage): string {
	const { levels } = plan;
	if (levels.length === 0) return "";
	const rows = [...Map.groupBy(plan.served, ({ want }) => want)].map(([want, served]) =>
		htmlElement("tr", {}, [
			htmlWords("th", { scope: "row" }, capital(WANT_WORDS[want])),
			htmlWords("td", { class: "figure" }, voyageHours(served, plan).after.toFixed(1)),
			...levels.map(({ hours }) => {
				const found = hours.find((one) => one.want === want);
				return htmlWords("td", { class: "figure" }, found === undefined ? "" : found.hoursPerDay.toFixed(1));
			}),
		]),
	);
	return planSection({
		id: "levels",
		heading: "If signals are weaker or stronger",
		body: [
			htmlWords(
				"p",
				{},
				"No forecast of a signal at sea is surer than about 6 dB. What this layout would give, and how the choice would change:",
			),
			htmlElement("table", { class: "levels" }, [
				htmlWords("caption", {}, "Hours a day over the whole voyage"),
				headRow([
					{ text: "wanted" },
					{ text: "as predicted", class: "figure" },
					...levels.map((level) => ({ text: levelWords(level), class: "figure" })),
				]),
				htmlElement("tbody", {}, rows),
			]),
			...levels.map((level) => levelChanges(level, directory)),
		],
	});
}

function levelWords({ db }: PlanLevel): string {
	return db < 0 ? `${-db} dB weaker` : `${db} dB stronger`;
}

function levelChanges(level: PlanLevel, directory: Directory): string {
	const { enters, leaves } = level;
	if (enters.length === 0 && leaves.length === 0) return htmlWords("p", {}, `${capital(levelWords(level))}: the same choice.`);
	return htmlElement("div", {}, [
		htmlWords("h3", {}, capital(levelWords(level))),
		...(
			[
				["would be chosen too", enters],
				["would be left out", leaves],
			] as const
		)
			.filter(([, ones]) => ones.length > 0)
			.flatMap(([words, ones]) => [htmlWords("p", {}, `${capital(words)}:`), swayedList(ones, directory)]),
	]);
}

function swayedList(ones: readonly Swayed[], directory: Directory): string {
	return htmlElement(
		"ul",
		{ class: "columns" },
		ones.map(({ what, listing }) => {
			const name = listingName(listing, directory);
			return htmlElement("li", {}, [given(name === listing ? what : name)]);
		}),
	);
}
