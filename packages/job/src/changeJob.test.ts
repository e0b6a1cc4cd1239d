import { readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { changeJob } from "./changeJob.ts";
import { readJob } from "./readJob.ts";
import { references, resolveJob } from "./resolveJob.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const RESOLVED = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));
const DAY = 86_400_000;
const tried = (text: string) => changeJob(RESOLVED, text).resolved;
const named = (resolved: typeof RESOLVED, name: string) => resolved.voyage.points.find((point) => point.name === name);

describe("changeJob", () => {
	it("turns weights, options and pins, several at once, and leaves the job it was given alone", () => {
		const before = structuredClone(RESOLVED.job);
		const { job } = tried("weather-charts=9, nets=0,reserve:voice=3,noise=city,leastGainPercent=2,disturbance=0");
		expect([job.wants["weather-charts"], job.wants.nets, job.wants.time]).toEqual([9, 0, 1]);
		expect(job.options.reservePlaces).toEqual({ voice: 3, data: 10 });
		expect([job.noise, job.options.leastGainPercent, job.options.disturbance]).toEqual(["city", 2, 0]);
		expect(tried("pin:voice 12=ap17/401").job.pins).toContainEqual({ bank: "voice", place: 12, listing: "ap17/401" });
		expect(tried("pin:voice/1=ap17/401").job.pins.filter(({ place, bank }) => bank === "voice" && place === 1)).toHaveLength(1);
		expect(tried("unpin:voice 121").job.pins).toHaveLength(JOB.pins.length - 1);
		expect(tried("ban:za-capetown").job.bans).toEqual(["us-kodiak", "za-capetown"]);
		expect(tried("unban:us-kodiak").job.bans).toEqual([]);
		expect(changeJob(RESOLVED, "sunspots=20").sunspots).toBe(20);
		expect(changeJob(RESOLVED, "time=2").sunspots).toBeNull();
		expect(RESOLVED.job).toEqual(before);
	});

	it("moves the whole voyage, lengthens a stay and moves what comes after, drops a point", () => {
		const later = tried("start=2027-03-01");
		const shift = later.voyage.points[0]!.arriveMs - RESOLVED.voyage.points[0]!.arriveMs;
		expect(shift).toBe(28 * DAY);
		for (const [i, point] of later.voyage.points.entries()) expect(point.departMs).toBe(RESOLVED.voyage.points[i]!.departMs + shift);
		const longer = tried("stay:ascension=14");
		const stay = named(longer, "Ascension")!;
		expect(stay.departMs - stay.arriveMs).toBe(14 * DAY);
		expect(named(longer, "Horta")!.arriveMs - named(RESOLVED, "Horta")!.arriveMs).toBe(10 * DAY);
		expect(named(longer, "St Helena")).toEqual(named(RESOLVED, "St Helena"));
		expect(named(tried("skip:Ascension"), "Ascension")).toBeUndefined();
		expect(tried("skip:Ascension").voyage.points).toHaveLength(RESOLVED.voyage.points.length - 1);
	});

	it.each([
		["weather-charts", /a number from 0 to 100/],
		["weather-charts=-1", /a number from 0 to 100/],
		["sunspots=many", /a number from 0 to 300/],
		["start=yesterday", /a day after =/],
		["stay:Atlantis=3", /a named point of the voyage: Cape Town, St Helena/],
		["pin:voice=ap17/401", /a bank and a place/],
		["pin:voice 3", /an id after =/],
		["unpin:voice 3", /a place that the job pins/],
		["reserve:memory=3", /a bank of the set: voice, data/],
		["noise=loud", /city, residential, rural or quiet-rural/],
		["", /one of weather-charts=9/],
		["brightness=3", /one of weather-charts=9/],
	])("refuses %j and says what was expected", (text, expected) => {
		expect(() => changeJob(RESOLVED, text)).toThrow(RangeError);
		expect(() => changeJob(RESOLVED, text)).toThrow(expected);
	});

	it("takes any text or refuses it with a RangeError", () => {
		let refused = 0;
		fc.assert(
			fc.property(
				fc.oneof(
					fc.string(),
					fc.constantFrom("pin:", "stay:", "skip:", "ban:", "start=", "time=").chain((head) => fc.string().map((tail) => head + tail)),
				),
				(text) => {
					try {
						changeJob(RESOLVED, text);
					} catch (error) {
						expect(error).toBeInstanceOf(RangeError);
						refused++;
					}
				},
			),
			{ seed: 4, numRuns: 500 },
		);
		expect(refused).toBeGreaterThan(200);
	});
});
