import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import {
	type DscCall,
	dscCall,
	joined,
	keyedTones,
	MODEM_RATE_HZ,
	makeChart,
	makeTeletype,
	makeText,
	navtexText,
	prng,
	resample,
	silence,
	withNoiseAtSnr,
	writeWav,
} from "@skipwright/modem";
import { decode } from "fast-png";
import { describe, expect, test } from "vitest";
import { type FakeContext, fakeContext } from "./fakeContext.ts";
import { OTHER_SIGNALS } from "./otherSignals.sample.ts";
import { runProgram } from "./program.ts";

type Files = Readonly<Record<string, string | Uint8Array>>;

async function run(argv: readonly string[], files: Files = {}): Promise<FakeContext & { exit: number }> {
	const context = fakeContext(files);
	const exit = await runProgram(context, argv);
	return { ...context, exit };
}

interface Record_ {
	readonly kind: string;
	readonly startS: number;
	readonly endS: number;
	readonly offsetHz: number | null;
	readonly [key: string]: unknown;
}

async function heardIn(files: Files, ...flags: readonly string[]): Promise<readonly Record_[]> {
	const { printed, exit } = await run(["hear", ...Object.keys(files), "--json", ...flags], files);
	expect(exit).toBe(0);
	return JSON.parse(printed()).heard;
}

const call = (to: string): DscCall => ({
	format: "individual",
	to,
	area: null,
	category: "safety",
	from: "299123456",
	telecommand1: "test",
	telecommand2: "no information",
	distress: null,
	message: { kind: "frequencies", receive: null, transmit: null },
	end: "acknowledgement asked",
	undecoded: [],
});
const NAVTEX = navtexText({ station: "C", subject: "E", number: 7, body: "GALE WARNING 49-30N 006W\nWIND SOUTHWEST 8 TO 9" });
const SENTENCE = "THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG 1234567890";
const PICTURE = {
	width: 300,
	height: 40,
	pixels: Uint8Array.from({ length: 12_000 }, (_, i) =>
		i % 300 > 20 && Math.abs(((i % 300) + Math.floor(i / 300) * 3) % 60) < 12 ? 0 : 255,
	),
};
const CHART = makeChart(PICTURE, { ioc: 576, linesPerMinute: 120, phasingS: 10 });

/** Signals with gaps between, in noise, and when each begins. */
function sequence(
	snrDb: number,
	signals: readonly Float64Array[],
	gapS = 3,
): { readonly audio: Float64Array; readonly startsS: readonly number[] } {
	const starts: number[] = [];
	const parts: Float64Array[] = [silence(gapS)];
	let at = gapS;
	for (const signal of signals) {
		starts.push(at);
		parts.push(signal, silence(gapS));
		at += signal.length / MODEM_RATE_HZ + gapS;
	}
	return { audio: withNoiseAtSnr(joined(...parts), snrDb, { random: prng(1), signalPower: 0.125 }), startsS: starts };
}

describe("hear, on several signals in turn", () => {
	const { audio, startsS } = sequence(14, [
		dscCall(call("002999999"), { centreHz: 1_712 }),
		makeText(NAVTEX, { centreHz: 1_693, phasingPairs: 40 }),
		makeTeletype(SENTENCE, { baud: 50, centreHz: 1_500, shiftHz: 450 }),
		CHART,
		keyedTones([{ toneHz: 1_000, seconds: 5 }]),
		dscCall(call("002888888")),
	]);
	const files = { "several.wav": writeWav(audio, MODEM_RATE_HZ) };

	const whole = heardIn(files);

	test("each once, in order, with its time; nothing else", async () => {
		const heard = await whole;
		expect(heard.map(({ kind }) => kind)).toEqual(["dsc", "text", "teletype", "chart", "tone", "dsc"]);
		// a text begins with its first sign, after the phasing
		const late = heard.map(({ startS, kind }, i) => (kind === "text" ? 0 : startS - startsS[i]!));
		expect(Math.max(...late.map(Math.abs))).toBeLessThan(0.6);
		const phasingS = 40 * 0.14;
		expect(Math.abs(heard[1]!.startS - startsS[1]! - phasingS)).toBeLessThan(0.6); // a text begins with its first sign
		expect(heard[0]).toMatchObject({ ok: true, from: "299123456", to: "002999999", ecc: 110, isInverted: false, sure: "certain" });
		expect(heard[0]!["symbols"]).toEqual([120, 0, 29, 99, 99, 90, 108, 29, 91, 23, 45, 60, 118, ...new Array(7).fill(126), 117]);
		expect(heard[0]!["summary"]).toContain("Ship 299123456 calls coast station 002999999 (safety): test call");
		expect(heard[1]).toMatchObject({
			text: NAVTEX.trim(),
			errorRatio: 0,
			identity: { station: "C", subject: "E", number: "07" },
			gaps: [],
		});
		expect(heard[2]).toMatchObject({ text: SENTENCE, baud: 50, sense: "mark high", errorRatio: 0 });
		expect(heard[3]).toMatchObject({ ioc: 576, linesPerMinute: 120, isComplete: true, image: null });
		expect(Math.abs((heard[3]!["lines"] as number) - 40)).toBeLessThanOrEqual(1);
	});

	test("offsets without a listing are against what is usual; none where nothing is", async () => {
		const heard = await whole;
		const [first, text, teletype, chart, tone] = heard.map(({ offsetHz }) => offsetHz);
		expect(Math.abs(first! - 12)).toBeLessThan(1);
		expect(Math.abs(text! + 7)).toBeLessThan(1);
		expect(Math.abs(chart!)).toBeLessThan(3);
		expect([teletype, tone]).toEqual([null, null]);
		expect(heard.every((one) => !("tuning" in one))).toBe(true);
	});

	test("reads like an operator's log, in UTC when the start is told, with a caution for calls that are not to all", async () => {
		const part = { "several.wav": writeWav(audio.subarray(0, 45 * MODEM_RATE_HZ), MODEM_RATE_HZ) };
		const { printed, complained } = await run(["hear", "several.wav", "--started", "2026-11-24T23:59:57Z"], part);
		const lines = printed().split("\n");
		expect(lines[0]).toMatch(/^several\.wav: 00:0\d:\d\d at 8000 samples a second, one channel$/);
		expect(lines[1]).toBe(
			"00:00:00Z  Selective call. Ship 299123456 calls coast station 002999999 (safety): test call; asks to acknowledge.",
		);
		expect(printed()).toContain("              GALE WARNING 49-30N 006W\n              WIND SOUTHWEST 8 TO 9\n              NNNN\n");
		expect(printed().match(/Caution:/g)).toHaveLength(1);
		expect(complained()).toBe("");
	});

	test("writes each chart as PNG, several with numbers", async () => {
		const again = { "several.wav": files["several.wav"], "again.wav": writeWav(sequence(20, [CHART]).audio, MODEM_RATE_HZ) };
		const { written, printed } = await run(["hear", ...Object.keys(again), "--image", "out/chart.png", "--kind", "chart"], again);
		expect([...written.keys()]).toEqual(["out/chart.png", "out/chart-2.png"]);
		for (const name of written.keys()) expect(printed()).toContain(`Picture: ${name}`);
		const { width, height, channels, data } = decode(written.get("out/chart.png") as Uint8Array);
		expect([width, channels]).toEqual([1_810, 1]);
		expect(Math.abs(height - 40)).toBeLessThanOrEqual(1);
		const dark = Array.from(data).reduce((count, grey) => count + (grey < 128 ? 1 : 0), 0) / data.length;
		const sent = PICTURE.pixels.reduce((count, grey) => count + (grey < 128 ? 1 : 0), 0) / PICTURE.pixels.length;
		expect(Math.abs(dark - sent)).toBeLessThan(0.03);
		expect(printed()).not.toContain("Caution"); // charts are sent to all
	});

	test("--kind listens for these alone", async () => {
		expect((await heardIn(files, "--kind", "dsc")).map(({ kind }) => kind)).toEqual(["dsc", "dsc"]);
	});
});

describe("hear, how far off tune", () => {
	const at = (centreHz: number, isInverted = false) => ({
		"call.wav": writeWav(sequence(15, [dscCall(call("002999999"), { centreHz, isInverted })], 1).audio, MODEM_RATE_HZ),
	});

	test("positive where the dial reads high: the audio lies high on USB, low on LSB", async () => {
		const [usb] = await heardIn(at(1_727), "--dial", "2185.8", "--mode", "USB", "--step", "10");
		expect(Math.abs(usb!.offsetHz! - 27)).toBeLessThan(1);
		expect(usb!["tuning"]).toMatchObject({ verdict: "off tune", rightDialHz: 2_185_830 });
		const [lsb] = await heardIn(at(1_675, true), "--dial", "2189.2", "--mode", "LSB");
		expect(Math.abs(lsb!.offsetHz! - 25)).toBeLessThan(1);
		const { printed } = await run(["hear", "call.wav", "--dial", "2185.8", "--mode", "USB"], at(1_708));
		expect(printed()).toMatch(/expected: dial 2185\.8 kHz USB\n/);
		expect(printed()).toMatch(/The dial reads [78]\.\d Hz high \(±0\.1\); within tolerance \(10 Hz\)\./);
	});

	test("by a listing, by a published figure, and by a set that shows the centre: the same", async () => {
		const files = {
			"chart.wav": writeWav(
				sequence(20, [makeChart(PICTURE, { ioc: 576, linesPerMinute: 120, phasingS: 10, centreHz: 1_870 })]).audio,
				MODEM_RATE_HZ,
			),
		};
		for (const flags of [
			["--listing", "us-pointreyes/fax/8682"],
			["--dial", "8682", "--published", "centre", "--emission", "F3C"],
		]) {
			const [chart] = await heardIn(files, "--kind", "chart", ...flags);
			expect(Math.abs(chart!.offsetHz! + 30)).toBeLessThan(3);
			expect(chart!["tuning"]).toMatchObject({ verdict: "off tune", steps: 0, rightDialHz: 8_680_100 });
		}
		const [none] = await heardIn(files, "--kind", "chart", "--dial", "8682", "--published", "centre", "--emission", "F1B");
		expect(none!.offsetHz).toBeNull(); // a chart is not what was to be heard
	});

	test("usual slips by name", async () => {
		const words = async (centreHz: number, isInverted = false) => {
			const { printed } = await run(["hear", "call.wav", "--dial", "2185.8"], at(centreHz, isInverted));
			return printed();
		};
		expect(await words(702)).toContain("1 kHz slip: the dial stands 1 kHz too high");
		expect(await words(1_898)).toContain("the offset of 1.9 kHz was taken in place of 1.7 kHz".replace("the", "The"));
		expect(await words(1_700, true)).toContain("wrong sideband, or a sense switch is set the wrong way");
	});

	test("exchanged tones: the dial on USB is the one looked up, not one from the mirrored audio", async () => {
		const files = at(1_714, true);
		for (const [flags, khz] of [
			[["--listing", "us-pointreyes/dsc-watch/8414.5"], "8412.8"],
			[["--dial", "2187.5", "--published", "centre", "--emission", "F1B"], "2185.8"],
			[["--mode", "FSK", "--dial", "2187.5"], "2185.8"],
			[["--dial", "2185.8"], "2185.8"],
		] as const) {
			const [item] = await heardIn(files, ...flags);
			expect([flags, item!["tuning"]]).toEqual([flags, expect.objectContaining({ slip: "wrong sideband", rightDialHz: null })]);
			expect((item!["tuning"] as { words: string }).words).toMatch(new RegExp(`The place wants USB at ${khz} kHz\\.$`));
		}
		const [lsb] = await heardIn(files, "--dial", "2189.2", "--mode", "LSB"); // there they come exchanged by right
		expect(lsb!["tuning"]).toMatchObject({ verdict: "off tune", slip: null });
	});

	test("a dial keyed beside the listing's is the place's fault, not the set's", async () => {
		const listing = ["--listing", "us-pointreyes/dsc-watch/8414.5"];
		const [low] = await heardIn(at(1_800), ...listing, "--dial", "8412.7");
		expect(Math.abs(low!.offsetHz!)).toBeLessThan(0.5);
		const { words, ...tuning } = low!["tuning"] as { words: string };
		expect(tuning).toEqual({ verdict: "slip", slip: "another dial keyed", steps: 1, rightDialHz: 8_412_800 });
		expect(words).toMatch(/^Keyed 100 Hz low against the listing's dial 8412\.8 kHz; the set itself is within 10 Hz \(offset -?0\.\d Hz/);
		const far = await run(["hear", "call.wav", ...listing, "--dial", "2185.8"], at(1_700));
		expect([far.exit, far.printed()]).toEqual([2, ""]);
		expect(far.complained()).toContain("it wants the dial at 8412.8 kHz USB");
	});

	test("what a listing sends to all is under no secrecy, and is told in the data", async () => {
		const line = makeTeletype(SENTENCE, { baud: 50, centreHz: 1_700, shiftHz: 450 });
		const files = { "t.wav": writeWav(sequence(15, [line, makeText("A TEXT TO NOBODY KNOWN")], 1).audio, MODEM_RATE_HZ) };
		const kind = ["--kind", "teletype,text"];
		const by = async (...flags: readonly string[]) => (await heardIn(files, ...kind, ...flags)).map((one) => [one.kind, one["isToAll"]]);
		expect(await by()).toEqual([
			["teletype", null],
			["text", null],
		]);
		expect(await by("--listing", "de-pinneberg/rtty-weather/4583")).toEqual([
			["teletype", true],
			["text", null],
		]);
		expect((await heardIn(at(1_700)))[0]!["isToAll"]).toBe(false);
		const cautions = async (listing: readonly string[], of: string) =>
			(await run(["hear", "t.wav", "--kind", of, ...listing], files)).printed().includes("Caution");
		expect(await cautions([], "teletype")).toBe(true);
		expect(await cautions(["--listing", "de-pinneberg/rtty-weather/4583"], "teletype")).toBe(false);
	});

	test("tones: the set's error by several, or by the note of a carrier 1 kHz beside", async () => {
		const tones = (...all: readonly number[]) => {
			const seconds = 6;
			const parts = all.map((toneHz) => keyedTones([{ toneHz, seconds }], { amplitude: 0.5 / all.length }));
			const sum = parts[0]!.map((_, i) => parts.reduce((total, part) => total + part[i]!, 0));
			return { "time.wav": writeWav(withNoiseAtSnr(sum, 15, { random: prng(2) }), MODEM_RATE_HZ) };
		};
		const several = await run(["hear", "time.wav", "--dial", "10000", "--tones", "500", "600", "1000"], tones(497, 597, 997));
		expect(several.printed()).toMatch(/By its tones: The dial reads 3\.\d Hz low/);
		const wwv = ["--listing", "us-wwv/time-signal/10000"];
		const known = await run(["hear", "time.wav", ...wwv, "--mode", "USB"], tones(497, 597, 997));
		expect(known.printed()).toMatch(/By its tones: The dial reads 3\.\d Hz low/);
		expect((await run(["hear", "time.wav", ...wwv], tones(500, 1_000))).printed()).toContain("By its tones: In AM a tone comes out right");
		const shifted = await heardIn(tones(497, 700, 997), "--dial", "10000", "--tones", "500", "600", "1000");
		expect(shifted.map(({ offsetHz }) => (offsetHz === null ? null : Math.round(offsetHz)))).toEqual([-3, null, -3]);
		const [, note] = await heardIn(tones(600, 1_012), "--listing", "us-wwv/time-signal/10000", "--dial", "9999", "--mode", "USB");
		expect(Math.abs(note!.offsetHz! - 12)).toBeLessThan(0.1);
		const [am] = await heardIn(tones(1_012), "--listing", "us-wwv/time-signal/10000");
		expect(am!.offsetHz).toBeNull(); // in AM a tone comes out right however the dial stands
	});
});

describe("hear, whatever the file", () => {
	const [words, line] = ["GALE WARNING 49-30N", SENTENCE];
	const teletype = makeTeletype(line, { baud: 75, centreHz: 1_400, shiftHz: 425 });
	const { audio } = sequence(16, [dscCall(call("002999999"), { dots: 20 }), makeText(words), teletype], 1);
	const KEYED = ["--kind", "dsc,text,teletype"];
	const told = ({ kind, to, text }: Record_) => [kind, to ?? text];
	const expected = [
		["dsc", "002999999"],
		["text", words],
		["teletype", line],
	];

	test.each([7_000, 11_025, 12_001, 44_100, 48_000, 96_000, 192_000])("%i samples a second", async (rateHz) => {
		const heard = await heardIn({ "rate.wav": writeWav(resample(audio, MODEM_RATE_HZ, rateHz), rateHz) }, ...KEYED);
		expect(heard.map(told)).toEqual(expected);
		expect(Math.abs(heard[0]!.startS - 1)).toBeLessThan(0.3);
	});

	test("8 bit, float, stereo with one channel chosen or both, and cut short", async () => {
		const peak = audio.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);
		const level = audio.map((sample) => (0.9 * sample) / peak);
		const eight = wav8(level);
		const float = writeWav(
			audio.map((sample) => 3 * sample),
			MODEM_RATE_HZ,
			"float32",
		); // beyond full scale
		const stereo = stereoWav(silence(audio.length / MODEM_RATE_HZ), level);
		expect((await heardIn({ "eight.wav": eight }, ...KEYED)).map(told)).toEqual(expected);
		expect((await heardIn({ "float.wav": float }, ...KEYED)).map(told)).toEqual(expected);
		expect((await heardIn({ "stereo.wav": stereo }, ...KEYED)).map(told)).toEqual(expected);
		expect((await heardIn({ "stereo.wav": stereo }, "--channel", "2", ...KEYED)).map(told)).toEqual(expected);
		expect(await heardIn({ "stereo.wav": stereo }, "--channel", "1")).toEqual([]);
		const cut = await run(["hear", "cut.wav"], { "cut.wav": eight.subarray(0, 90_000) });
		expect(cut.exit).toBe(0);
		expect(cut.printed()).toMatch(/the file was cut short, \d+\.\d s are missing/);
		expect(cut.printed()).toContain("test call");
	});

	test("what cannot be read is named, with the way out; the others are heard; exit 2", async () => {
		const good = writeWav(audio.subarray(0, 7 * MODEM_RATE_HZ), MODEM_RATE_HZ);
		const files = {
			"a.flac": "fLaC\0\0\0\x22",
			"b.mp3": "ID3\x04\0",
			"good.wav": good,
			"empty.wav": "",
			"text.txt": "no sentence of a log",
			"ogg.wav": "OggS\0\x02",
		};
		const { exit, complained, printed } = await run(["hear", ...Object.keys(files), "nowhere.wav", "--json"], files);
		expect(exit).toBe(2);
		for (const words of ["a FLAC file", "an MP3 file", "an Ogg file", "an empty file", "nowhere.wav: there is no such file"])
			expect(complained()).toContain(words);
		expect(complained().match(/save it as WAV, PCM 16 bit/g)).toHaveLength(5);
		expect(JSON.parse(printed()).heard.map(({ file, kind }: { file: string; kind: string }) => [file, kind])).toEqual([
			["good.wav", "dsc"],
		]);
	});

	test("nothing heard is an answer: exit 0", async () => {
		const files = { "noise.wav": writeWav(OTHER_SIGNALS["noise"]!(8), MODEM_RATE_HZ) };
		const { exit, printed } = await run(["hear", "noise.wav"], files);
		expect([exit, printed()]).toEqual([0, "noise.wav: 00:00:08 at 8000 samples a second, one channel\nNothing heard.\n\n"]);
		expect(await heardIn(files)).toEqual([]);
	});

	test("a long file's progress goes to standard error", async () => {
		const long = writeWav(silence(310), MODEM_RATE_HZ);
		const { complained, printed } = await run(["hear", "long.wav", "--json", "--kind", "dsc"], { "long.wav": long });
		expect(complained().split("\n").length).toBeGreaterThan(8);
		expect(JSON.parse(printed())).toEqual({ heard: [] });
	});

	test("a set's own log gives the same records", async () => {
		const log =
			"$GPGLL,4916.45,N,12311.12,W,225444,A*31\r\n$CDDSC,12,3380400790,12,06,00,1423108312,2019,,,S,E*6A\r\n$CDDSC,20,0022750000,00,18,26,,,,,R,*00\r\n";
		const [alert, test_] = await heardIn({ "set.log": log });
		expect(alert).toMatchObject({ kind: "dsc", from: "338040079", to: null, startS: null, offsetHz: null, line: 2 });
		const at = { latDeg: 42 + 31 / 60, lonDeg: -83.2 };
		expect(alert).toMatchObject({ position: at, timeUtc: "20:19", nature: "disabled and adrift", isToAll: true });
		expect(test_).toMatchObject({ kind: "dsc", ok: false });
		const { printed } = await run(["hear", "set.log"], { "set.log": log });
		expect(printed()).toMatch(/line {4}2 Selective call\. .*Distress alert from ship 338040079/);
	});

	test.each([
		[["--kind", "chart,speech"], "cannot take --kind speech: expected dsc, text, chart, teletype, tone, voice"],
		[["--channel", "0"], "cannot take --channel 0"],
		[["--started", "yesterday"], "expected UTC as 2026-11-24T10:00Z"],
		[["--listing", "nobody/fax/1"], "cannot find nobody/fax/1"],
		[["--published", "centre"], "without --dial"],
		[["--dial", "8682", "--published", "centre"], "without --emission"],
		[["--dial", "8,682"], "cannot take --dial 8,682"],
		[["--dial", "8682", "--mode", "FM"], "cannot take --mode FM: expected USB, LSB, AM, CW, FSK"],
		[["--dial", "8682", "--tolerance", "none"], "cannot take --tolerance none"],
	])("%j: a clear error and exit 2", async (flags, words) => {
		const { exit, complained, printed } = await run(["hear", "x.wav", ...flags], { "x.wav": writeWav(silence(1), MODEM_RATE_HZ) });
		expect([exit, printed()]).toEqual([2, ""]);
		expect(complained()).toContain(words);
	});
});

describe("hear invents nothing", () => {
	test.each(Object.entries(OTHER_SIGNALS))("of the four kinds in half a minute of %s (ten minutes: npm run bench hear)", (_, make) => {
		return heardIn({ "other.wav": writeWav(make(30), MODEM_RATE_HZ) }, "--kind", "dsc,text,chart,teletype").then((heard) =>
			expect(heard).toEqual([]),
		);
	});
});

const RECORDINGS = join(import.meta.dirname, "../../../../shared/recordings");
const present = existsSync(RECORDINGS);
if (!present) console.info("recordings off the air are not at hand (../shared/recordings): not heard");

describe.skipIf(!present)("hear, on recordings off the air", () => {
	const SENTENCE_SENT = "WELCOME TO WIKIPEDIA, THE FREE ENCYCLOPEDIA THAT ANYONE CAN EDIT.";
	const rows: string[] = [];
	const heardOf = async (name: string, ...flags: readonly string[]) => {
		const heard = await heardIn({ [name]: readFileSync(join(RECORDINGS, name)) }, ...flags);
		rows.push(
			`${name}: ${heard.length === 0 ? "nothing" : heard.map(({ kind, audioHz }) => `${kind} at ${(audioHz as number).toFixed(1)} Hz`).join(", ")}`,
		);
		return heard;
	};

	test("texts and teletype as their README gives them", async () => {
		const [navtex, ...more] = await heardOf("text-518-118s.wav");
		expect(more).toEqual([]);
		expect(navtex).toMatchObject({ kind: "text", gaps: ["recording stopped"], identity: { station: "E", subject: "E", number: "39" } });
		expect(navtex!["text"]).toMatch(/^ZCZC EE39\n062040 UTC NOV 21[\s\S]*ADRIATICO SETT/);
		expect(Math.abs((navtex!["audioHz"] as number) - 1_002)).toBeLessThan(1);
		for (const [name, kind, text, hz] of [
			["text-bench.wav", "text", "NOW IS THE TIME FOR ALL GOOD MEN TO COME TO THE AID OF THEIR COUNTRY.", 997.5],
			["text-slow-clock.wav", "text", SENTENCE_SENT, 1_698],
			["teletype-45bd-170hz.wav", "teletype", `${SENTENCE_SENT}\n`, 1_000],
		] as const) {
			const [item, ...others] = await heardOf(name);
			expect([name, others, item!.kind, item!["text"]]).toEqual([name, [], kind, text]);
			expect(Math.abs((item!["audioHz"] as number) - hz)).toBeLessThan(4);
		}
		const [weather, ...others] = await heardOf("teletype-50bd-450hz.wav");
		expect([others, weather!.kind, weather!["characters"], weather!["errorRatio"], weather!["sense"]]).toEqual([
			[],
			"teletype",
			286,
			0,
			"mark low",
		]);
		expect((weather!["text"] as string).match(/4583 KHZ {3}7646 KHZ {3}10100\.8 KHZ/g)).toHaveLength(2);
	});

	test("standard time and selective-calling tones", async () => {
		const calling: readonly (readonly [name: string, tonesHz: readonly number[], words: RegExp])[] = [
			["time-10mhz-a.wav", [500, 600, 1_000], /dial reads [34]\.\d Hz low/],
			["time-10mhz-b.wav", [500, 600, 1_000, 2_000], /dial reads [34]\.\d Hz low/],
			["tones-ahkm.wav", [312.6, 645.7, 794.3, 977.2], /dial reads 2[78]\.\d Hz high/],
			["tones-bqps.wav", [346.7, 1_202.3, 1_083.9, 1_479.1], /dial reads 4[56]\.\d Hz high/],
			["tones-flac.wav", [524.8, 881, 312.6, 384.6], /dial reads 3\.\d Hz low/],
			["tones-krch-am.wav", [794.3, 1_333.5, 384.6, 645.7], /dial (reads 0\.\d|is right)/],
			["tones-asbk.wav", [312.6, 1_479.1, 346.7, 794.3], /Cannot tell/],
		];
		for (const [name, tonesHz, words] of calling) {
			const file = { [name]: readFileSync(join(RECORDINGS, name)) };
			const { printed } = await run(["hear", name, "--dial", "10000", "--tones", ...tonesHz.map(String)], file);
			const line =
				printed()
					.split("\n")
					.find((one) => one.startsWith("By its tones")) ?? "nothing";
			rows.push(`${name}: ${line}`);
			expect([name, line]).toEqual([name, expect.stringMatching(words)]);
		}
		const [carrier, ...more] = await heardOf("time-carrier-500.wav");
		expect(more).toEqual([]);
		expect(Math.abs((carrier!["audioHz"] as number) - 499.996)).toBeLessThan(0.005);
	});

	test("pieces of a chart: start and stop tones by name", async () => {
		const summary = async (name: string) => (await heardOf(name)).map((one) => one["summary"] as string);
		for (const name of ["chart-start300.wav", "chart-start300-noisy.wav"])
			expect(await summary(name)).toEqual([expect.stringContaining("Start tone of a chart, index of cooperation 576")]);
		expect(await summary("chart-stop450.wav")).toEqual([expect.stringContaining("Stop tone of a chart")]);
		await heardOf("chart-start300-onset.wav");
		await heardOf("chart-image.wav"); // a second of picture is no chart yet
	});

	test("nothing of the four kinds in noise and other emissions", async () => {
		const names = ["neg-am-music-talk", "neg-cw", "neg-fsk-50bd-850hz", "neg-hf-ale", "noise-highband", "noise-lowband", "noise-midband"];
		for (const name of names) {
			const heard = await heardOf(`${name}.wav`);
			expect([name, heard.filter(({ kind }) => ["dsc", "text", "teletype", "chart"].includes(kind))]).toEqual([name, []]);
			if (name.startsWith("noise")) expect(heard).toEqual([]);
		}
		console.info(rows.join("\n"));
		expect(rows.length).toBe(25);
	});
});

/** PCM 8 bit, one channel. */
function wav8(samples: Float64Array): Uint8Array {
	return wavOf(
		8,
		1,
		Uint8Array.from(samples, (sample) => Math.round(128 + 127 * sample)),
	);
}

/** PCM 16 bit, two channels. */
function stereoWav(left: Float64Array, right: Float64Array): Uint8Array {
	const both = new Int16Array(2 * left.length);
	for (let i = 0; i < left.length; i++) [both[2 * i], both[2 * i + 1]] = [Math.round(32_767 * left[i]!), Math.round(32_767 * right[i]!)];
	return wavOf(16, 2, new Uint8Array(both.buffer));
}

function wavOf(bits: number, channels: number, data: Uint8Array): Uint8Array {
	const file = Buffer.alloc(44 + data.length);
	file.write("RIFF", 0);
	file.writeUInt32LE(36 + data.length, 4);
	file.write("WAVEfmt ", 8);
	file.writeUInt32LE(16, 16);
	file.writeUInt16LE(1, 20);
	file.writeUInt16LE(channels, 22);
	file.writeUInt32LE(MODEM_RATE_HZ, 24);
	file.writeUInt32LE((MODEM_RATE_HZ * channels * bits) / 8, 28);
	file.writeUInt16LE((channels * bits) / 8, 32);
	file.writeUInt16LE(bits, 34);
	file.write("data", 36);
	file.writeUInt32LE(data.length, 40);
	file.set(data, 44);
	return file;
}
