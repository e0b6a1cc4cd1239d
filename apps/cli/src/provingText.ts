import type { DscTest, ListeningPlan, NotListened, Verdict } from "@skipwright/proving";
import { hoursInWords } from "@skipwright/sky";
import { localMeanTimeMin } from "@skipwright/sphere";
import { formatHhmm, formatKhz, formatPosition, MINUTES_PER_DAY, type Position } from "@skipwright/units";
import { percent } from "./reachText.ts";

const MINUTE_MS = 60_000;
/** Stations that test calls are shown for: more than anybody calls in two days. */
const MOST_STATIONS = 6;

export interface ProvingAnswer {
	readonly title: string;
	readonly position: Position;
	readonly fromMs: number;
	readonly hours: number;
	/** Minutes by which the boat's clock is ahead of UTC; null: not given, local mean time is shown. */
	readonly zoneMin: number | null;
	readonly listening: ListeningPlan;
	readonly tests: readonly DscTest[] | { readonly cannot: string };
	readonly basis: string;
	/** Where a plan has been made for this: how many places it holds. */
	readonly places: number;
}

/** The agenda for a person. */
export function provingText(answer: ProvingAnswer): string {
	const { title, position, fromMs, hours, zoneMin, listening, tests, basis, places } = answer;
	const { agenda, rest } = listening;
	const clock = zoneMin === null ? "LMT" : "boat";
	const local = (ms: number) =>
		zoneMin === null ? formatHhmm(localMeanTimeMin(position.lonDeg, minuteOf(ms))) : hhmm(ms + zoneMin * MINUTE_MS);
	const keys = agenda.filter(({ isKey }) => isKey);
	const sections = [
		[
			`${title}: proving on the air at ${formatPosition(position)}, ${dateTime(fromMs)} UTC and ${hours} hours on`,
			zoneMin === null
				? `LMT: local mean time by the longitude (0000 UTC is ${local(0)}); --zone +02:00 shows the boat's clock`
				: `boat: the boat's clock, UTC${formatZone(zoneMin)}`,
			`${basis}; a chance is the share of days on which it is copied`,
		],
		[
			`Listen: ${agenda.length} of ${places} places, one at a time`,
			`marked *: ${keys.length} that bring each kind of signal and each band between them; these prove the set`,
			...agenda.flatMap(({ bank, place, tag, expectation, fromMs: start, toMs, chance, product, doubt, isKey }, index) => {
				const isNewDay = index === 0 || day(agenda[index - 1]!.fromMs) !== day(start);
				const product_ = product === "" ? "" : `; ${product}`;
				const doubt_ = doubt === "" ? "" : `; in doubt: ${doubt}`;
				return [
					...(isNewDay ? [`${day(start)} UTC`] : []),
					`${isKey ? "*" : " "} ${hhmm(start)}-${hhmm(toMs)} (${clock} ${local(start)})  ${bank} ${place} ${tag}: ${expectation.what}${product_}`,
					`      ${expectation.sounds}; dial ${formatKhz(expectation.dialHz)} kHz ${expectation.mode}${audioWords(expectation)}; chance ${percent(chance)}${doubt_}`,
				];
			}),
		],
		...restSections(rest),
		testSection(tests),
		[
			"Before anyone sends",
			"Only with ship and operator licence, within national rules; sending in harbour may need local permission.",
			"Never the distress function; never a voice test on a guard carrier; listen first; a voice test lasts ten seconds at most.",
			"Tuning up radiates: low power, a lawful working carrier. Nobody aloft, touching stays, or near tuner and antenna; implants kept clear.",
			"Not while fuelling, near gas or explosives, or in thunder; check the autopilot before sending under way.",
		],
		["Warm the set up for 30 minutes before its tuning is measured. A dead band is no fault: predictions are medians of the month."],
	];
	return sections.map((lines) => `${lines.join("\n  ")}\n`).join("\n");
}

function audioWords({ audioHz, tonesHz }: { readonly audioHz: number | null; readonly tonesHz: readonly number[] }): string {
	if (audioHz !== null) return `, its middle at ${audioHz} Hz`;
	return tonesHz.length === 0 ? "" : `, at ${tonesHz.join(" or ")} Hz`;
}

const REST_HEADS: Readonly<Record<NotListened["why"], string>> = {
	"no room": "Also to be heard, as there is time",
	poor: "Poor at this berth: try, silence shows nothing",
	later: "Come back: not within these hours at this berth",
	silent: "Sends nothing within two weeks: closed, or out of season",
	"times not known": "Times of sending not published: listen when the band is open",
	"reach not known": "Whether heard here is not known: try",
	"not heard here": "Cannot be heard here: prove under way",
	"by a call": "Proved by a call, not by listening",
	"no listing": "No listing sends there: the read-back is the check, or a voice report",
};

/** Places with a time one a line, the others in a run. */
function restSections(rest: readonly NotListened[]): readonly (readonly string[])[] {
	return Object.entries(REST_HEADS).flatMap(([why, head]) => {
		const own = rest.filter((one) => one.why === why);
		if (own.length === 0) return [];
		const timed = own
			.filter(({ atMs }) => atMs !== null)
			.toSorted((a, b) => a.atMs! - b.atMs!)
			.map(({ bank, place, tag, atMs }) => `${dateTime(atMs!)} UTC  ${bank} ${place} ${tag}`);
		const others = [
			...Map.groupBy(
				own.filter(({ atMs }) => atMs === null),
				({ bank }) => bank,
			),
		].map(([bank, places]) => `${bank} ${places.map(({ place }) => place).join(", ")}`);
		return [[`${head} (${own.length})`, ...timed, ...others]];
	});
}

function testSection(tests: ProvingAnswer["tests"]): readonly string[] {
	if ("cannot" in tests) return [`Selective calling test: none may be made, as ${tests.cannot}`];
	const stations = [...Map.groupBy(tests, ({ station }) => station)];
	if (stations.length === 0) return ["Selective calling test: no coast station's watch is within reach of this berth; test under way"];
	return [
		"Selective calling test: an individual call, category safety, type test, to a coast station",
		"the set's TEST function makes it; whether a station answers, and if it must be asked first, is its own rule: ask before; once is enough",
		...stations
			.slice(0, MOST_STATIONS)
			.flatMap(([station, rows]) => [
				`${station}, MMSI ${rows[0]!.mmsi}`,
				...rows.toSorted((a, b) => a.hz - b.hz).map(({ hz, chances }) => `    ${formatKhz(hz)} kHz: ${hoursInWords(chances)}`),
			]),
		"an answer with its nine digits on the display proves both ways; no answer proves nothing: repeat on another band or hour",
	];
}

/** @example `formatZone(-150)` is `"-02:30"` */
function formatZone(zoneMin: number): string {
	const hhmm_ = formatHhmm(Math.abs(zoneMin));
	return `${zoneMin < 0 ? "-" : "+"}${hhmm_.slice(0, 2)}:${hhmm_.slice(2)}`;
}

/** A verdict for a person. */
export function verdictText(what: string, { words, why }: Verdict): string {
	return `${what}: ${words}\n${why.map((line) => `  ${line}\n`).join("")}`;
}

/** @example `dateTime(0)` is `"1970-01-01 0000"` */
function dateTime(ms: number): string {
	return `${day(ms)} ${hhmm(ms)}`;
}

function day(ms: number): string {
	return new Date(ms).toISOString().slice(0, 10);
}

function hhmm(ms: number): string {
	return formatHhmm(minuteOf(ms));
}

function minuteOf(ms: number): number {
	const min = Math.floor(ms / MINUTE_MS);
	return min - MINUTES_PER_DAY * Math.floor(min / MINUTES_PER_DAY);
}
