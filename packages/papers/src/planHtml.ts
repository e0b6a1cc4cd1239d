import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { planBlocks } from "./planBlocks.ts";
import { planFindings } from "./planFindings.ts";
import { planLeftOut } from "./planLeftOut.ts";
import { planLevels } from "./planLevels.ts";
import type { PlanPage } from "./planPage.ts";
import { planReasons } from "./planReasons.ts";
import { planRemoved } from "./planRemoved.ts";
import { planServed } from "./planServed.ts";
import { planStyle } from "./planStyle.ts";
import { planMinded, planTitle } from "./planSummary.ts";
import { planUse } from "./planUse.ts";
import { planWatch } from "./planWatch.ts";
import { checkGrades } from "./reachGrades.ts";
import { printable } from "./typstValue.ts";

/** Nothing is fetched, run or sent from the page; only the style that it carries counts. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

const PARTS: readonly (readonly [id: string, words: string])[] = [
	["minded", "To be minded first"],
	["layout", "Layout"],
	["served", "Hours served"],
	["use", "What to use when"],
	["watch", "DSC watch"],
	["reasons", "Why each place"],
	["left-out", "Left out"],
	["levels", "Weaker or stronger"],
	["removed", "Taken out"],
	["findings", "Other findings"],
];

/**
 * A plan as one page that needs nothing besides itself: for a browser, a phone without a network, and paper. Reads the same as HTML and as
 * XML. No text of the input is ever markup.
 * @throws RangeError for grades that do not fall to 0
 */
export function planHtml(page: PlanPage): string {
	checkGrades(page.grades);
	const { plan, jobTitle, vessel } = page;
	const main = [
		planMinded(page),
		planBlocks(page),
		planServed(page),
		planUse(page),
		planWatch(page),
		planReasons(page),
		planLeftOut(page),
		planLevels(page),
		planRemoved(page),
		planFindings(page),
	];
	const title = `Radio plan: ${jobTitle}, ${vessel.name}, ${plan.on}`;
	const head = htmlElement("head", {}, [
		htmlElement("meta", { charset: "utf-8" }),
		htmlElement("meta", { "http-equiv": "Content-Security-Policy", content: POLICY }),
		htmlElement("meta", { name: "viewport", content: "width=device-width, initial-scale=1" }),
		htmlElement("meta", { name: "referrer", content: "no-referrer" }),
		htmlElement("meta", { name: "color-scheme", content: "light dark" }),
		htmlWords("title", {}, title),
		// characters of the style are never escaped: it holds no text but what `planStyle` writes by number
		`<style>${planStyle(page.grades, { left: printable(`Radio plan, ${vessel.name}`), right: printable(`${jobTitle}, ${plan.on}`) })}</style>`,
	]);
	const body = htmlElement("body", {}, [
		htmlElement("label", { class: "lamp" }, [htmlElement("input", { type: "checkbox", id: "lamp" }), " red lamp"]),
		planTitle(page),
		htmlElement("nav", { "aria-label": "Parts of this page" }, [
			htmlElement(
				"ul",
				{},
				PARTS.filter(([id]) => id !== "levels" || plan.levels.length > 0).map(([id, words]) =>
					htmlElement("li", {}, [htmlWords("a", { href: `#${id}` }, words)]),
				),
			),
		]),
		htmlElement("main", {}, main),
		htmlElement("footer", {}, [
			htmlElement("p", { class: "quiet" }, [
				`Plan of ${plan.on} for ${given(vessel.name)}. The tool advises; the fitter and the skipper decide, and official publications prevail.`,
			]),
		]),
	]);
	return `<!doctype html>\n${htmlElement("html", { lang: "en" }, [head, body])}\n`;
}
