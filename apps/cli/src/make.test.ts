import { chartWidth, MODEM_RATE_HZ, readWav } from "@skipwright/modem";
import { encode } from "fast-png";
import { describe, expect, test } from "vitest";
import { type FakeContext, fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

async function run(
	argv: readonly string[],
	files: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<FakeContext & { exit: number }> {
	const context = fakeContext(files);
	const exit = await runProgram(context, argv);
	return { ...context, exit };
}

/** What `hear` says of what `make` made. */
async function heardOf(
	line: readonly string[],
	files: Readonly<Record<string, string | Uint8Array>> = {},
): Promise<readonly Record<string, unknown>[]> {
	const made = await run(["make", ...line], files);
	expect(made.exit).toBe(0);
	if (!line.includes("--training")) expect(made.complained()).toBe("");
	const sound = made.written.get("out.wav") as Uint8Array;
	const heard = await run(["hear", "out.wav", "--json"], { "out.wav": sound });
	expect(heard.exit).toBe(0);
	return JSON.parse(heard.printed()).heard;
}

const MMSI = ["--to", "002999999", "--from", "299123456"];

describe("make, heard again", () => {
	test.each([
		["test", MMSI, "Ship 299123456 calls coast station 002999999 (safety): test call; asks to acknowledge."],
		[
			"test-answer",
			["--to", "299123456", "--from", "002999999"],
			"Coast station 002999999 answers ship 299123456 (safety): test received.",
		],
		["position", MMSI, "(safety): asks for the position; asks to acknowledge."],
		["working", [...MMSI, "--khz", "4146"], "(routine): J3E telephony, both ways on 4146 kHz; asks to acknowledge."],
		[
			"group",
			["--to", "029912345", "--from", "299123456", "--khz", "4146"],
			"calls group 029912345 (routine): J3E telephony, both ways on 4146 kHz.",
		],
		[
			"all-ships",
			["--from", "299123456", "--khz", "2182", "--category", "urgency", "--training"],
			"calls all ships (urgency): J3E telephony, both ways on 2182 kHz.",
		],
	])("a %s call", async (call, flags, summary) => {
		const [item, ...more] = await heardOf(["dsc", "out.wav", "--call", call, ...flags, "--snr", "12"]);
		expect(more).toEqual([]);
		expect(item).toMatchObject({ kind: "dsc", ok: true });
		expect(item!["summary"]).toContain(summary);
	});

	test("a call off tune, at 48000 samples a second, exchanged", async () => {
		const [item] = await heardOf([
			"dsc",
			"out.wav",
			"--call",
			"test",
			...MMSI,
			"--offset",
			"-23",
			"--rate",
			"48000",
			"--exchanged",
			"--snr",
			"15",
		]);
		expect(item).toMatchObject({ kind: "dsc", ok: true, isInverted: true });
		expect(Math.abs((item!["offsetHz"] as number) + 23)).toBeLessThan(1);
	});

	test("a NAVTEX message, and a plain text from a file, by a slow clock", async () => {
		const framed = ["--station", "C", "--subject", "E", "--number", "7"];
		const [navtex] = await heardOf(["text", "out.wav", "--text", "Gale warning\\nWind 8", ...framed, "--snr", "10"]);
		expect(navtex).toMatchObject({ kind: "text", text: "ZCZC CE07\nGALE WARNING\nWIND 8\nNNNN", errorRatio: 0 });
		const [plain] = await heardOf(["text", "out.wav", "--file", "note.txt", "--clock", "5000"], {
			"note.txt": "now is the time for all good men",
		});
		expect(plain).toMatchObject({ kind: "text", text: "NOW IS THE TIME FOR ALL GOOD MEN", identity: null });
	});

	test.each([
		["45.45", "170", "low"],
		["50", "450", "high"],
		["75", "850", "low"],
	])("teletype at %s baud, shift %s, resting %s", async (baud, shift, sense) => {
		const [item] = await heardOf([
			"teletype",
			"out.wav",
			"--text",
			"RYRYRY the quick brown fox jumps over the lazy dog 12",
			"--baud",
			baud,
			"--shift",
			shift,
			"--sense",
			sense,
			"--snr",
			"12",
		]);
		expect(item).toMatchObject({
			kind: "teletype",
			text: "RYRYRY THE QUICK BROWN FOX JUMPS OVER THE LAZY DOG 12",
			baud: Number(baud),
			sense: `mark ${sense}`,
		});
		expect(Math.abs((item!["shiftHz"] as number) - Number(shift))).toBeLessThan(5);
	});

	test("a chart from a PNG in colour, and the test card", async () => {
		const [width, height] = [600, 30];
		const data = Uint8Array.from({ length: 3 * width * height }, (_, i) =>
			Math.floor(i / 3) % width > width / 2 ? 255 : [200, 0, 0][i % 3]!,
		);
		const picture = encode({ width, height, data, depth: 8, channels: 3 });
		const made = await run(["make", "chart", "out.wav", "--picture", "p.png", "--ioc", "288"], { "p.png": picture });
		expect(made.exit).toBe(0);
		const heard = await run(["hear", "out.wav", "--image", "chart.png", "--kind", "chart"], {
			"out.wav": made.written.get("out.wav") as Uint8Array,
		});
		expect(heard.printed()).toMatch(/Chart of 4[45678] lines, 120 a minute, index of cooperation 288; whole/); // 30 lines of 600 are 45 of 905
		expect(chartWidth(288)).toBe(905);
		const card = await run(["make", "chart", "out.wav", "--lines", "20"]);
		expect(card.exit).toBe(0);
	}, 20_000);

	test("tones, through a fading channel too", async () => {
		const heard = await heardOf(["tone", "out.wav", "--hz", "500", "1200", "--seconds", "5", "--snr", "15"]);
		expect(heard.map(({ kind, audioHz }) => [kind, Math.round(audioHz as number)])).toEqual([
			["tone", 500],
			["tone", 1_200],
		]);
		const [call] = await heardOf(["dsc", "out.wav", "--call", "test", ...MMSI, "--channel", "mid-quiet", "--snr", "20", "--seed", "4"]);
		expect(call).toMatchObject({ kind: "dsc", from: "299123456" });
	});

	test("the same bytes for the same seed, others for another", async () => {
		const bytes = async (seed: string) =>
			(await run(["make", "tone", "out.wav", "--hz", "1000", "--seconds", "1", "--snr", "5", "--seed", seed])).written.get("out.wav");
		expect(await bytes("3")).toEqual(await bytes("3"));
		expect(await bytes("3")).not.toEqual(await bytes("4"));
	});

	test("noise does not overdrive: what is written stays within full scale", async () => {
		const { written } = await run(["make", "tone", "out.wav", "--hz", "1000", "--seconds", "1", "--snr", "-20"]);
		const { data, format } = readWav("out.wav", written.get("out.wav") as Uint8Array);
		expect(format.rateHz).toBe(MODEM_RATE_HZ);
		expect(data.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)).toBeLessThan(0.96);
	});
});

describe("make refuses", () => {
	test("a distress alert, unless it is said to be for training; then it warns", async () => {
		const line = ["make", "dsc", "out.wav", "--call", "distress", "--from", "299123456"];
		const refused = await run(line);
		expect([refused.exit, refused.written.size]).toEqual([2, 0]);
		expect(refused.complained()).toContain("never test with the distress function");
		const made = await run([...line, "--training", "--nature", "sinking", "--at=-33.9,18.4", "--time", "12:34"]);
		expect([made.exit, made.written.size]).toEqual([0, 1]);
		expect(made.complained()).toContain("never send it, never feed it to a transmitter");
	});

	test("a call to all ships without training; with it, it warns as of distress", async () => {
		const line = ["make", "dsc", "out.wav", "--call", "all-ships", "--from", "299123456"];
		const refused = await run(line);
		expect([refused.exit, refused.written.size]).toEqual([2, 0]);
		expect(refused.complained()).toContain("add --training");
		expect((await run([...line, "--training"])).complained()).toContain("never send it, never feed it to a transmitter");
	});

	test.each([
		[["dsc", "o.wav", "--call", "test", ...MMSI, "--category", "urgency", "--training"], "a test is of safety"],
		[["dsc", "o.wav", "--call", "chat"], "expected test, test-answer, position, working, group, all-ships, distress"],
		[["dsc", "o.wav", "--call", "test", "--from", "299123456"], "without --to"],
		[["dsc", "o.wav", "--call", "test", "--to", "12", "--from", "299123456"], "cannot take --to 12: expected nine digits"],
		[["dsc", "o.wav", "--call", "test", ...MMSI, "--category", "distress"], "expected routine, safety, urgency"],
		[["dsc", "o.wav", "--call", "distress", "--from", "299123456", "--training", "--nature", "boredom"], `cannot send "boredom"`],
		[["text", "o.wav"], "expected one of --text and --file"],
		[["text", "o.wav", "--text", "A", "--station", "C"], "without all of --station, --subject and --number"],
		[["text", "o.wav", "--text", "A", "--station", "Z", "--subject", "E", "--number", "7"], "expected a letter A to X"],
		[["text", "o.wav", "--text", "5 % off"], `cannot send "%"`],
		[["teletype", "o.wav", "--text", "A", "--baud", "110"], "expected 45.45, 50, 75"],
		[["teletype", "o.wav", "--text", "A", "--sense", "upper"], "expected low or high"],
		[["chart", "o.wav", "--picture", "no.png"], "there is no such file"],
		[["chart", "o.wav", "--picture", "README.md"], "expected a PNG picture"],
		[["chart", "o.wav", "--lpm", "100"], "expected 60, 90, 120, 240"],
		[["tone", "o.wav", "--hz", "900", "--offset", "-850"], "cannot take --offset -850: the signal would lie from 50 to 50 Hz"],
		[["dsc", "o.wav", "--call", "test", ...MMSI, "--offset", "2500"], "expected 100 to 3800 Hz"],
		[["tone", "o.wav"], "--hz"],
		[["tone", "o.wav", "--hz", "9000"], "expected hertz from 50 to 3900"],
		[["tone", "o.wav", "--hz", "900", "--rate", "100"], "cannot take --rate 100"],
		[["tone", "o.wav", "--hz", "900", "--snr", "loud"], "cannot take --snr loud"],
		[["tone", "o.wav", "--hz", "900", "--channel", "stormy"], "mid-moderate"],
	])("%j: a clear error and exit 2, nothing written", async (line, words) => {
		const { exit, complained, written, printed } = await run(["make", ...line]);
		expect([exit, printed(), written.size]).toEqual([2, "", 0]);
		expect(complained()).toContain(words);
	});
});
