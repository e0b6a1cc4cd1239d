import { folded, given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { placeReason } from "./placeReason.ts";
import type { PlanPage } from "./planPage.ts";
import { cellId, reasonId } from "./planPlaceLink.ts";
import { headRow, planSection, plural } from "./planSection.ts";
import { escaped } from "./reachSvg.ts";

/** Why each place is held, by block. */
export function planReasons({ plan, profile, words }: PlanPage): string {
	const blocks = profile.banks.flatMap(({ id, places, blockLength }) =>
		Array.from({ length: Math.ceil(places / blockLength) }, (_, i) => ({
			bank: id,
			first: i * blockLength + 1,
			last: Math.min(places, (i + 1) * blockLength),
		})),
	);
	return planSection({
		id: "reasons",
		heading: "Why each place is held",
		body: [
			htmlWords("p", {}, "Hours and ranks are means over the whole voyage. What would be lost counts only what no other place gives."),
			...blocks.map(({ bank, first, last }) => {
				const held = plan.places.filter(({ bank: own, place }) => own === bank && place >= first && place <= last);
				if (held.length === 0) return "";
				const rows = held.map((place) =>
					htmlElement("tr", { id: reasonId(bank, place.place) }, [
						htmlElement("th", { scope: "row" }, [
							htmlWords("a", { href: `#${cellId(bank, place.place)}` }, `${bank} ${place.place}`),
							" ",
							htmlElement("span", { class: "tag" }, [given(place.tag)]),
						]),
						htmlElement("td", {}, [htmlElement("b", {}, [given(place.what)]), ` ${escaped(placeReason(place, words))}`]),
					]),
				);
				const name = `${bank}, places ${first} to ${last}`;
				return folded(`${escaped(name)} ${htmlWords("span", { class: "quiet" }, plural(held.length, "place", "places"))}`, [
					htmlElement("table", { class: "stack reasons" }, [
						htmlWords("caption", { class: "said" }, `Why each place is held: ${name}`),
						headRow([{ text: "place" }, { text: "why" }]),
						htmlElement("tbody", {}, rows),
					]),
				]);
			}),
		],
	});
}
