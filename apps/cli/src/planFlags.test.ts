import { describe, expect, test } from "vitest";
import { fakeContext } from "./fakeContext.ts";
import { runProgram } from "./program.ts";

/** One berth for three days and two wants: planned in a second. */
const SMALL = JSON.stringify({
	format: "skipwright-job",
	version: 1,
	title: "small",
	vessel: { name: "Imaginary", licences: { ship: true, amateur: false, operator: "" } },
	set: { profile: "twin-180" },
	voyage: { points: [{ name: "Horta", at: [38.53, -28.63], from: "2027-05-01", to: "2027-05-04" }] },
	wants: { time: 1, "weather-charts": 3 },
	pins: [{ bank: "voice", place: 7, listing: "us-wwv/time-signal/10000" }],
	bans: ["us-wwvv"],
});

async function run(...flags: readonly string[]) {
	const context = fakeContext({ "small.json": SMALL });
	const exit = await runProgram(context, ["plan", "small.json", ...flags]);
	return { exit, out: context.printed(), err: context.complained() };
}

describe("plan --explain", () => {
	test("a place by bank and number, what it gives, and when it is the first choice", async () => {
		const { exit, out } = await run("--explain", "voice 7");
		expect(exit).toBe(0);
		expect(out).toMatch(/^voice 7 {2}\S.* {2}10000 AM, receive only: .*standard time and frequency\n/);
		expect(out).toMatch(/Pinned by the job\. Time: [\d.]+ hours a day, .*best of \d+ places/);
		expect(out.split("\n").length).toBeLessThan(12); // nothing else is printed
	});

	test("a listing that is held, one left out with the reason, and a station's several at once", async () => {
		const { out } = await run("--explain", "us-wwv/time-signal/10000", "nz-zklf", "us-boston/fax/9110");
		expect(out).toContain("voice 7");
		expect(out.match(/^nz-zklf\/fax\/\d+: not in the plan; closed$/gm)?.length).toBeGreaterThan(1);
		expect(out).toMatch(/us-boston\/fax\/9110: not in the plan; |data \d+ {2}NMF/);
	});

	test("what it knows nothing of is said, with what to give, exit 2", async () => {
		const { exit, out, err } = await run("--explain", "voice 99");
		expect([exit, out]).toEqual([2, ""]);
		expect(err).toMatch(/cannot explain "voice 99": neither a filled place .* nor a listing/);
	});
});

describe("plan --what-if", () => {
	test("says what would be different, and what is heard is worked out once for what it does not touch", async () => {
		const { exit, out } = await run("--what-if", "weather-charts=0", "pin:voice 9=ap17/401", "sunspots=150");
		expect(exit).toBe(0);
		expect(out.match(/^What if /gm)).toHaveLength(3);
		expect(out).toMatch(/What if weather-charts=0: proved best\n {2}weather charts +[\d.]+ -> +0\.0 hours a day\n {2}goes out: data \d+ /);
		const pinned = out.slice(out.indexOf("What if pin"), out.indexOf("What if sunspots"));
		expect(pinned).toMatch(/^What if pin:voice 9=ap17\/401: proved best\n/);
		expect(pinned).toMatch(/comes in: voice 9 /);
	});

	test("as data beside the plan; a change that is none is named before anything is worked out, exit 2", async () => {
		const { out } = await run("--what-if", "ban:us-wwv", "--json");
		const { plan, whatIf } = JSON.parse(out);
		expect(plan.format).toBe("skipwright-plan");
		expect(whatIf).toEqual([expect.objectContaining({ change: "ban:us-wwv", status: "infeasible" })]); // its pin cannot be kept
		const wrong = await run("--what-if", "weather=3");
		expect([wrong.exit, wrong.out]).toEqual([2, ""]);
		expect(wrong.err).toMatch(/--what-if: cannot try "weather=3": expected one of weather-charts=9/);
	});
});

test("plan --levels tells how far it rests on the strength of signals; doubts and the use plan are printed", async () => {
	const { out } = await run("--levels", "--sunspots", "40");
	expect(out).toMatch(/6 dB weaker: this layout gives .*weather charts [\d.]+ hours a day/);
	expect(out).toMatch(/6 dB stronger/);
	expect(out).toContain('banned "us-wwvv": no listing, station or channel has this id');
	expect(out).toMatch(/What to use when\n.*\n {2}at Horta \(from 2027-05-01, 3 days\)\n {4}time +00-\d\d voice \d+/);
	expect(out).toContain("sunspot number 40 to 40");
	for (const line of out.split("\n").filter((one) => /^\s+\d\d-\d\d /.test(one))) expect(line.length).toBeLessThanOrEqual(104);
});
