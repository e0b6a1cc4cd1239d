import { CONFIDENCE_WORDS, CONFIDENCES, confidenceText, freshness, type Listing } from "@skipwright/directory";
import { MODES } from "@skipwright/rules";
import { dialText, type Finding, isReceiver, type LoadingSheet, type Profile, type Severity, type SheetStep } from "@skipwright/set";
import { dateOfMs, daysBetween, type IsoDate } from "@skipwright/units";
import { blocksOf, type StepBlock } from "./blocksOf.ts";
import { CAUTIONS, RECEIVER_CAUTIONS } from "./cautions.ts";
import { LOADING_SHEET_TEMPLATE } from "./loadingSheetTemplate.ts";
import { placesText, runsText } from "./placesText.ts";
import { shortTurns } from "./shortTurns.ts";
import { type TypstData, typstValue } from "./typstValue.ts";
import { wrappable } from "./wrappable.ts";

export interface LoadingSheetPaper {
	readonly sheet: LoadingSheet;
	readonly profile: Profile;
	readonly vessel: { readonly name: string; readonly callSign: string | null; readonly mmsi: string | null };
	readonly jobTitle: string;
	/** Day of the sheet; the only date on it. */
	readonly date: IsoDate;
	/** `Directory.edition`. */
	readonly directoryEdition: string;
	/** Must hold the listings that steps name; a step whose listing is not among them prints no source. */
	readonly listings: readonly Listing[];
	/** Findings on the planned list: what still stands. */
	readonly findings: readonly Finding[];
	/** Default A4. */
	readonly paper?: "a4" | "us-letter";
}

/**
 * The printed loading sheet as Typst source: one block of quoted data and one fixed template, so the same input
 * gives the same source and no text of the input is ever markup. Needs the four faces in `fonts/`.
 */
export function loadingSheetTypst(paper: LoadingSheetPaper): string {
	return `#let sheet = ${typstValue(sheetData(paper))}\n${LOADING_SHEET_TEMPLATE}`;
}

/** Longest name that fits the line at the head of a page. The title block prints every name in full. */
const RUNNING_NAME_LENGTH = 42;

function sheetData(paper: LoadingSheetPaper): TypstData {
	const { sheet, profile, vessel } = paper;
	const sends = !isReceiver(profile);
	const findings = inOrder(paper.findings.filter((finding) => !isOldFigure(finding)));
	const oldFigures = oldFiguresText(paper);
	return {
		paper: paper.paper ?? "a4",
		title: `Loading sheet, ${vessel.name}, ${paper.date}`,
		vessel: wrappable(vessel.name),
		"running-vessel": shortened(vessel.name),
		"call-sign": vessel.callSign === null ? null : wrappable(vessel.callSign),
		mmsi: vessel.mmsi === null ? null : mmsiText(vessel.mmsi),
		set: wrappable(profile.name),
		"running-call-sign": shortened(vessel.callSign ?? ""),
		"running-set": shortened(profile.id),
		job: wrappable(paper.jobTitle),
		date: paper.date,
		kind: kindText(sheet),
		"running-kind": sheet.fromBlank ? "from blank" : "from as found",
		steps: sheet.steps.length,
		"nothing-to-key": nothingToKey(sheet),
		minutes: `about ${plural(Math.round(sheet.minutes), "minute", "minutes")}`,
		"minutes-rest-on": wrappable(sheet.minutesRestOn),
		sends,
		"how-to": sends ? HOW_TO : HOW_TO_RECEIVER,
		signs: signsUsed(paper, findings.length > 0),
		cautions: (sends ? CAUTIONS : RECEIVER_CAUTIONS).map(({ heading, lines }) => ({ heading, lines })),
		settings: sheet.settings.map((line) => ({
			name: wrappable(line.name),
			"as-found": wrappable(line.asFound),
			wanted: wrappable(line.wanted),
			note: wrappable(line.note),
		})),
		blocks: blocksOf(sheet.steps, profile).map((block) => blockData(block, paper, findings)),
		"tune-up": sheet.tuneUp.map(({ bandMhz, carrier, note }) => ({
			band: `${bandMhz} MHz`,
			carrier: dialText(profile, carrier),
			note: wrappable(note),
		})),
		"tune-up-below": sends ? tuneUpBelow(profile) : null,
		"finding-count": findingCount(findings),
		"old-figures": oldFigures === null ? null : wrappable(oldFigures),
		"finding-groups": groupsOf(findings).map(({ head, numbered }) => ({
			severity: head.severity,
			code: head.code,
			remedy: wrappable(remedyText(head)),
			source: wrappable(head.source),
			findings: numbered.map(({ number, finding }) => ({
				number,
				where: wrappable(whereText(finding)),
				message: wrappable(finding.message),
			})),
		})),
		directory: wrappable(editionText(paper.directoryEdition, paper.date)),
		sources: sourcesData(paper),
	};
}

const HOW_TO = [
	"Key the steps in order, one line at a time: place, receive dial, transmit dial, mode, tag, store; then tick the left-hand box, so that anyone can go on where you stopped.",
	"Every dial is what the display must read in the mode beside it: take no further step for charts or text, and never key a transmit dial where the line says receive only.",
	"When all is keyed, call up every place again and compare it with its line, not with memory: tick the right-hand box when everything agrees, else write what the set shows and put it right.",
];

/** The same of a set without a transmitter. */
const HOW_TO_RECEIVER = [
	"Key the steps in order, one line at a time: place, dial, mode, tag, store; then tick the left-hand box, so that anyone can go on where you stopped.",
	"Every dial is what the display must read in the mode beside it: take no further step for charts or text.",
	...HOW_TO.slice(2),
];

const SEVERITIES: readonly Severity[] = ["stop", "fix", "mind"];

function kindText({ fromBlank, unchanged }: LoadingSheet): string {
	if (fromBlank) return "From blank: every place is keyed";
	const kept = unchanged === 0 ? "" : `; ${plural(unchanged, "place stays as it is", "places stay as they are")}`;
	return `From as found: only what differs is keyed${kept}`;
}

function nothingToKey({ steps, unchanged }: LoadingSheet): string | null {
	if (steps.length > 0) return null;
	return `Nothing to key: ${plural(unchanged, "place already holds", "places already hold")} what is wanted. Read back all the same.`;
}

/** Short remarks that explain the signs of this very sheet, and no others. */
function signsUsed({ profile }: LoadingSheetPaper, withFindings: boolean): TypstData {
	const signs: { sign: string; means: string }[] = [];
	if (profile.entry !== "keypad") {
		signs.push({
			sign: "+5×10k −2×1k",
			means: `turns of the knob that bring the dial there: five clicks up with the 10 kHz step, two down with the 1 kHz step${
				profile.stepsCarry ? "" : " (on this set a step does not carry into the next digit)"
			}. ${turnedFrom(profile)} The printed dial counts, not the turns.`,
		});
	}
	if (profile.entry !== "knob") signs.push({ sign: "8 1 1 3 . 5", means: "keys in the order in which they are pressed." });
	const words = modeWords(profile);
	if (words !== "") signs.push({ sign: "mode", means: wrappable(`the set may call it by another word: ${words}.`) });
	signs.push({ sign: "dial", means: `${modeDisplays(profile)}. Frequencies in kHz.` });
	if (withFindings) signs.push({ sign: "see 1", means: "finding 1 in the list of findings that still stand." });
	return signs;
}

function turnedFrom(profile: Profile): string {
	if (isReceiver(profile)) return "A dial is turned from that of the step before, the first from what its place holds.";
	return "The receive dial is turned from where the step before ended: its transmit dial where it has two, else its only dial; the first from what its place holds. The transmit dial is turned from the receive dial.";
}

/** `USB is J3E; AM is H3E or A3E` */
function modeWords({ modes, modeNames }: Profile): string {
	const parts = MODES.filter((mode) => modes[mode] !== undefined).map((mode) => {
		const words = Object.keys(modeNames).filter((word) => modeNames[word] === mode && word.toUpperCase() !== mode);
		return words.length === 0 ? "" : `${mode} is ${words.join(" or ")}`;
	});
	return parts.filter((part) => part !== "").join("; ");
}

const SHOWS_WORDS = { carrier: "carrier", centre: "centre of the signal", mark: "mark tone" } as const;

/** `USB, LSB show the carrier; CW shows the carrier less 800 Hz; FSK shows the centre of the signal`. */
function modeDisplays({ modes }: Profile): string {
	const having = Map.groupBy(
		MODES.filter((mode) => modes[mode] !== undefined),
		(mode) => {
			const { shows = "carrier", pitchHz = 0 } = modes[mode] ?? {};
			return shows === "carrier" && pitchHz > 0 ? `carrier less ${pitchHz} Hz` : SHOWS_WORDS[shows];
		},
	);
	return [...having].map(([words, same]) => `${same.join(", ")} ${same.length === 1 ? "shows" : "show"} the ${words}`).join("; ");
}

/** Hz. Appendix 17 of the Radio Regulations begins here. */
const APPENDIX_17_FROM_HZ = 4_000_000;

/** What stands in the tuning-up table for the band that Appendix 17 leaves out; null where the set does not send there. */
function tuneUpBelow({ transmit }: Profile): string | null {
	if (!transmit.some(({ fromHz }) => fromHz < APPENDIX_17_FROM_HZ)) return null;
	return "Appendix 17 gives no simplex working carrier; ask the administration for a working frequency; never tune up on 2182.";
}

function blockData(block: StepBlock, paper: LoadingSheetPaper, findings: readonly Finding[]): TypstData {
	const steps = plural(block.steps.length, "step", "steps");
	return {
		bank: wrappable(block.bank),
		name: block.places === null ? "not a place of this set" : `block ${block.number}, places ${block.places.from} to ${block.places.to}`,
		count: block.resumed ? `${steps}, block taken up again` : steps,
		steps: block.steps.map((step) => stepData(step, paper, findings)),
	};
}

function stepData(step: SheetStep, paper: LoadingSheetPaper, findings: readonly Finding[]): TypstData {
	const { sheet, profile } = paper;
	const clear = step.action === "clear";
	const what = clear ? "" : wrappable(step.what);
	const before = sheet.fromBlank ? "" : wrappable(step.before);
	return {
		order: step.order,
		place: step.place,
		clear,
		tag: wrappable(step.tag, TAG_WIDTH),
		receive: clear || step.receive === null ? null : dialText(profile, step.receive),
		"receive-moves": clear ? [] : movesText(profile, step.receiveKeys, step.receiveTurns),
		transmit: clear || step.transmit === null ? null : dialText(profile, step.transmit),
		"transmit-moves": step.transmit === step.receive ? ["same dial"] : movesText(profile, step.transmitKeys, step.transmitTurns),
		mode: step.mode ?? "",
		what,
		before,
		source: sourceMark(step, paper),
		see: findings.flatMap((finding, i) =>
			finding.bank === step.bank && finding.place === step.place ? [{ number: i + 1, severity: finding.severity }] : [],
		),
		// a row is kept whole unless three such rows could outgrow a page
		long: step.tag.length / TAG_WIDTH + (what.length + before.length) / REMARK_WIDTH > 8,
	};
}

/** Characters of the tag's face that fit its column. */
const TAG_WIDTH = 11;

/** Characters of the remarks below the dials that surely fit one line. */
const REMARK_WIDTH = 50;

/** How a dial is reached, one line each way that the set has. */
function movesText(profile: Profile, keys: SheetStep["receiveKeys"], turns: SheetStep["receiveTurns"]): readonly string[] {
	const lines = keys === null ? [] : [wrappable(keys.join(" "))];
	if (turns !== null) lines.push(shortTurns(turns));
	else if (profile.entry === "knob") lines.push("from any dial");
	return lines;
}

function sourceMark(step: SheetStep, { listings, date }: LoadingSheetPaper): string {
	const listing = listings.find(({ id }) => id === step.listing);
	return listing === undefined ? "" : wrappable(confidenceText(listing, date));
}

/** The listings behind the steps, best confidence first, those of one source and age as one line. */
function sourcesData({ sheet, listings, date }: LoadingSheetPaper): TypstData {
	const byId = new Map(listings.map((listing) => [listing.id, listing]));
	const groups = new Map<string, { listing: Listing; orders: number[] }>();
	for (const { listing: id, order } of sheet.steps) {
		const listing = id === null ? undefined : byId.get(id);
		if (listing === undefined) continue;
		const key = JSON.stringify([listing.source, listing.asOf, listing.confidence, freshness(listing, date)]);
		const group = groups.get(key) ?? { listing, orders: [] };
		group.orders.push(order);
		groups.set(key, group);
	}
	return CONFIDENCES.map((confidence) => ({
		confidence: CONFIDENCE_WORDS[confidence],
		sources: [...groups.values()]
			.filter(({ listing }) => listing.confidence === confidence)
			.map(({ listing, orders }) => ({
				source: wrappable(listing.source),
				"as-of": wrappable(listing.asOf),
				grade: freshness(listing, date).grade,
				why: wrappable(freshness(listing, date).why),
				steps: runsText(orders),
			})),
	})).filter(({ sources }) => sources.length > 0);
}

/** `2026-09-01, 84 days before this sheet`; an edition that is no full day stands alone. */
function editionText(edition: string, date: IsoDate): string {
	const ms = Date.parse(`${edition}T00:00:00Z`);
	if (Number.isNaN(ms) || dateOfMs(ms) !== edition) return edition;
	const days = daysBetween(dateOfMs(ms), date);
	if (days === 0) return `${edition}, the day of this sheet`;
	return days < 0 ? `${edition}, newer than this sheet` : `${edition}, ${plural(days, "day", "days")} before this sheet`;
}

/** Old figures are nearly every sheet's longest list: they are counted, not listed, and bury nothing. */
function isOldFigure({ code, severity }: Finding): boolean {
	return code === "listing-stale" && severity === "mind";
}

/** One paragraph for all places that rest on old figures; null where none does. */
function oldFiguresText({ sheet, findings, listings }: LoadingSheetPaper): string | null {
	const old = findings.filter(isOldFigure);
	if (old.length === 0) return null;
	const ids = new Set(listings.map(({ id }) => id));
	const ages = new Set(
		sheet.steps.filter(({ listing }) => listing !== null && ids.has(listing)).map(({ bank, place }) => JSON.stringify([bank, place])),
	);
	const aged = old.filter(({ bank, place }) => ages.has(JSON.stringify([bank, place])));
	const others = old.filter((finding) => !aged.includes(finding));
	const told = `"Where the figures come from" below tells the age`;
	return [
		`${plural(old.length, "place rests on a figure", "places rest on figures")} too old, or too little proved, to rely on: confirm in a current list or on the air.`,
		...(aged.length === 0
			? []
			: [
					others.length === 0
						? `${told} of each.`
						: `${told} of the ${aged.length} that ${aged.length === 1 ? "is" : "are"} keyed on this sheet.`,
				]),
		...(others.length === 0 ? [] : [`The ages of the rest stand among the findings of the plan: ${placesText(others)}.`]),
	].join(" ");
}

/** A remedy that is a bare figure gets the words that make it one. */
function remedyText({ remedy }: Finding): string {
	return /^(?:(?:USB|LSB|AM|CW|FSK) )?\d/.test(remedy) ? `it should hold ${remedy}` : remedy;
}

interface FindingGroup {
	readonly head: Finding;
	readonly numbered: { readonly number: number; readonly finding: Finding }[];
}

/** Findings that ask for the same thing on the same ground, as one group. */
function groupsOf(findings: readonly Finding[]): readonly FindingGroup[] {
	const groups = new Map<string, FindingGroup>();
	for (const [i, finding] of findings.entries()) {
		const key = JSON.stringify([finding.severity, finding.code, finding.remedy, finding.source]);
		const group = groups.get(key) ?? { head: finding, numbered: [] };
		group.numbered.push({ number: i + 1, finding });
		groups.set(key, group);
	}
	return [...groups.values()];
}

/** Worst first, those of a group together: the order in which they are numbered. */
function inOrder(findings: readonly Finding[]): readonly Finding[] {
	const worstFirst = findings.toSorted((a, b) => SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity));
	return groupsOf(worstFirst).flatMap(({ numbered }) => numbered.map(({ finding }) => finding));
}

function findingCount(findings: readonly Finding[]): string | null {
	if (findings.length === 0) return null;
	return SEVERITIES.map((severity) => `${findings.filter((finding) => finding.severity === severity).length} ${severity}`).join(", ");
}

function whereText({ bank, place }: Finding): string {
	return bank === null || place === null ? "whole list" : `${bank} ${place}`;
}

function mmsiText(mmsi: string): string {
	return /^\d{9}$/.test(mmsi) ? `${mmsi.slice(0, 3)} ${mmsi.slice(3, 6)} ${mmsi.slice(6)}` : wrappable(mmsi);
}

function shortened(name: string): string {
	const characters = [...name];
	return characters.length <= RUNNING_NAME_LENGTH ? name : `${characters.slice(0, RUNNING_NAME_LENGTH - 1).join("")}…`;
}

function plural(count: number, one: string, many: string): string {
	return `${count} ${count === 1 ? one : many}`;
}
