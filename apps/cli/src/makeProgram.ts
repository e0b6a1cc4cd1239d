import { type Command, Option } from "commander";
import { makeChartCommand, makeDscCommand, makeTeletypeCommand, makeTextCommand, makeToneCommand } from "./commands/make.ts";
import type { Context, Exit } from "./context.ts";
import { CALLS } from "./dscCallGiven.ts";
import { CHANNEL_WORDS } from "./madeSound.ts";

/** `make` and its kinds of sound. */
export function addMake(program: Command, context: Context, done: (exit: Exit) => void): void {
	const make = program.command("make").description("Make a signal as a WAV file: for training, a bench tone, or to try `hear` on.");
	const kind = (name: string, what: string) => impaired(make.command(name).argument("<out>", "WAV file to write").description(what));
	const words = (command: Command) =>
		command
			.option("--text <words>", "what to send; \\n parts lines")
			.option("--file <file>", "send the text of this file")
			.option("--centre <hz>", "middle between the tones (default 1700)");
	const exchanged = () => new Option("--exchanged", "tones exchanged, as on the wrong sideband");

	kind("dsc", "A selective call.")
		.requiredOption("--call <kind>", `what for: ${CALLS.join(", ")} (required)`)
		.option("--to <mmsi>", "identity called, nine digits")
		.option("--from <mmsi>", "own identity, nine digits")
		.option("--category <word>", "routine, safety or urgency")
		.option("--khz <khz>", "carrier to carry on at")
		.option("--nature <words>", "of a training alert: sinking, collision, fire or explosion ...")
		.option("--at <position>", "of a training alert, as -33.9,18.43 or 33 54S 018 26E")
		.option("--time <hh:mm>", "of that position, UTC")
		.option("--training", "needed for distress, urgency and calls to all ships: for the bench alone")
		.option("--centre <hz>", "middle between the tones (default 1700)")
		.addOption(exchanged())
		.action((out: string, flags) => done(makeDscCommand(context, out, flags)));
	words(kind("text", "A text by collective FEC (mode B), or a NAVTEX message."))
		.option("--station <letter>", "of a NAVTEX message: the sending station, A to X")
		.option("--subject <letter>", "its subject")
		.option("--number <nn>", "its number, 0 to 99")
		.addOption(exchanged())
		.action((out: string, flags) => done(makeTextCommand(context, out, flags)));
	words(kind("teletype", "Start-stop teletype in the five-unit alphabet."))
		.option("--baud <baud>", "45.45, 50 or 75", "50")
		.option("--shift <hz>", "between the tones", "450")
		.option("--sense <tone>", "which tone rests: low or high", "high")
		.action((out: string, flags) => done(makeTeletypeCommand(context, out, flags)));
	kind("chart", "A weather chart by facsimile, with its start, phasing and stop.")
		.option("--picture <png>", "picture to send (default: a test card)")
		.option("--lines <n>", "lines of the test card", "300")
		.option("--ioc <n>", "index of cooperation, 576 or 288", "576")
		.option("--lpm <n>", "lines a minute: 60, 90, 120, 240", "120")
		.action((out: string, flags) => done(makeChartCommand(context, out, flags)));
	kind("tone", "Steady tones, several at once.")
		.requiredOption("--hz <hz...>", "their frequencies (required)")
		.option("--seconds <s>", "how long", "10")
		.action((out: string, flags) => done(makeToneCommand(context, out, flags)));
}

function impaired(command: Command): Command {
	return command
		.option("--snr <db>", "noise: signal over noise in 2700 Hz (default: none)")
		.option("--offset <hz>", "off tune: positive as from a set whose dial reads high")
		.option("--clock <ppm>", "the recorder's clock fast by so many parts in a million")
		.option("--channel <name>", `fading of ITU-R F.1487: ${CHANNEL_WORDS.join(", ")}`)
		.option("--seed <n>", "of noise and fading (default 1)")
		.option("--rate <hz>", "samples a second (default 8000)")
		.option("--before <s>", "silence before and after (default 1)");
}
