import { CHANGES_HELP } from "@skipwright/job";
import { BadInputError } from "@skipwright/units";
import { Command, CommanderError, Option } from "commander";
import { checkCommand } from "./commands/check.ts";
import { compareCommand } from "./commands/compare.ts";
import { dialCommand } from "./commands/dial.ts";
import { exportCommand, findCommand, importCommand, showCommand } from "./commands/directory.ts";
import { hearCommand } from "./commands/hear.ts";
import { planCommand } from "./commands/plan.ts";
import { provingCommand } from "./commands/proving.ts";
import { reachCommand } from "./commands/reach.ts";
import { skyCommand } from "./commands/sky.ts";
import { type Context, EXIT, type Exit, UsageError } from "./context.ts";
import { addMake } from "./makeProgram.ts";

/** As in package.json. */
const PRODUCT_VERSION = "0.1.0";

/** Runs one command line and returns the exit code: 0, 1 when something was found, 2 when the input could not be read. */
export async function runProgram(context: Context, argv: readonly string[]): Promise<Exit> {
	let exit: Exit = EXIT.ok;
	const program = buildProgram(context, (code) => {
		exit = code;
	});
	try {
		await program.parseAsync(argv, { from: "user" });
		return exit;
	} catch (error) {
		if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.ok : EXIT.badInput;
		if (error instanceof UsageError || error instanceof BadInputError) {
			context.err(`skipwright: ${error.message}\n`);
			return EXIT.badInput;
		}
		throw error;
	}
}

function buildProgram(context: Context, done: (exit: Exit) => void): Command {
	const program = new Command("skipwright")
		.description("Choose, lay out, check and load the places of an MF/HF marine radiotelephone.")
		.version(PRODUCT_VERSION)
		.exitOverride()
		.configureOutput({ writeOut: context.out, writeErr: context.err })
		.showHelpAfterError("(skipwright COMMAND --help tells what it takes)");
	// one function each, so that exitOverride and the output go down to the subcommands
	const json = () => new Option("--json", "print JSON alone");
	const shop = () => new Option("--shop <file>", "the shop's own edits, CSV, laid over the shipped directory");
	const own = () => new Option("--own <file>", "the owner's own listings, CSV (nets and friends)");
	const on = () => new Option("--on <date>", "day for which listings are judged, YYYY-MM-DD (default: today)");
	const set = () => new Option("--set <profile>", "a set's name (twin-180, single-200, receiver-100) or its profile file");

	program
		.command("plan")
		.argument("<job>", "job file, JSON")
		.description("Choose and lay out what the voyage needs; write the plan, the list and the loading sheet.")
		.option(
			"-o, --out <folder>",
			"where to write plan.json, list.csv, changes.csv, sheet.csv, sheet.pdf and plan.html (default: nothing is written)",
		)
		.addOption(on())
		.addOption(shop())
		.option(
			"--time-limit <s>",
			"seconds that the choice may take; the best found by then is taken and its gap printed (default: until proved)",
		)
		.option("--sunspots <n>", "smoothed sunspot number on the old scale (default: observed or forecast)")
		.option("--explain <what...>", 'say why: a place ("voice 12") or the id of a listing, held or left out')
		.option("--what-if <changes...>", `try it otherwise, and say what would be different: ${CHANGES_HELP}; several together with commas`)
		.option("--levels", "also plan with all signals 6 dB weaker and stronger (default with -o)")
		.addOption(json())
		.action(async (job: string, flags) => done(await planCommand(context, job, flags)));

	program
		.command("check")
		.argument("<list>", "list of places, CSV: bank,place,tag,receive_khz,transmit_khz,mode")
		.description("Check a list against the Radio Regulations, the directory and the set.")
		.addOption(set().makeOptionMandatory())
		.addOption(on())
		.addOption(own())
		.addOption(shop())
		.option("--region <n>", "ITU Region 1, 2 or 3 (default: all three, differences are only a mind)")
		.option("--licence <kind>", "amateur: the owner holds an amateur licence")
		.addOption(json())
		.action((list: string, flags) => done(checkCommand(context, list, flags)));

	program
		.command("compare")
		.argument("<as-left>", "list of places read back from the set, CSV")
		.description("Compare what the set holds with the plan, place by place.")
		.requiredOption("--job <file>", "the job that was planned (required)")
		.option("--planned <file>", "the list.csv that was keyed from (default: planned again from the job)")
		.addOption(on())
		.addOption(shop())
		.addOption(json())
		.action(async (asLeft: string, flags) => done(await compareCommand(context, asLeft, flags)));

	program
		.command("dial")
		.argument("<khz>", "published frequency, kHz")
		.description("Say what the dial must read for a published frequency.")
		.requiredOption("--published <how>", "how it is published: centre, carrier, assigned or dial (required)")
		.requiredOption("--emission <class>", "class of emission: J3E, F3C, F1B, A3E, 2K80J3E ... (required)")
		.addOption(set())
		.option("--mode <mode>", "mode to use: USB, LSB, AM, CW, FSK")
		.option("--audio-centre <hz>", "audio centre of the decoder, Hz")
		.option("--ship <khz>", "published frequency of the ship's side, where there are two")
		.addOption(json())
		.action((khz: string, flags) => done(dialCommand(context, khz, flags)));

	program
		.command("proving")
		.argument("<job>", "job file, JSON")
		.description(
			"Say when to listen for what at a berth; with --heard, whether a recording proves a place, and how far off tune the set is.",
		)
		.option("--at <position>", "the berth, as -33.9,18.43 or 33 54S 018 26E (default: the job's)")
		.option("--from <date>", "day, or time with its zone, from which to listen (default: today)")
		.option("--hours <n>", "hours to plan for (default 48)")
		.option("--zone <hh:mm>", "how far the boat's clock is ahead of UTC, as +02:00 (default: local mean time is shown)")
		.option("--plan <file>", "the plan.json that the set was loaded from (default: planned again from the job)")
		.option("--sunspots <n>", "smoothed sunspot number on the old scale (default: observed or forecast)")
		.option("--place <place>", 'with --heard: which place was recorded, as "data 12"; or dsc/8414.5 for a frequency of selective calls')
		.option("--listing <id>", "with --heard: the listing that was dialled by hand, in place of --place")
		.option("--heard <file>", "a recording of that place, WAV")
		.option("--time <time>", "when the recording began, as 2026-11-24T10:00Z")
		.option("-o, --out <file>", "where to write the evidence, JSON")
		.addOption(shop())
		.addOption(json())
		.action(async (job: string, flags) => done(await provingCommand(context, job, flags)));

	program
		.command("reach")
		.description("Say when a station, or a place, will be heard at a position in a month, and how sure that is.")
		.requiredOption("--from <place>", "id of a station (directory find), or a position as -33.9,18.43")
		.requiredOption("--to <position>", "the vessel, as -33.9,18.43 or 33 54S 018 26E")
		.requiredOption("--month <month>", "YYYY-MM")
		.option("--khz <khz...>", "these frequencies only (default: the station's listings, or one of each marine band)")
		.option("--emission <class>", "class of emission: J3E, F3C, F1B ... (default: the listing's, or J3E)")
		.option("--power <watts>", "power of the sender (default: the directory's, or an assumed one, which is shown)")
		.option("--sunspots <n>", "smoothed sunspot number on the old scale (default: observed or forecast)")
		.option("--why [hour]", "explain that hour UTC step by step, in figures (default 12)")
		.addOption(on())
		.addOption(shop())
		.addOption(json())
		.action((flags) => done(reachCommand(context, flags)));

	program
		.command("sky")
		.description("Tell the ionosphere over a place, or work foF2 and M(3000)F2 out for the rows of a CSV file.")
		.option("--at <position>", "place, as -33.9,18.43 or 33 54S 018 26E")
		.option("--month <month>", "YYYY-MM")
		.option("--hour <hour>", "UTC, 0 to 24, fractions too")
		.option("--sunspots <n>", "smoothed sunspot number on the old scale (default: observed or forecast)")
		.option("--rows <file>", "CSV with month, utc_hour, lat_deg, lon_deg_east, R12 and optional field_epoch")
		.addOption(json())
		.action((flags) => done(skyCommand(context, flags)));

	program
		.command("hear")
		.argument("<file...>", "recordings, WAV; or a set's NMEA 0183 log of its calls")
		.description("Say what is in recordings: calls, texts, teletype, charts, tones; and how far off tune the set is.")
		.option("--listing <id>", "what should be heard: id of a listing (directory find)")
		.option("--dial <khz>", "what the dial shows; with --published, the figure that the dial was set for")
		.option("--mode <mode>", "mode that the set stands on: USB (default), LSB, AM, FSK")
		.option("--published <how>", "how the figure of --dial is published: centre, carrier, assigned or dial (default dial)")
		.option("--emission <class>", "class of emission, for --published: F1B, F3C, A3E ...")
		.addOption(set())
		.option("--tones <hz...>", "tones that are sent, as they should be heard: 500 600 1000")
		.option("--tolerance <hz>", "how far off tune is good enough (default 10; charts 20)")
		.option("--step <hz>", "finest step of the dial (default: the set's, or 100)")
		.option("--kind <kinds>", "listen for these alone: dsc,text,chart,teletype,tone,voice")
		.option("--channel <n>", "this channel of the recording (default: the mean of all)")
		.option("--image <file>", "where to write charts, PNG; the second as FILE-2.png")
		.option("--started <time>", "when the recording began, UTC as 2026-11-24T10:00Z")
		.addOption(shop())
		.addOption(json())
		.action((files: string[], flags) => done(hearCommand(context, files, flags)));

	addMake(program, context, done);

	const directory = program.command("directory").description("Look things up in the directory, take it out, put edits in.");
	directory
		.command("find")
		.argument("[words...]", "words to look for: station, call sign, place, service")
		.description("Find listings.")
		.option("--khz <khz>", "near this published frequency")
		.option("--service <id...>", "of these services only: fax, navtex, voice-weather ...")
		.option("--near <position>", "near a position, as -33.9,18.43 or 33 54S 018 26E")
		.option("--within <nm>", "with --near: within so many nautical miles")
		.option("--limit <n>", "at most so many (default 40)")
		.addOption(on())
		.addOption(shop())
		.addOption(json())
		.action((words: string[], flags) => done(findCommand(context, words, flags)));
	directory
		.command("show")
		.argument("<id>", "id of a listing or a station")
		.description("Show everything known about a listing or a station, with its source and age.")
		.addOption(on())
		.addOption(shop())
		.addOption(json())
		.action((id: string, flags) => done(showCommand(context, id, flags)));
	directory
		.command("export")
		.description("Write every listing as CSV.")
		.option("-o, --out <file>", "file to write (default: standard output)")
		.addOption(shop())
		.addOption(json())
		.action((flags) => done(exportCommand(context, flags)));
	directory
		.command("import")
		.argument("<file>", "listings as exported and then edited, CSV")
		.description("Turn an edited export into the shop's edits; the shipped rows stay underneath.")
		.requiredOption("-o, --out <file>", "where to write the edits (give it to other commands with --shop)")
		.requiredOption("--by <name>", "who made the edits (required)")
		.option("--reason <text>", "why", "")
		.addOption(on())
		.addOption(shop())
		.addOption(json())
		.action((file: string, flags) => done(importCommand(context, file, flags)));
	return program;
}
