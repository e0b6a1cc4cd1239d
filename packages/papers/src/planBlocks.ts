import type { PlannedPlace, ScanBlock } from "@skipwright/planner";
import { dialText } from "@skipwright/set";
import { given, htmlElement, htmlWords } from "./htmlMarkup.ts";
import { runsText } from "./placesText.ts";
import { usualNight } from "./planNight.ts";
import type { PlanPage } from "./planPage.ts";
import { cellId, reasonId } from "./planPlaceLink.ts";
import { placeRibbon, ribbonNight } from "./planRibbon.ts";
import { planSection } from "./planSection.ts";
import { escaped } from "./reachSvg.ts";

/** The set as its blocks: one strip of cells each. */
export function planBlocks(page: PlanPage): string {
	const { profile } = page;
	return planSection({
		id: "layout",
		heading: "The layout, block by block",
		body: [
			htmlWords(
				"p",
				{},
				"Each cell is a place of the set: its number, what it shows, what the dial must read, and a day from 0000 to 2400 UTC.",
			),
			ribbonNight(usualNight(page.samples)),
			legend(page),
			...profile.banks.flatMap(({ id, places, blockLength }) => [
				htmlWords("h3", {}, `Bank ${id}`),
				...Array.from({ length: Math.ceil(places / blockLength) }, (_, i) =>
					blockStrip(page, { bank: id, first: i * blockLength + 1, last: Math.min(places, (i + 1) * blockLength) }),
				),
			]),
		],
	});
}

function legend({ grades }: PlanPage): string {
	const chances = grades.flatMap(({ from }, i) =>
		Array.from({ length: Math.floor(24 / grades.length) }, () => ((grades[i - 1]?.from ?? 1) + from) / 2),
	);
	const whole = [...chances, ...Array.from({ length: 24 - chances.length }, () => 0)];
	const sample = (day: PlannedPlace["day"], words: string) =>
		htmlElement("li", {}, [htmlElement("span", { style: "width: 9rem; flex: none" }, [placeRibbon(day, grades, words)]), escaped(words)]);
	const words = grades.map(({ word, from }) => (from === 0 ? word : `${word} from ${Math.round(from * 100)} %`));
	return htmlElement("ul", { class: "legend" }, [
		sample(
			{ leg: null, chances: whole, broadcasts: null },
			`ink: ${words.join(", ")} of days, on the leg where it is heard best; slanted lines: mostly night aboard`,
		),
		sample({ leg: null, chances: null, broadcasts: null }, "dots: it cannot be told"),
		sample(
			{
				leg: null,
				chances: Array.from({ length: 24 }, () => 0.3),
				broadcasts: [360, 720, 1_080].map((fromMin) => ({ fromMin, toMin: fromMin + 60 })),
			},
			"bars under the ink: when it is sent",
		),
	]);
}

type Range = Pick<ScanBlock, "bank" | "first" | "last">;

/** One strip of cells, empty places among them. */
function blockStrip(page: PlanPage, { bank, first, last }: Range): string {
	const at = new Map(page.plan.places.filter((place) => place.bank === bank).map((place) => [place.place, place]));
	const numbers = Array.from({ length: last - first + 1 }, (_, i) => first + i);
	const filled = numbers.filter((number) => at.has(number)).length;
	const scan = page.plan.blocks.find((block) => block.bank === bank && block.first === first);
	const heading = `Places ${first} to ${last}`;
	return [
		htmlElement("h4", { class: "block" }, [
			escaped(heading),
			htmlWords(
				"span",
				{ class: "quiet" },
				`: ${filled === 0 ? "empty" : `${filled} filled${scan === undefined ? "" : `; ${scanWords(scan)}`}`}`,
			),
		]),
		filled === 0
			? ""
			: htmlElement(
					"ol",
					{ class: "strip", role: "list", "aria-label": `${bank}, places ${first} to ${last}` },
					cellsOf(numbers, at, page),
				),
	].join("");
}

/** What it is to scan a block, and why one is not for scanning. */
function scanWords({ kind, isScanned, revisitS, catches }: ScanBlock): string {
	if (!isScanned) return NOT_SCANNED[kind];
	const every = revisitS === null ? "" : `, each place every ${revisitS < 10 ? revisitS.toFixed(1) : Math.round(revisitS)} seconds`;
	return `for scanning${every}${catchWords(catches)}`;
}

/** Lengths from which every call is caught are told as one. */
function catchWords(catches: ScanBlock["catches"]): string {
	const isAll = ({ chance }: ScanBlock["catches"][number]) => chance >= 0.995;
	const all = catches.findIndex((_, i) => catches.slice(i).every(isAll));
	const told = catches.slice(0, all < 0 ? catches.length : all + 1).map(({ callS, chance }, i) => {
		const share = i === all ? "all" : `${Math.round(chance * 100)} %`;
		return `${share} of ${i === 0 ? "calls of " : ""}${callS} seconds${i === all ? " or more" : ""}`;
	});
	return told.length === 0 ? "" : `; it catches ${told.join(", ")}`;
}

const NOT_SCANNED: Readonly<Record<ScanBlock["kind"], string>> = {
	speech: "not scanned by this set",
	timed: "tuned to at set times, not scanned",
	data: "charts and text, which need the set to themselves: not scanned",
	mixed: "of several kinds: not for scanning",
	empty: "empty",
};

/** Places in order; empty ones that follow each other share a cell. */
function cellsOf(numbers: readonly number[], at: ReadonlyMap<number, PlannedPlace>, page: PlanPage): readonly string[] {
	const cells: string[] = [];
	let empty: number[] = [];
	const close = () => {
		if (empty.length > 0) cells.push(emptyCell(empty));
		empty = [];
	};
	for (const number of numbers) {
		const place = at.get(number);
		if (place === undefined) empty.push(number);
		else {
			close();
			cells.push(placeCell(place, page));
		}
	}
	close();
	return cells;
}

function emptyCell(numbers: readonly number[]): string {
	return htmlElement("li", { class: "cell empty" }, [htmlWords("span", { class: "number" }, runsText(numbers)), "empty"]);
}

/** One place: a guard carrier, what sends and what only receives can be told at a glance, without colour. */
function placeCell(place: PlannedPlace, { profile, grades, words }: PlanPage): string {
	const { bank, place: number, tag, receiveHz, transmitHz, mode, pinned, changed, want, day, notes } = place;
	const isGuard = want === "guard";
	const isMended = notes.some((note) => note.startsWith("put right"));
	const marks = [...(pinned ? ["pinned"] : []), ...(changed ? [isMended ? "mended" : "new here"] : [])];
	const sends =
		transmitHz === null
			? "receive only"
			: transmitHz === receiveHz
				? htmlElement("b", {}, ["sends here too"])
				: htmlElement("b", {}, [`sends ${escaped(dialText(profile, transmitHz))}`]);
	const kind = `cell${isGuard ? " guard" : ""}${changed ? " changed" : ""}`;
	return htmlElement("li", { class: kind, id: cellId(bank, number) }, [
		isGuard ? htmlWords("span", { class: "guard-word" }, "guard: distress") : "",
		htmlElement("a", { href: `#${reasonId(bank, number)}` }, [
			htmlWords("span", { class: "number" }, String(number)),
			htmlElement("span", { class: "tag" }, [given(tag)]),
		]),
		htmlWords("span", { class: "dial" }, `${dialText(profile, receiveHz)} ${mode}`),
		htmlElement("span", { class: "sends" }, [sends]),
		placeRibbon(day, grades, day.chances === null ? "it cannot be told when this is heard" : words(day.chances)),
		htmlElement(
			"span",
			{ class: "marks" },
			marks.map((mark) => htmlWords("span", { class: "mark" }, mark)),
		),
	]);
}
