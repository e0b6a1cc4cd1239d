import {
	chartWidth,
	dscCall,
	type IndexOfCooperation,
	keyedTones,
	type LinesPerMinute,
	makeChart,
	makeTeletype,
	makeText,
	mixed,
	NAVTEX_PHASING_PAIRS,
	navtexText,
	type TeletypeBaud,
} from "@skipwright/modem";
import { type Context, type Exit, UsageError } from "../context.ts";
import { type DscCallFlags, dscCallGiven, isAlarming } from "../dscCallGiven.ts";
import { type ImpairFlags, writeMade } from "../madeSound.ts";
import { pictureGiven, testCard } from "../pictureGiven.ts";
import { readText } from "../readText.ts";

interface WordsFlags extends ImpairFlags {
	readonly text?: string;
	readonly file?: string;
	readonly centre?: string;
}

export interface MakeDscFlags extends ImpairFlags, DscCallFlags {
	readonly centre?: string;
	readonly exchanged?: boolean;
}

const TRAINING =
	"skipwright: a bench tone for training only: never send it, never feed it to a transmitter. A false distress alert starts a search.";

/** `make dsc`: a selective call as sound. */
export function makeDscCommand(context: Context, out: string, flags: MakeDscFlags): Exit {
	const call = dscCallGiven(flags);
	const options = { isInverted: flags.exchanged === true, ...centre(flags.centre) };
	if (isAlarming(flags)) context.err(`${TRAINING}\n`);
	return writeMade(
		context,
		out,
		sendable(() => dscCall(call, options)),
		flags,
		span(options.centreHz),
	);
}

export interface MakeTextFlags extends WordsFlags {
	readonly station?: string;
	readonly subject?: string;
	readonly number?: string;
	readonly exchanged?: boolean;
}

/** `make text`: a text by collective FEC; with a station, a subject and a number, a NAVTEX message. */
export function makeTextCommand(context: Context, out: string, flags: MakeTextFlags): Exit {
	const body = wordsGiven(context, flags);
	const { station, subject, number } = flags;
	const parts = [station, subject, number].filter((part) => part !== undefined);
	if (parts.length !== 0 && parts.length !== 3)
		throw new UsageError("cannot frame a message without all of --station, --subject and --number");
	const options = { isInverted: flags.exchanged === true, ...centre(flags.centre) };
	if (parts.length === 0)
		return writeMade(
			context,
			out,
			sendable(() => makeText(body, options)),
			flags,
			span(options.centreHz),
		);
	const message = sendable(() => navtexText({ station: station!, subject: subject!, number: Number(number), body: body.trim() }));
	return writeMade(
		context,
		out,
		sendable(() => makeText(message, { phasingPairs: NAVTEX_PHASING_PAIRS, ...options })),
		flags,
		span(options.centreHz),
	);
}

export interface MakeTeletypeFlags extends WordsFlags {
	readonly baud: string;
	readonly shift: string;
	readonly sense: string;
}

const BAUDS: readonly TeletypeBaud[] = [45.45, 50, 75];

/** `make teletype`: start-stop teletype in the five-unit alphabet. */
export function makeTeletypeCommand(context: Context, out: string, flags: MakeTeletypeFlags): Exit {
	const baud = BAUDS.find((one) => String(one) === flags.baud);
	if (baud === undefined) throw new UsageError(`cannot take --baud ${flags.baud}: expected ${BAUDS.join(", ")}`);
	if (flags.sense !== "low" && flags.sense !== "high")
		throw new UsageError(`cannot take --sense ${flags.sense}: expected low or high, the tone that rests`);
	const options = {
		baud,
		centreHz: hertz("--centre", flags.centre ?? "1700", 200, 3_200),
		shiftHz: hertz("--shift", flags.shift, 50, 1_000),
		sense: flags.sense === "low" ? "mark low" : "mark high",
	} as const;
	const text = wordsGiven(context, flags);
	return writeMade(
		context,
		out,
		sendable(() => makeTeletype(text, options)),
		flags,
		span(options.centreHz, options.shiftHz),
	);
}

export interface MakeChartFlags extends ImpairFlags {
	readonly picture?: string;
	readonly lines: string;
	readonly ioc: string;
	readonly lpm: string;
}

const IOCS: readonly IndexOfCooperation[] = [576, 288];
const LINE_RATES: readonly LinesPerMinute[] = [60, 90, 120, 240];

/** `make chart`: a whole facsimile transmission of a PNG picture, or of a test card. */
export function makeChartCommand(context: Context, out: string, flags: MakeChartFlags): Exit {
	const ioc = IOCS.find((one) => String(one) === flags.ioc);
	if (ioc === undefined) throw new UsageError(`cannot take --ioc ${flags.ioc}: expected ${IOCS.join(", ")}`);
	const linesPerMinute = LINE_RATES.find((one) => String(one) === flags.lpm);
	if (linesPerMinute === undefined) throw new UsageError(`cannot take --lpm ${flags.lpm}: expected ${LINE_RATES.join(", ")}`);
	const width = chartWidth(ioc);
	const lines = hertz("--lines", flags.lines, 20, 3_000, "lines");
	const image = flags.picture === undefined ? testCard(width, Math.round(lines)) : pictureGiven(context, flags.picture, width);
	return writeMade(context, out, makeChart(image, { ioc, linesPerMinute }), flags, [1_500, 2_300]);
}

export interface MakeToneFlags extends ImpairFlags {
	readonly hz: readonly string[];
	readonly seconds: string;
}

/** `make tone`: steady tones, several at once. */
export function makeToneCommand(context: Context, out: string, flags: MakeToneFlags): Exit {
	const seconds = hertz("--seconds", flags.seconds, 0.1, 3_600, "seconds");
	const tones = flags.hz.map((text) =>
		keyedTones([{ toneHz: hertz("--hz", text, 50, 3_900), seconds }], { amplitude: 0.8 / flags.hz.length }),
	);
	return writeMade(context, out, mixed(...tones), flags, [Math.min(...flags.hz.map(Number)), Math.max(...flags.hz.map(Number))]);
}

function wordsGiven(context: Context, { text, file }: WordsFlags): string {
	if ((text === undefined) === (file === undefined)) throw new UsageError("cannot tell what to send: expected one of --text and --file");
	const words = (text === undefined ? readText(context, file!) : text.replaceAll("\\n", "\n")).toUpperCase();
	if (words.trim() === "") throw new UsageError("cannot send an empty text");
	return words;
}

/** Lowest and highest of two tones. */
function span(centreHz = 1_700, shiftHz = 170): readonly [number, number] {
	return [centreHz - shiftHz / 2, centreHz + shiftHz / 2];
}

function centre(text: string | undefined): { readonly centreHz?: number } {
	return text === undefined ? {} : { centreHz: hertz("--centre", text, 200, 3_200) };
}

function hertz(flag: string, text: string, lowest: number, highest: number, unit = "hertz"): number {
	const value = text.trim() === "" ? Number.NaN : Number(text);
	if (value >= lowest && value <= highest) return value;
	throw new UsageError(`cannot take ${flag} ${text}: expected ${unit} from ${lowest} to ${highest}`);
}

/** What a maker refuses, said as a fault of the command. */
function sendable<T>(make: () => T): T {
	try {
		return make();
	} catch (error) {
		if (error instanceof RangeError) throw new UsageError(error.message.charAt(0).toLowerCase() + error.message.slice(1));
		throw error;
	}
}
