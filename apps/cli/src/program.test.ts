import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { type FakeContext, fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

const HEADER = "bank,place,tag,receive_khz,transmit_khz,mode\n";
const JOB = "examples/south-atlantic.job.json";

async function run(line: string, files: Readonly<Record<string, string | Uint8Array>> = {}): Promise<FakeContext & { exit: number }> {
	const context = fakeContext(files);
	const exit = await runProgram(context, line.split(" "));
	return { ...context, exit };
}

describe("every command", () => {
	const COMMANDS = [
		"plan",
		"check",
		"compare",
		"dial",
		"directory",
		"directory find",
		"directory show",
		"directory export",
		"directory import",
		"hear",
		"make",
		"make dsc",
	];
	test.each(COMMANDS)("%s has help", async (command) => {
		const { exit, printed } = await run(`${command} --help`);
		expect(exit).toBe(0);
		expect(printed()).toContain(`skipwright ${command}`);
	});

	test.each([
		["tune", "unknown command"],
		["check mine.csv", "--set"],
		["check mine.csv --set twin-181", "expected one of twin-180, single-200, receiver-100"],
		["check nowhere.csv --set twin-180", "cannot read nowhere.csv: there is no such file"],
		["check examples --set twin-180", "it is a folder"],
		["check examples/south-atlantic.as-found.csv --set twin-180 --on 2026-02-30", "expected a day as YYYY-MM-DD"],
		["check examples/south-atlantic.as-found.csv --set twin-180 --region 4", "expected 1, 2 or 3"],
		["check examples/south-atlantic.as-found.csv --set twin-180 --licence ham", "expected amateur"],
		["dial 8,682 --published centre --emission F3C", "a point"],
		["dial 8682 --published middle --emission F3C", "expected carrier, centre, assigned, dial"],
		["dial 8682 --published centre --emission F9Z", "cannot take --emission F9Z"],
		["dial 8682 --published centre --emission F3C --audio-centre 19", "expected whole hertz from 200 to 4000"],
		[`plan ${JOB} --time-limit soon`, "cannot take --time-limit soon: expected seconds above 0"],
		["directory find --within 100", "without --near"],
		["directory find --service telex", "expected voice-working"],
		["directory show nobody", "cannot find nobody"],
		["plan examples/south-atlantic.as-found.csv", "expected a value: an object"],
	])("%s: a clear error and exit 2", async (line, words) => {
		const { exit, complained, printed } = await run(line);
		expect(exit).toBe(2);
		expect(complained()).toContain(words);
		expect(printed()).toBe("");
	});
});

describe("check", () => {
	test("the JSON is alone on standard output and has the contract's keys; exit 1 for a stop or fix, 0 for minds alone", async () => {
		const bad = await run("check list.csv --set twin-180 --json", { "list.csv": `${HEADER}voice,1,CH 424,4134,4426,USB\n` });
		const { findings } = JSON.parse(bad.printed());
		expect(Object.keys(findings[0])).toEqual(["code", "severity", "bank", "place", "line", "message", "source", "remedy"]);
		expect(findings[0]).toMatchObject({ code: "pair-swapped", severity: "stop", bank: "voice", place: 1, line: 2 });
		expect(bad.exit).toBe(1);
		const guards = [2182, 4125, 6215, 8291, 12290, 16420].map((khz, i) => `voice,${i + 1},DIST ${khz},${khz},${khz},USB\n`).join("");
		expect((await run("check list.csv --set twin-180", { "list.csv": HEADER + guards })).exit).toBe(0);
	});

	test.each([
		["UTF-16", new Uint8Array([0xff, 0xfe, 0x62, 0x00]), "UTF-16"],
		["Latin-1", new Uint8Array([...new TextEncoder().encode(`${HEADER}voice,1,B`), 0xfc, 0x0a]), "line 2"],
		["NUL", `${HEADER}voice,1,A\0,4146,4146,USB\n`, "NUL"],
		["no header", "voice,1,A,4146,4146,USB\n", "a column bank in the header"],
		["extra column", `${HEADER.trim()},colour\nvoice,1,A,4146,4146,USB,red\n`, "only the columns"],
		["bad number", `${HEADER}voice,1,A,4146,4146,USB\nvoice,2,B,41 46,,USB\n`, "line 3, column receive_khz"],
		["unknown mode", `${HEADER}voice,1,A,4146,4146,FM\n`, "USB, LSB, AM, CW, FSK"],
		["empty", "", "a header"],
	])("bad input, %s: named with line, column and what was expected; nothing checked", async (_, content, words) => {
		const { exit, complained, printed } = await run("check list.csv --set twin-180", { "list.csv": content });
		expect(exit).toBe(2);
		expect(complained()).toContain("list.csv");
		expect(complained()).toContain(words);
		expect(printed()).toBe("");
	});

	test("a BOM, CRLF and a formula in a tag are read for what they are", async () => {
		const csv = `\uFEFF${HEADER}voice,1,'=1+1,4146,4146,USB\n`.replaceAll("\n", "\r\n");
		const { printed } = await run("check list.csv --set twin-180 --json", { "list.csv": csv });
		const codes = JSON.parse(printed()).findings.filter((finding: { bank: string | null }) => finding.bank !== null);
		expect(codes.map(({ code, message }: { code: string; message: string }) => [code, message.includes('"=1+1"')])).toEqual([
			["tag-too-long", true],
		]);
	});

	test("own listings make a place known", async () => {
		const own = "name,khz,means,mode,schedule\nNet,8188,carrier,USB,0700\nHigh net,9120.5,carrier,USB,0700\n";
		const files = { "list.csv": `${HEADER}voice,1,NET,9120.5,,USB\n`, "own.csv": own };
		const codes = async (line: string) => JSON.parse((await run(line, files)).printed()).findings.map(({ code }: { code: string }) => code);
		expect(await codes("check list.csv --set twin-180 --json")).toContain("no-listing");
		expect(await codes("check list.csv --set twin-180 --json --own own.csv")).not.toContain("no-listing");
	});
});

describe("dial", () => {
	test.each([
		[
			"dial 8682 --published centre --emission F3C --set twin-180",
			{ receiveHz: 8_680_100, mode: "USB", tunableHz: 8_680_100, residueHz: 0 },
		],
		["dial 4207.5 --published assigned --emission F1B --set twin-180", { receiveHz: 4_207_500, mode: "FSK" }],
		["dial 4207.5 --published assigned --emission F1B --mode USB --set twin-180", { receiveHz: 4_205_800, mode: "USB" }],
		["dial 147.3 --published centre --emission F1B --audio-centre 1500", { receiveHz: 145_800, mode: "USB" }],
		["dial 10000 --published carrier --emission A3E --set twin-180", { receiveHz: 10_000_000, mode: "AM" }],
		["dial 4358.4 --published assigned --emission J3E --ship 4066.4", { receiveHz: 4_357_000, transmitHz: 4_065_000 }],
		["dial 6312.25 --published centre --emission F1B --set twin-180", { receiveHz: 6_312_250, tunableHz: 6_312_300, residueHz: -50 }],
	])("%s", async (line, expected) => {
		const { exit, printed } = await run(`${line} --json`);
		expect(exit).toBe(0);
		expect(JSON.parse(printed())).toMatchObject(expected);
	});

	test("490 kHz on USB is below twin-180's range: exit 1 (facts: emissions)", async () => {
		const { exit, printed } = await run("dial 490 --published centre --emission F1B --mode USB --set twin-180");
		expect(exit).toBe(1);
		expect(printed()).toContain("cannot-tune");
	});
});

describe("directory", () => {
	test("find, show: every listing with its confidence and age", async () => {
		const { printed } = await run("directory find ZSC --khz 8719 --json");
		const [first] = JSON.parse(printed()).found;
		expect(first).toMatchObject({ id: "za-capetown/voice-weather/8719", listedHz: 8_719_000, confidence: "official", freshness: "stale" });
		const shown = await run("directory show za-capetown/voice-weather/8719");
		expect(shown.printed()).toContain("official source, as of 2015: stale");
	});

	test("export, edit, import, and the edits in force: the shipped row stays underneath", async () => {
		const exported = (await run("directory export")).printed();
		expect(exported.split("\n").length).toBeGreaterThan(850);
		const edited = exported.replace("0918;1718", "0930;1730");
		expect(edited).not.toBe(exported);
		const context = fakeContext({ "edited.csv": edited });
		expect(
			await runProgram(context, ["directory", "import", "edited.csv", "-o", "shop.csv", "--by", "A Fitter", "--reason", "heard"]),
		).toBe(0);
		expect(context.printed()).toContain("0 added, 1 changed");
		const shop = context.written.get("shop.csv")!;
		const changed =
			exported
				.split("\n")
				.find((line) => line.includes("0918;1718"))
				?.split(",")[0] ?? "";
		const { printed } = await run(`directory show ${changed} --shop shop.csv --json`, { "shop.csv": shop });
		expect(JSON.parse(printed()).listings).toMatchObject([{ id: changed, schedule: "0930;1730", origin: "shop" }]);
		expect(JSON.parse((await run(`directory show ${changed} --json`)).printed()).listings).toMatchObject([
			{ schedule: "0918;1718", origin: "shipped" },
		]);
	});
});

describe("plan and compare", () => {
	test("the example: its papers, no stop or fix left, the list read back as planned", async () => {
		const context = fakeContext();
		expect(await runProgram(context, ["plan", JOB, "-o", "out"])).toBe(0);
		expect([...context.written.keys()]).toEqual([
			"out/plan.json",
			"out/plan.html",
			"out/list.csv",
			"out/changes.csv",
			"out/sheet.csv",
			"out/sheet.pdf",
		]);
		const plan = JSON.parse(context.written.get("out/plan.json") as string);
		expect(plan).toMatchObject({ format: "skipwright-plan", version: 1, status: "optimal", gap: 0 });
		expect(plan.places.length).toBeGreaterThan(150);
		expect(plan.findings.filter(({ severity }: { severity: string }) => severity !== "mind")).toEqual([]);
		expect(context.printed()).toContain("214 places as found: 16 stop, 20 fix");
		expect(context.printed()).toContain("no choice is worth more under the wants given (proved)");
		expect(context.complained()).toMatch(/choosing by worth: proved, \d+\.\d s/);

		const changes = context.written.get("out/changes.csv") as string;
		expect(changes).toContain("BUDDY CHAT"); // the distress carrier as a chat channel: the owner will ask
		expect(changes.split("\n").length).toBeGreaterThan(40);

		const list = context.written.get("out/list.csv") as string;
		const same = await run(`compare left.csv --job ${JOB}`, { "left.csv": list });
		expect([same.exit, same.printed()]).toEqual([0, `left.csv: ${plan.places.length} places as planned, 0 not\n`]);
		const slipped = await run(`compare left.csv --job ${JOB} --planned out/list.csv --json`, {
			"left.csv": list.replace(",4125,4125,", ",4125,4128,"),
			"out/list.csv": list,
		});
		const [difference] = JSON.parse(slipped.printed()).differences;
		expect(slipped.exit).toBe(1);
		expect(difference.faults).toMatchObject([{ kind: "transmit", offByHz: 3_000 }]);
	});

	test("the same job and day give the same plan, byte for byte", async () => {
		const [first, second] = [await run(`plan ${JOB} --json`), await run(`plan ${JOB} --json`)];
		expect(first.printed()).toBe(second.printed());
	});
});

test("a folder that cannot be is said plainly, exit 2", () => {
	const main = join(import.meta.dirname, "main.ts");
	const { status, stderr } = spawnSync(process.execPath, [main, "directory", "export", "-o", "/dev/null/x/list.csv"], {
		encoding: "utf8",
		timeout: 30_000,
	});
	expect([status, stderr.startsWith("skipwright: cannot write")]).toEqual([2, true]);
});
