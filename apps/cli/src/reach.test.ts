import { directory } from "@skipwright/directory";
import { describe, expect, test } from "vitest";
import { type FakeContext, fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

async function run(args: readonly string[]): Promise<FakeContext & { exit: number }> {
	const context = fakeContext();
	const exit = await runProgram(context, ["reach", ...args]);
	return { ...context, exit };
}

const BASE = ["--from", "50.1,-5.5", "--to", "46.5,-12", "--month", "2027-03"];
const without = (flag: string) => BASE.filter((_, i) => BASE[i] !== flag && BASE[i - 1] !== flag);
const json = async (args: readonly string[]) => {
	const { exit, printed, complained } = await run([...args, "--json"]);
	expect([exit, complained()]).toEqual([0, ""]);
	return JSON.parse(printed());
};
const placeless = directory().stations.find(({ position }) => position === null);

test("help names what it takes", async () => {
	const { exit, printed } = await run(["--help"]);
	expect(exit).toBe(0);
	for (const option of ["--from", "--to", "--month", "--khz", "--emission", "--power", "--sunspots", "--why", "--json"]) {
		expect(printed()).toContain(option);
	}
});

describe("a clear error and exit 2, nothing on standard output", () => {
	test.each([
		["an unknown station", [...without("--from"), "--from", "xx-nowhere"], "among"],
		["a call sign of many", [...without("--from"), "--from", "OYR"], "which all have that call sign"],
		["no place", [...without("--from"), "--from", "91,0"], "latitude"],
		["a bad position", [...without("--to"), "--to", "5S,15W"], "cannot take --to 5S,15W: expected a position as"],
		["no position", without("--to"), "--to"],
		["no month", without("--month"), "--month"],
		["a bad month", [...without("--month"), "--month", "2027-13"], "cannot take --month 2027-13"],
		["a month before the table", [...without("--month"), "--month", "1950-01"], "--month 1950-01"],
		["kHz with a comma", [...BASE, "--khz", "8,682"], "cannot take --khz 8,682"],
		["a power of nothing", [...BASE, "--power", "0"], "expected watts above 0"],
		["a power in words", [...BASE, "--power", "5kW"], "cannot take --power 5kW"],
		["sunspots below none", [...BASE, "--sunspots", "-1"], "cannot take --sunspots -1"],
		["sunspots in words", [...BASE, "--sunspots", "high"], "cannot take --sunspots high"],
		["sunspots left out", [...BASE, "--sunspots", ""], "cannot take --sunspots"],
		["an hour past the day", [...BASE, "--why", "24"], "expected an hour UTC, 0 to 23"],
		["an hour in words", [...BASE, "--why", "noon"], "expected an hour UTC, 0 to 23"],
		["a fraction of an hour", [...BASE, "--why", "1.5"], "expected an hour UTC, 0 to 23"],
		["a wrong hour with JSON too", [...BASE, "--why", "24", "--json"], "expected an hour UTC, 0 to 23"],
		["an emission that no set has", [...BASE, "--emission", "F9Z"], "cannot take --emission F9Z"],
		["a day that is none", [...without("--from"), "--from", "za-capetown", "--on", "2026-02-30"], "expected a day"],
	])("%s", async (_, args, words) => {
		const { exit, printed, complained } = await run(args);
		expect(exit).toBe(2);
		expect(complained()).toContain(words);
		expect(printed()).toBe("");
	});

	test("a station whose position is not known: cannot tell, never a guess", async () => {
		expect(placeless).toBeDefined();
		const { exit, printed, complained } = await run([...without("--from"), "--from", placeless!.id]);
		expect(exit).toBe(2);
		expect(complained()).toContain(`cannot tell the reach of ${placeless!.id}: its position is not known`);
		expect(printed()).toBe("");
	});
});

describe("JSON", () => {
	const SERIES = ["chance", "snrDb", "signalDb", "noiseDb", "mufMHz"] as const;

	test("has the contract's keys, 24 hours each, and besides them only these", async () => {
		const answer = await json(BASE);
		expect(Object.keys(answer)).toEqual(["month", "sunspots", "from", "to", "rows"]);
		expect(answer).toMatchObject({ month: "2027-03", from: [50.1, -5.5], to: [46.5, -12] });
		expect(answer.rows.map(({ frequencyHz }: { frequencyHz: number }) => frequencyHz)).toEqual([
			2_182_000, 4_146_000, 6_224_000, 8_294_000, 12_353_000, 16_528_000, 18_825_000, 22_159_000, 25_100_000,
		]);
		for (const row of answer.rows) {
			expect(Object.keys(row).sort()).toEqual(
				["frequencyHz", "emission", ...SERIES, "basis", "snrUpperDecileDb", "snrLowerDecileDb", "by"].sort(),
			);
			for (const key of [...SERIES, "snrUpperDecileDb", "snrLowerDecileDb"]) {
				expect(row[key]).toHaveLength(24);
				expect(row[key].every(Number.isFinite)).toBe(true);
			}
			expect(row.by).toHaveLength(24);
			expect(row.chance.every((chance: number) => chance >= 0 && chance <= 1)).toBe(true);
			expect(row.basis).toContain("sunspotScale");
			expect(row.basis).toContain("manMadeClassOf");
			row.snrDb.forEach((snrDb: number, hour: number) => {
				expect(snrDb).toBeCloseTo(row.signalDb[hour] - row.noiseDb[hour], 9);
			});
		}
	});

	test("with a number of sunspots of one's own nothing rests on the old scale's factor, and the number is told back", async () => {
		const answer = await json([...BASE, "--khz", "8294", "--sunspots", "80"]);
		expect(answer.sunspots).toBe(80);
		expect(answer.rows[0].basis).not.toContain("sunspotScale");
	});

	test("--why adds the hour's steps to each row", async () => {
		const { rows } = await json([...BASE, "--khz", "8294", "4146", "--why", "20"]);
		expect(rows.map(({ why }: { why: { utcHour: number } }) => why.utcHour)).toEqual([20, 20]);
		expect(rows[0].why.why.sky.modes.length).toBeGreaterThan(0);
		expect(rows[0].why.chance).toBe(rows[0].chance[20]);
	});

	test("an emission of which nothing is known has no figures, and says so", async () => {
		const { rows } = await json([...BASE, "--khz", "8294", "--emission", "J2D"]);
		expect(rows[0]).toMatchObject({
			frequencyHz: 8_294_000,
			chance: null,
			snrDb: null,
			mufMHz: null,
			cannotTell: expect.stringContaining("nothing is known"),
		});
	});

	test("a designator names its class; more power is a stronger signal by as many decibels", async () => {
		const [low, high] = await Promise.all(
			["100", "1000"].map((watts) => json([...BASE, "--khz", "12353", "--emission", "2K80J3E", "--power", watts])),
		);
		expect(low.rows[0].emission).toBe("J3E");
		const gains = low.rows[0].signalDb.map((signalDb: number, hour: number) => high.rows[0].signalDb[hour] - signalDb);
		expect(gains).toHaveLength(24);
		for (const gain of gains) expect(gain).toBeCloseTo(10, 9);
	});
});

describe("a station of the directory", () => {
	test("is found by id or by a call sign that only it has, with all its open listings", async () => {
		const open = directory().listings.filter(({ stationId, status }) => stationId === "za-capetown" && status !== "closed");
		const [byId, byCallSign] = await Promise.all(
			["za-capetown", "zsc"].map((from) => json(["--from", from, "--to", "-25,0", "--month", "2027-03"])),
		);
		expect(open.length).toBeGreaterThan(10);
		expect(byId.rows.length).toBe(open.length);
		expect(byCallSign).toEqual(byId);
	});

	test("of unknown power has each service's assumed one, and says so; --power overrides it", async () => {
		const args = ["--from", "za-capetown", "--to", "-25,0", "--month", "2027-03"];
		const { printed } = await run(args);
		expect(printed()).toContain("assumed: power 1000 W (voice-working");
		expect(printed()).toContain("4000 W (nbdp-msi)");
		const assumed = await json([...args, "--khz", "12577", "12698"]);
		const given = await json([...args, "--khz", "12577", "12698", "--power", "1000"]);
		const signals = (answer: typeof assumed) => answer.rows.map((row: { signalDb: number[] }) => row.signalDb[12]);
		expect(signals(assumed)[0]).toBeCloseTo(signals(given)[0], 9);
		expect(signals(assumed)[1] - signals(given)[1]).toBeCloseTo(10 * Math.log10(4), 9);
		expect((await run([...args, "--power", "500"])).printed()).not.toContain("power 1000 W");
	});

	test("answers for a frequency that it does not list, as speech", async () => {
		const { rows } = await json(["--from", "za-capetown", "--to", "-25,0", "--month", "2027-03", "--khz", "8297"]);
		expect(rows.map(({ frequencyHz, emission }: { frequencyHz: number; emission: string }) => [frequencyHz, emission])).toEqual([
			[8_297_000, "J3E"],
		]);
	});
});

describe("in words", () => {
	test("one line a frequency: grades best first, the best hours with chance and way; what was assumed above; times UTC", async () => {
		const { exit, printed } = await run(BASE);
		expect(exit).toBe(0);
		const lines = printed().trimEnd().split("\n");
		expect(lines[0]).toMatch(/^50°06′N 005°30′W to 46°30′N 012°00′W, 338 nm, 2027-03$/);
		expect(lines[1]).toMatch(/^sunspot number \d+, \d+ to \d+ by lower and higher forecasts \(/);
		expect(lines[2]).toContain("assumed: power 1000 W");
		expect(lines[3]).toContain("UTC; monthly medians, not promises");
		const rows = lines.slice(4);
		expect(rows).toHaveLength(9);
		const span = String.raw`\d{4}-\d{4}`;
		const grade = `(good|fair|poor) (all day|${span}(, ${span})*)`;
		const best = String.raw`(; best ${span})? \((over 99|\d+) %, by (sky|ground) wave\)`;
		const form = new RegExp(
			String.raw`^ +\d+ kHz J3E {2}(not heard( \(at most \d+ %\))?|${grade}(; ${grade})*(; not heard otherwise)?${best})$`,
		);
		for (const row of rows) expect(row).toMatch(form);
	});

	test("--why alone explains 1200 UTC, and its powers add up to its ratio and chance", async () => {
		const { printed } = await run([...BASE, "--khz", "6224", "--why"]);
		expect(printed()).toContain("Why 6224 kHz J3E at 1200 UTC");
		const { rows } = await json([...BASE, "--khz", "6224"]);
		const found = /ratio (-?[\d.]+) dB .* chance (over 99|\d+) %/.exec(printed());
		expect(Number(found?.[1])).toBeCloseTo(rows[0].snrDb[12], 1);
		expect(found?.[2]).toBe(String(Math.round(rows[0].chance[12] * 100)));
		const [radiated, counted] = [/sent: ([\d.]+) dBW/, /of which ([\d.]+) dBW counts, mean power/].map((form) =>
			Number(form.exec(printed())?.[1]),
		);
		expect(radiated! - counted!).toBeCloseTo(8, 1);
		const [loss, signal] = /sky wave: (-[\d.]+) dB .*: (-[\d.]+) dBW/.exec(printed())!.slice(1).map(Number);
		expect(counted! + loss!).toBeCloseTo(signal!, 0);
		for (const id of rows[0].basis) expect(printed()).toContain(`${id} [`);
	});
});
