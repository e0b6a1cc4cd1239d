import { isReceiver } from "@skipwright/set";
import { CAUTIONS, RECEIVER_CAUTIONS } from "./cautions.ts";
import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import type { PlanPage } from "./planPage.ts";
import { capital, planSection, plural } from "./planSection.ts";
import { planOrderWords, planStatusWords } from "./planStatusWords.ts";
import { escaped } from "./reachSvg.ts";

/** What the page is about, over everything else. */
export function planTitle(page: PlanPage): string {
	const { plan, jobTitle, vessel, profile, directory } = page;
	const facts: readonly (readonly [string, string])[] = [
		["Vessel", given(vessel.name)],
		["Call sign", given(vessel.callSign ?? "not given")],
		["MMSI", given(vessel.mmsi ?? "not given")],
		["Set", given(profile.name)],
		["Day of the plan", escaped(plan.on)],
		["Directory of", escaped(directory.edition)],
	];
	return htmlElement("header", {}, [
		htmlElement("h1", {}, [`Radio plan: ${given(jobTitle)}`]),
		htmlElement(
			"dl",
			{ class: "facts" },
			facts.map(([name, value]) => htmlElement("div", {}, [htmlWords("dt", {}, name), htmlElement("dd", {}, [value])])),
		),
		htmlWords("p", {}, placesWords(page)),
		htmlWords("p", {}, `${capital(planStatusWords(plan))}; ${planOrderWords(plan)}. Hours rest on the ${plan.basis}.`),
		htmlWords("p", { class: "quiet" }, "All times are UTC; frequencies are what the dial reads, in kHz."),
	]);
}

function placesWords({ plan: { places, removed }, profile: { banks } }: PlanPage): string {
	const changed = places.filter((place) => place.changed).length;
	const perBank = banks.map(({ id, places: count }) => `${places.filter(({ bank }) => bank === id).length} of ${count} in ${id}`);
	return `${plural(places.length, "place", "places")} (${perBank.join(", ")}): ${places.length - changed} as found, ${changed} new or mended; ${plural(removed.length, "row", "rows")} of the list as found taken out.`;
}

/** What must be settled or known before anything is keyed. */
export function planMinded({ plan: { conflicts, doubts, findings }, profile }: PlanPage): string {
	const standing = findings.filter(({ severity }) => severity !== "mind");
	const stale = findings.filter(({ code }) => code === "listing-stale").length;
	const groups = isReceiver(profile) ? RECEIVER_CAUTIONS : CAUTIONS;
	const serious = [
		...conflicts.map((text) =>
			htmlElement("div", { class: "stop" }, [htmlWords("span", { class: "word" }, "cannot be kept"), ` ${given(text)}`]),
		),
		...(["stop", "fix"] as const).flatMap((severity) =>
			standing
				.filter((finding) => finding.severity === severity)
				.map(({ bank, place, message, remedy }) =>
					htmlElement("div", { class: severity }, [
						htmlWords("span", { class: "word" }, severity),
						` ${escaped(bank === null || place === null ? "whole list" : `${bank} ${place}`)}: ${given(message)} `,
						htmlElement("b", {}, [`Do: ${given(remedy)}`]),
					]),
				),
		),
	];
	return planSection({
		id: "minded",
		heading: "To be minded first",
		body: [
			...serious,
			...doubts.map((doubt) => htmlElement("p", {}, [htmlWords("span", { class: "word" }, "is this meant?"), ` ${given(doubt)}`])),
			serious.length === 0 ? htmlWords("p", {}, "Nothing in the layout has to be stopped for or fixed.") : "",
			stale === 0
				? ""
				: htmlWords(
						"p",
						{},
						`${plural(stale, "place rests on a figure", "places rest on figures")} too old, or too little proved, to rely on: confirm in a current list or on the air.`,
					),
			htmlElement(
				"div",
				{ class: "cautions" },
				groups.map(({ heading, lines }) =>
					htmlElement("div", {}, [
						htmlWords("h3", {}, heading),
						htmlElement(
							"ul",
							{},
							lines.map((line) => htmlWords("li", {}, line)),
						),
					]),
				),
			),
		],
	});
}
