import { createHash } from "node:crypto";
import { dscCall, makeText, navtexText, offTune, prng, silence, whiteNoise, withNoiseAtSnr, writeWav } from "@skipwright/modem";
import { readEvidence } from "@skipwright/proving";
import { describe, expect, it } from "vitest";
import { type FakeContext, fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

const JOB = "examples/south-atlantic.job.json"; // own MMSI 299004716
const BERTH = "--at=-33.91,18.43"; // Cape Town

function place(bank: string, number: number, tag: string, receiveHz: number, mode: string, hears: readonly string[]) {
	const plain = {
		pinned: false,
		changed: false,
		what: tag,
		want: null,
		notes: [],
		serves: [],
		day: { leg: null, chances: null, broadcasts: null },
	};
	return { bank, place: number, tag, receiveHz, transmitHz: null, mode, listing: hears[0] ?? null, hears, ...plain };
}

const PLAN = JSON.stringify({
	format: "skipwright-plan",
	version: 1,
	status: "feasible",
	gap: null,
	worth: 0,
	on: "2027-02-01",
	basis: "",
	layout: { status: "feasible", gap: null },
	places: [
		place("voice", 1, "DIST 2182", 2_182_000, "USB", []),
		place("voice", 2, "WX 801", 8_719_000, "USB", ["za-capetown/voice-weather/8719"]),
		place("voice", 3, "CH 821", 8_779_000, "USB", ["za-capetown/voice-working/8779"]),
		place("data", 12, "NAVTEX 518", 518_000, "FSK", [
			"navtex-portelizabeth/navtex/518",
			"navtex-capetown/navtex/518",
			"navtex-valentia/navtex/518",
		]),
		place("data", 13, "DSC 8", 8_414_500, "FSK", ["za-capetown/dsc-watch/8414.5"]),
		place("data", 14, "NMC 22", 22_525_100, "USB", ["us-pointreyes/fax/22527"]),
		place("data", 15, "ZSJ 7508", 7_506_100, "USB", ["za-capenaval/fax/7508"]),
	],
	blocks: [],
	legs: [],
	served: [],
	use: [],
	watch: { tableHz: null, problems: [], off: null },
	levels: [],
	leftOut: [],
	removed: [],
	doubts: [],
	conflicts: [],
	findings: [],
});

function navtex(offsetHz: number): Uint8Array {
	const text = navtexText({ station: "C", subject: "A", number: 12, body: "LIGHT UNLIT IN POSITION 33-54S 018-25E\nMARINERS KEEP CLEAR" });
	return writeWav(withNoiseAtSnr(offTune(makeText(text), offsetHz), 15, { random: prng(3) }), 8_000);
}

/** A test of selective calling as recorded aboard: the ship's own call, then the answer of Cape Town. */
function tested(ship: string): Uint8Array {
	const station = "006010001";
	const call = (to: string, from: string, end: "acknowledgement asked" | "acknowledgement given") =>
		dscCall({
			format: "individual",
			to,
			area: null,
			category: "safety",
			from,
			telecommand1: "test",
			telecommand2: "no information",
			distress: null,
			message: { kind: "frequencies", receive: null, transmit: null },
			end,
			undecoded: [],
		});
	const asked = call(station, ship, "acknowledgement asked");
	const given = call(ship, station, "acknowledgement given");
	const padded = new Float64Array(asked.length + given.length + 32_000);
	padded.set(asked, 8_000);
	padded.set(given, 24_000 + asked.length);
	return writeWav(withNoiseAtSnr(padded, 15, { random: prng(4) }), 8_000);
}

const FILES = {
	"plan.json": PLAN,
	"off.wav": navtex(23),
	"right.wav": navtex(-4),
	"own.wav": tested("299004716"),
	"other.wav": tested("299111222"),
	"noise.wav": writeWav(whiteNoise(80_000, 0.01, prng(9)), 8_000),
	"quiet.wav": writeWav(silence(5), 8_000),
	"song.mp3": new Uint8Array([0x49, 0x44, 0x33, 4, 0, 0, 0, 0, 0, 0, 0, 0]),
};

async function run(...args: readonly string[]): Promise<FakeContext & { readonly exit: number }> {
	const context = fakeContext(FILES);
	const exit = await runProgram(context, ["proving", JOB, ...args]);
	return { ...context, exit };
}

const heard = (file: string, asked: string, ...more: readonly string[]) =>
	run(BERTH, "--plan", "plan.json", "--place", asked, "--heard", file, ...more);

describe("proving --heard", () => {
	it("a NAVTEX message 23 Hz off is off tune, with evidence of the file itself", async () => {
		const { exit, printed, written } = await heard("off.wav", "data 12", "--time", "2027-02-01T04:20Z", "-o", "e.json");
		expect(exit).toBe(1);
		expect(printed()).toMatch(/^data 12 NAVTEX 518, Cape Town \(NAVTEX\), NAVTEX text, 518 kHz: off tune\n/);
		expect(printed()).toMatch(/reads 23\.\d Hz high/);
		const record = readEvidence("e.json", written.get("e.json") as string);
		expect(record).toMatchObject({
			verdict: "off tune",
			listing: "navtex-capetown/navtex/518",
			place: { bank: "data", place: 12 },
			position: [-33.91, 18.43],
		});
		expect(record.audio?.sha256).toBe(createHash("sha256").update(FILES["off.wav"]).digest("hex"));
		expect(Math.abs(record.offsetHz! - 23)).toBeLessThan(0.5);
		expect(record.time).toMatch(/^2027-02-01T04:20:0\d/);
	});

	it("one 4 Hz off is proved, within the 10 Hz that a set is allowed", async () => {
		const { exit, printed, written } = await heard("right.wav", "data 12", "--time", "2027-02-01T04:20Z", "-o", "e.json", "--json");
		expect(exit).toBe(0);
		const answer = JSON.parse(printed());
		expect(answer).toMatchObject({
			result: "proved",
			grade: "identity",
			evidence: "e.json",
			refused: null,
			listing: "navtex-capetown/navtex/518",
		});
		expect(Math.abs(answer.offsetHz + 4)).toBeLessThan(0.5);
		expect(readEvidence("e.json", written.get("e.json") as string).verdict).toBe("proved");
	});

	it("a letter of no station due there and then proves none, and names none in evidence; without the time nobody can tell which", async () => {
		const late = await heard("right.wav", "data 12", "--time", "2027-02-01T05:20Z", "-o", "e.json");
		expect(late.exit).toBe(1);
		expect(late.printed()).toMatch(
			/^data 12 NAVTEX 518, NAVTEX text, 518 kHz: not proved for the station; tuned right\n.*no station C is due/,
		);
		expect(readEvidence("e.json", late.written.get("e.json") as string)).toMatchObject({ listing: null, verdict: "not proved" });
		expect(late.written.get("e.json")).not.toMatch(/Cape Town|capetown/);
		const afar = await run(
			"--at=52,-10",
			"--plan",
			"plan.json",
			"--place",
			"data 12",
			"--heard",
			"right.wav",
			"--time",
			"2027-02-01T04:20Z",
		);
		expect(afar.printed()).toMatch(/not proved for the station; tuned right\n.*no station C is due and in reach here/);
		const whenever = await heard("right.wav", "data 12");
		expect([whenever.exit, whenever.printed()]).toEqual([0, expect.stringMatching(/cannot tell: which station; tuned right\n/)]);
	});

	it("the answer to the ship's own test proves both ways and is kept; another ship's is neither kept nor shown", async () => {
		const own = await heard("own.wav", "data 13", "--time", "2027-02-01T09:00Z", "-o", "e.json");
		expect([own.exit, own.written.size]).toEqual([0, 1]);
		expect(own.printed()).toMatch(/receiving and sending both work/);
		const other = await heard("other.wav", "data 13", "--time", "2027-02-01T09:00Z", "-o", "e.json");
		expect([other.exit, other.written.size]).toEqual([1, 0]);
		expect(other.printed()).toMatch(/proved\n/);
		expect(other.printed()).toMatch(/no evidence written: .*Article 17/);
		expect(other.printed() + other.complained()).not.toMatch(/299111222|006010001/);
		const json = await heard("other.wav", "data 13", "--json");
		expect(JSON.parse(json.printed()).heard).toMatchObject({ kind: "dsc", summary: null });
		expect(json.printed()).not.toMatch(/299111222|006010001/);
	});

	it("an own test on a watch's frequency, in no place of the set, proves it by the answer; another ship's is refused", async () => {
		const at = (file: string, ...more: readonly string[]) =>
			run(BERTH, "--heard", file, "--time", "2027-02-01T09:00Z", "-o", "e.json", ...more);
		const own = await at("own.wav", "--place", "dsc/8414.5");
		expect(own.exit).toBe(0);
		expect(own.printed()).toMatch(
			/^dialled .*, Cape Town Radio, .* 8414\.5 kHz: proved\n.*answered by the station expected: receiving and sending both/,
		);
		const record = readEvidence("e.json", own.written.get("e.json") as string);
		expect(record).toMatchObject({ verdict: "proved", listing: "za-capetown/dsc-watch/8414.5", place: { bank: "dialled", place: null } });
		const listed = await at("own.wav", "--listing", "za-capetown/dsc-watch/8414.5", "--json");
		expect(JSON.parse(listed.printed())).toMatchObject({ result: "proved", grade: "identity", evidence: "e.json" });
		const other = await at("other.wav", "--place", "dsc/8414.5");
		expect([other.exit, other.written.size]).toEqual([1, 0]);
		expect(other.printed()).toMatch(/no evidence written: .*Article 17/);
		expect(other.printed() + other.complained()).not.toMatch(/299111222|006010001|Cape Town/);
	});

	it("a dead band is no fault; an open one with nothing in it is a reason to look", async () => {
		const [dead, open, unknown] = await Promise.all([
			heard("noise.wav", "data 14", "--time", "2027-02-01T03:00Z", "--json"),
			heard("noise.wav", "data 12", "--time", "2027-02-01T04:20Z", "--json"),
			heard("quiet.wav", "data 12", "--json"),
		]);
		expect([dead, open, unknown].map(({ exit, printed }) => [exit, JSON.parse(printed()).words])).toEqual([
			[0, "cannot tell: band predicted closed"],
			[1, "not proved"],
			[0, "cannot tell: nothing predicted"],
		]);
		const [kept, looked] = await Promise.all([
			heard("noise.wav", "data 14", "--time", "2027-02-01T03:00Z", "-o", "e.json"),
			heard("noise.wav", "data 12", "--time", "2027-02-01T04:20Z", "-o", "e.json"),
		]);
		const records = [kept, looked].map(({ written }) => readEvidence("e.json", written.get("e.json") as string));
		expect([kept.exit, looked.exit]).toEqual([0, 1]);
		expect(records.map(({ verdict, heard, listing }) => [verdict, heard, listing])).toEqual([
			["cannot tell", null, "us-pointreyes/fax/22527"],
			["not proved", null, expect.stringMatching(/^navtex-/)],
		]);
		expect(records[0]!.audio).toMatchObject({ startS: 0, endS: 10 });
	});

	it.each([
		[["--place", "data 12"], /--heard FILE\.wav and --place .* go together/],
		[["--place", "data 12", "--heard", "off.wav"], /needs --plan/],
		[["--plan", "plan.json", "--place", "data 99", "--heard", "off.wav"], /cannot take --place data 99: .*"voice 12"/],
		[["--plan", "plan.json", "--place", "voice 1", "--heard", "off.wav"], /nothing in the directory says what voice 1 should sound like/],
		[["--plan", "plan.json", "--place", "data 12", "--heard", "off.wav", "-o", "e.json"], /-o needs --time/],
		[
			["--plan", "plan.json", "--place", "data 12", "--heard", "off.wav", "--time", "2027-02-01"],
			/cannot take --time 2027-02-01: expected a time/,
		],
		[["--plan", "plan.json", "--place", "data 12", "--heard", "song.mp3"], /song\.mp3: byte 0: expected a WAV file .*, got an MP3 file/],
		[["--plan", "plan.json", "--place", "data 12", "--heard", "gone.wav"], /cannot read gone\.wav: there is no such file/],
		[["--time", "2027-02-01T04:20Z"], /--time goes with --heard/],
		[["--hours", "0"], /cannot take --hours 0: expected 1 to 168/],
		[["--heard", "own.wav", "--place", "dsc/8415"], /cannot take --place dsc\/8415: no coast station is listed to watch 8415 kHz/],
		[["--heard", "own.wav", "--place", "dsc/x"], /cannot take --place dsc\/x: /],
		[["--heard", "own.wav", "--listing", "gone"], /cannot take --listing gone: the directory has no such listing/],
		[["--heard", "own.wav", "--place", "data 12", "--listing", "gone"], /--heard .* go together/],
		[["--zone", "2"], /cannot take --zone 2: expected hours and minutes ahead of UTC/],
		[["--zone=+15:00"], /cannot take --zone \+15:00/],
		[["--from", "tomorrow"], /cannot take --from tomorrow: expected a day/],
	] as const)("%j is refused plainly", async (args, message) => {
		const { exit, complained } = await run(BERTH, ...args);
		expect(exit).toBe(2);
		expect(complained()).toMatch(message);
	});

	it("needs a berth where the job names none", async () => {
		const job = JSON.parse(new TextDecoder().decode(fakeContext().readFile(JOB)));
		const context = fakeContext({ "no-berth.json": JSON.stringify({ ...job, options: {}, asFound: null }) });
		expect(await runProgram(context, ["proving", "no-berth.json"])).toBe(2);
		expect(context.complained()).toMatch(/--at LAT,LON is needed: the job names no berth/);
	});
});

describe("proving --at", () => {
	it("tells when to listen for what, in UTC and by the sun aboard, and what is proved otherwise", async () => {
		const { exit, printed } = await run(BERTH, "--from", "2027-02-01", "--plan", "plan.json");
		expect(exit).toBe(0);
		const text = printed();
		expect(text).toMatch(/LMT: local mean time by the longitude \(0000 UTC is 0113\)/); // 18.43 degrees are 73.7 minutes
		expect(text).toMatch(/\* \d{4}-\d{4} \(LMT \d{4}\) {2}data 12 NAVTEX 518: (?:Cape Town|Port Elizabeth) \(NAVTEX\)/);
		expect(text).toMatch(/data 15 ZSJ 7508: .*weather charts, 7508 kHz/);
		expect(text).toMatch(/Proved by a call, not by listening \(2\)\n {2}voice 3\n {2}data 13\n/);
		expect(text).toMatch(/No listing sends there.* \(1\)\n {2}voice 1\n/);
		expect(text).toMatch(/Cape Town Radio, MMSI 006010001\n {6}4207\.5 kHz: /);
		expect(text).toMatch(/Never the distress function; never a voice test on a guard carrier/);
	});

	it("shows the boat's clock where its zone is given, and what else is to be heard in order of time", async () => {
		const [east, west] = await Promise.all(
			["+02:00", "-03:30"].map((zone) => run(BERTH, "--from", "2027-02-01", "--plan", "plan.json", `--zone=${zone}`)),
		);
		const clocks = (text: string) =>
			[...text.matchAll(/ (\d\d)(\d\d)-\d{4} \(boat (\d\d)(\d\d)\)/g)].map((found) => found.slice(1).map(Number));
		const shifts = [east!, west!].map(({ printed }) =>
			clocks(printed()).map(([h, m, boatH, boatM]) => (1_440 + 60 * (boatH! - h!) + boatM! - m!) % 1_440),
		);
		expect(shifts.map((some) => [some.length > 1, ...new Set(some)])).toEqual([
			[true, 120],
			[true, 1_230],
		]);
		expect(east!.printed()).toMatch(/boat: the boat's clock, UTC\+02:00\n/);
		expect(west!.printed()).toMatch(/UTC-03:30\n/);
	});

	it("gives the same as JSON alone, two days from the start of the day", async () => {
		const { printed } = await run(BERTH, "--from", "2027-02-01", "--plan", "plan.json", "--json");
		const { agenda, rest, from, dscTests } = JSON.parse(printed());
		expect(from).toBe("2027-02-01T00:00:00.000Z");
		expect(agenda.length + rest.length).toBe(7);
		const times = agenda.map((one: { from: string; to: string }) => [Date.parse(one.from), Date.parse(one.to)]);
		for (const [i, [start, end]] of times.entries()) {
			expect(end).toBeGreaterThan(start);
			expect(end).toBeLessThanOrEqual(Date.parse(from) + 48 * 3_600_000);
			if (i > 0) expect(start).toBeGreaterThan(times[i - 1][1]);
		}
		// a NAVTEX slot begins twenty minutes after 0000, 0400 ... for C, or eighty for I
		const slot = agenda.find((one: { place: number }) => one.place === 12);
		expect((Date.parse(slot.from) / 60_000) % 240).toBe(slot.listing.includes("capetown") ? 20 : 80);
		expect(dscTests.every(({ mmsi }: { mmsi: string }) => /^00\d{7}$/.test(mmsi))).toBe(true);
	});

	it("plans the job where no plan is given, and offers no test call without a licence", async () => {
		const job = {
			format: "skipwright-job",
			version: 1,
			title: "at a berth",
			vessel: { name: "Imaginary", licences: { ship: false, amateur: false, operator: "none" } },
			set: { profile: "single-200" },
			voyage: { points: [{ name: "Cape Town", at: [-33.91, 18.43], from: "2027-02-01", to: "2027-02-04" }] },
			wants: {},
			options: { berth: [-33.91, 18.43] },
		};
		const context = fakeContext({ "berth.json": JSON.stringify(job) });
		expect(await runProgram(context, ["proving", "berth.json", "--from", "2027-02-01"])).toBe(0);
		expect(context.printed()).toMatch(/Listen: [1-9]\d* of \d+ places/);
		expect(context.printed()).toMatch(/Selective calling test: none may be made, as no ship station licence is in the job/);
	});
});
