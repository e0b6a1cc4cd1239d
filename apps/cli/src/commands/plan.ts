import { join } from "node:path";
import type { Directory } from "@skipwright/directory";
import { type ChangedJob, changeJob, directoryFor, type ResolvedJob } from "@skipwright/job";
import { loadingSheetTypst, planHtml, planStatusWords } from "@skipwright/papers";
import { type Plan, planDifference, plannedRows, planSamples } from "@skipwright/planner";
import { WANT_WORDS } from "@skipwright/rules";
import { checkList, type Finding, type LoadingSheet, loadingSheet, settingLines, sheetCsv, writeList } from "@skipwright/set";
import { GRADES_OF_CHANCE, hoursInWords } from "@skipwright/sky";
import { changesCsv } from "../changesCsv.ts";
import { type Context, EXIT, type Exit, UsageError } from "../context.ts";
import { checkAsked, explainText } from "../explainText.ts";
import { findingsText } from "../findingsText.ts";
import { levelLines } from "../levelText.ts";
import { countText, paint } from "../paint.ts";
import { jobGiven, type PlanWishes, plannerFor } from "../planJob.ts";
import { dateGiven, directoryGiven } from "../sources.ts";
import { sunspotsGiven } from "../sunspotsGiven.ts";
import { type Tried, triedText } from "../triedText.ts";
import { useText } from "../useText.ts";
import { watchLines } from "../watchText.ts";

export interface PlanFlags {
	readonly out?: string;
	readonly on?: string;
	readonly shop?: string;
	readonly timeLimit?: string;
	readonly sunspots?: string;
	readonly explain?: readonly string[];
	readonly whatIf?: readonly string[];
	readonly levels?: boolean;
	readonly json?: boolean;
}

/** `plan JOB.json [-o DIR]`: choose, lay out, check, and write the papers; exit 1 when a stop or a fix stands, or a pin cannot be kept. */
export async function planCommand(context: Context, file: string, flags: PlanFlags): Promise<Exit> {
	const on = dateGiven(context, flags.on);
	const wishes: PlanWishes = {
		...(flags.timeLimit === undefined ? {} : { timeLimitS: secondsGiven(flags.timeLimit) }),
		...(flags.sunspots === undefined ? {} : { sunspots: sunspotsGiven(flags.sunspots) }),
	};
	const resolved = jobGiven(context, file);
	const tries = (flags.whatIf ?? []).map((text) => ({ text, ...triedJob(resolved, text) }));
	const directory = directoryGiven(context, flags);
	for (const asked of flags.explain ?? []) checkAsked(asked, resolved, directoryFor(resolved, directory));
	const planner = plannerFor(context, directory, on);
	context.err(`planning ${resolved.job.title} ...\n`);
	const planned = await planner(resolved, { ...wishes, levels: flags.levels ?? flags.out !== undefined });
	const explained = (flags.explain ?? []).map((asked) => explainText(planned, asked, hoursInWords));
	const tried: Tried[] = [];
	for (const { text, resolved: other, sunspots } of tries) {
		context.err(`what if ${text} ...\n`);
		const plan = await planner(other, { ...wishes, ...(sunspots === null ? {} : { sunspots }) });
		tried.push({ change: text, ...planDifference(planned, plan) });
	}
	const sheet = sheetOf(resolved, planned);
	const written = flags.out === undefined ? [] : await writePapers(context, flags.out, resolved, directory, planned, sheet);
	if (flags.json === true) context.out(`${JSON.stringify(tried.length === 0 ? planned : { plan: planned, whatIf: tried }, null, "\t")}\n`);
	else if (explained.length > 0) context.out(explained.join("\n"));
	else if (tried.length === 0 || written.length > 0) context.out(planText(resolved, directory, planned, sheet, written, context.colour));
	else context.out(`${resolved.job.title}: ${planStatusWords(planned)}\n`);
	if (flags.json !== true) context.out(tried.map(triedText).join(""));
	const isSound = planned.status !== "infeasible" && planned.findings.every(({ severity }) => severity === "mind");
	return isSound ? EXIT.ok : EXIT.found;
}

function triedJob(resolved: ResolvedJob, text: string): ChangedJob {
	try {
		return changeJob(resolved, text);
	} catch (error) {
		if (error instanceof RangeError) throw new UsageError(`--what-if: ${error.message}`);
		throw error;
	}
}

/** @throws UsageError */
function secondsGiven(text: string): number {
	const seconds = Number(text);
	if (text.trim() !== "" && seconds > 0 && Number.isFinite(seconds)) return seconds;
	throw new UsageError(`cannot take --time-limit ${text}: expected seconds above 0`);
}

function sheetOf({ job, profile, asFound }: ResolvedJob, planned: Plan): LoadingSheet {
	return loadingSheet({
		profile,
		found: job.options.sheetFrom === "blank" || job.asFound === null ? null : asFound,
		planned: plannedRows(planned),
		settings: settingLines(profile, job.settings.asFound ?? null, job.settings.wanted ?? {}),
		clearOthers: true, // what the plan removes is wrong, in the way, or not wanted: the plan says which and why
	});
}

/** Files of a plan, and one line each on what they are for. */
const PAPERS = {
	"plan.json": "the plan as data",
	"plan.html": "the plan to read, with its reasons: for a browser, a phone, or to print",
	"list.csv": "the list as planned",
	"changes.csv": "what becomes of each place that changes, and why",
	"sheet.csv": "the keying steps",
	"sheet.pdf": "the loading sheet to print",
} as const;

async function writePapers(
	context: Context,
	folder: string,
	resolved: ResolvedJob,
	directory: Directory,
	planned: Plan,
	sheet: LoadingSheet,
): Promise<readonly string[]> {
	const { job, profile, asFound } = resolved;
	const source = loadingSheetTypst({
		sheet,
		profile,
		vessel: job.vessel,
		jobTitle: job.title,
		date: planned.on,
		directoryEdition: directory.edition,
		listings: directoryFor(resolved, directory).listings,
		findings: planned.findings,
	});
	context.err("setting the sheet ...\n");
	const { compilePdf } = await import("../pdf.ts"); // the compiler loads slowly: only when a sheet is wanted
	const contents = {
		"plan.json": `${JSON.stringify(planned, null, "\t")}\n`,
		"plan.html": planPage(resolved, directory, planned),
		"list.csv": writeList(plannedRows(planned)),
		"changes.csv": changesCsv(asFound, foundFindings(resolved, directory, planned), planned),
		"sheet.csv": sheetCsv(sheet, profile),
		"sheet.pdf": compilePdf(source, { createdAt: planned.on }),
	} satisfies Record<keyof typeof PAPERS, string | Uint8Array>;
	return Object.entries(contents).map(([name, content]) => {
		const path = join(folder, name);
		context.writeFile(path, content);
		return `${path}: ${PAPERS[name as keyof typeof PAPERS]}`;
	});
}

function planPage(resolved: ResolvedJob, directory: Directory, planned: Plan): string {
	const { job, profile, voyage } = resolved;
	return planHtml({
		plan: planned,
		jobTitle: job.title,
		vessel: job.vessel,
		profile,
		directory: directoryFor(resolved, directory),
		samples: planSamples(voyage),
		words: hoursInWords,
		grades: [...GRADES_OF_CHANCE, { word: "none", from: 0 }],
	});
}

/** What was found, changed and written, for a person. */
function planText(
	resolved: ResolvedJob,
	directory: Directory,
	planned: Plan,
	sheet: LoadingSheet,
	written: readonly string[],
	colour: boolean,
): string {
	const { job, profile, asFound } = resolved;
	const before = foundFindings(resolved, directory, planned);
	const added = planned.places.filter(({ changed }) => changed).length;
	const found =
		asFound.length === 0
			? ["nothing is known of what the set holds: everything is keyed from blank"]
			: [`${asFound.length} places as found: ${countText(before)}`];
	const perBank = profile.banks.map(({ id, places }) => `${planned.places.filter(({ bank }) => bank === id).length} of ${places} in ${id}`);
	const sections = [
		[`${job.title}: ${job.vessel.name}, ${profile.name}, checked for ${planned.on}`],
		planned.doubts.length === 0 ? [] : [paint(colour, "fix", "Is this meant?"), ...planned.doubts],
		[paint(colour, "bold", "Found"), ...found],
		[
			paint(colour, "bold", "Planned"),
			`${planned.places.length} places (${perBank.join(", ")}): ${planned.places.length - added} as found, ${added} new or mended, ${planned.removed.length} rows taken out`,
			`${planStatusWords(planned)}; hours rest on the ${planned.basis}`,
			...servedLines(planned),
		],
		written.length > 0 // the page has it, in pictures
			? []
			: [paint(colour, "bold", "What to use when"), "hours UTC, first choice and in brackets the second", ...useText(planned).split("\n")],
		levelLines(planned).length === 0 ? [] : [paint(colour, "bold", "If signals differ from what is predicted"), ...levelLines(planned)],
		watchLines(planned).length === 0 ? [] : [paint(colour, "bold", "Selective calling watch"), ...watchLines(planned)],
		planned.conflicts.length === 0 ? [] : [paint(colour, "stop", "Cannot be kept"), ...planned.conflicts],
		[paint(colour, "bold", "Checked"), `the plan: ${countText(planned.findings)}`, ...standingLines(planned.findings, colour)],
		[
			paint(colour, "bold", "To key in"),
			`${sheet.steps.length} places to key, ${sheet.unchanged} already right; about ${Math.round(sheet.minutes)} minutes (an estimate)`,
			"keep the transmitter off until the list is read back; tune up only as the sheet says",
		],
		written.length === 0
			? ["nothing was written; give -o FOLDER for the list and the sheet"]
			: [paint(colour, "bold", "Written"), ...written],
	];
	return sections
		.filter((lines) => lines.length > 0)
		.map((lines) => `${lines.join("\n  ")}\n`)
		.join("\n");
}

function foundFindings({ job, profile, asFound, ...rest }: ResolvedJob, directory: Directory, { on }: Plan): readonly Finding[] {
	const inForce = directoryFor({ job, profile, asFound, ...rest }, directory);
	const { region } = job.options;
	return checkList(asFound, { profile, directory: inForce, on, region, amateurLicence: job.vessel.licences.amateur });
}

/** Hours a day by want, over the whole voyage's legs: least and most. */
function servedLines({ served }: Plan): readonly string[] {
	const wants = [...Map.groupBy(served, ({ want }) => want)];
	return wants.map(([want, rows]) => {
		const range = (side: "before" | "after") => {
			const hours = rows.map(({ hoursPerDay }) => hoursPerDay[side]);
			return `${Math.min(...hours).toFixed(1)}-${Math.max(...hours).toFixed(1)}`;
		};
		return `${WANT_WORDS[want].padEnd(24)} ${range("before").padStart(9)} hours a day as found, ${range("after").padStart(9)} as planned, by leg`;
	});
}

/** Stops and fixes in full; minds are in plan.json and on the sheet. */
function standingLines(findings: readonly Finding[], colour: boolean): readonly string[] {
	const serious = findings.filter(({ severity }) => severity !== "mind");
	return serious.length === 0 ? [] : [findingsText(serious, colour).trimEnd().replaceAll("\n", "\n  ")];
}
