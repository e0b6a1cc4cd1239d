import { type Directory, listingById, stationOf } from "@skipwright/directory";
import { SERVICE_WORDS } from "@skipwright/rules";
import { formatKhz } from "@skipwright/units";
import { folded, given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import type { PlanPage } from "./planPage.ts";
import { capital, planSection } from "./planSection.ts";

/** What an owner may miss, by the reason why it was left out. */
export function planLeftOut({ plan, directory }: PlanPage): string {
	const reasons = [...Map.groupBy(plan.leftOut, ({ why }) => why)].toSorted((a, b) => b[1].length - a[1].length);
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
						ones.map(({ listing }) => htmlElement("li", {}, [given(listingName(listing, directory))])),
					),
				]),
			),
		],
	});
}

/** `"Cape Town Radio, weather by voice, 4375 kHz"`; an id that no listing bears as it is. */
function listingName(id: string, directory: Directory): string {
	const listing = listingById(directory, id);
	if (listing === null) return channelName(id);
	const figure = listing.channel === null ? `${formatKhz(listing.hz)} kHz` : `channel ${listing.channel}`;
	return `${stationOf(directory, listing).name}, ${SERVICE_WORDS[listing.service]}, ${figure}`;
}

/** `ap17/1221` is a channel of Appendix 17, `ap17/4146` a carrier of it. */
function channelName(id: string): string {
	const [kind, figure] = id.split("/");
	if (kind === "ap17" && figure !== undefined) return Number(figure) > 2_600 ? `ship to ship, ${figure} kHz` : `channel ${figure}`;
	if (kind === "safety" && figure !== undefined) return `safety text, ${figure} kHz`;
	return id;
}
