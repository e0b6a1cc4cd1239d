import { folded, given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { listingName } from "./listingName.ts";
import type { PlanPage } from "./planPage.ts";
import { capital, planSection } from "./planSection.ts";

/** What an owner may miss, by the reason why it was left out. */
export function planLeftOut({ plan, directory }: PlanPage): string {
	const reasons = [...Map.groupBy(plan.leftOut, ({ why }) => kindOf(why))].toSorted((a, b) => b[1].length - a[1].length);
	return planSection({
		id: "left-out",
		heading: "What was left out",
		body: [
			htmlWords(
				"p",
				{},
				plan.leftOut.length === 0
					? "Everything that was asked for has a place."
					: "Wanted, or of the kind that is wanted, but at no place. A weight, a pin or more free places in the job can bring one in.",
			),
			...reasons.map(([why, ones]) =>
				folded(`${given(capital(why))} ${htmlWords("span", { class: "quiet" }, String(ones.length))}`, [
					htmlElement(
						"ul",
						{ class: "columns" },
						ones.map(({ listing, why: own }) =>
							htmlElement("li", {}, [
								given(listingName(listing, directory)),
								...(kindOf(own) === own ? [] : [htmlWords("span", { class: "quiet" }, `: ${own.slice(kindOf(own).length + 2)}`)]),
							]),
						),
					),
				]),
			),
		],
	});
}

/** Reasons of one kind together: "adds little", "needs no place of its own". What follows is each listing's own. */
function kindOf(why: string): string {
	return /^(adds little|needs no place of its own|cannot tell whether it is heard): /.exec(why)?.[1] ?? why;
}
