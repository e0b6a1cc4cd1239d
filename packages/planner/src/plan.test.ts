import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory, listingById } from "@skipwright/directory";
import { directoryFor, type Job, type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { channels, channelsAt, guards } from "@skipwright/rules";
import { checkList, type Profile, profileNamed, type Row, tagFits } from "@skipwright/set";
import { hz, isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { banksFor } from "./banksFor.ts";
import { handbookHearing } from "./handbookHearing.ts";
import { plan } from "./plan.ts";
import type { Plan } from "./planDocument.ts";
import { plannedRows } from "./plannedRows.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const ON = isoDate("2026-11-24");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const EXAMPLE = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));

function planOf(resolved: ResolvedJob, shipped = directory()): Promise<Plan> {
	return plan(resolved, shipped, { on: ON, checkList, hearing: handbookHearing() });
}

function withJob(change: Partial<Job>, rest: Partial<ResolvedJob> = {}): ResolvedJob {
	return { ...EXAMPLE, ...rest, job: { ...JOB, ...change } };
}

const BLANK = withJob({ pins: [] }, { asFound: [] });
const planned = await planOf(EXAMPLE);

/** What every plan must be, whatever it was made from. */
function expectSound({ places, findings }: Plan, profile: Profile): void {
	expect(findings.filter(({ severity }) => severity !== "mind")).toEqual([]);
	expect(findings.filter(({ code }) => code === "block-mixed")).toEqual([]);
	const keys = new Set(places.map(({ bank, place }) => `${bank} ${place}`));
	expect(keys.size).toBe(places.length);
	for (const { bank, place, tag } of places) {
		expect(place).toBeLessThanOrEqual(profile.banks.find(({ id }) => id === bank)?.places ?? 0);
		expect(tagFits(profile, tag), tag).toBe(true);
	}
	for (const guard of guards().filter(({ required }) => required)) {
		expect(
			places.some(({ receiveHz, mode }) => receiveHz === guard.hz && mode === "USB"),
			String(guard.hz),
		).toBe(true);
	}
}

describe("the example job", () => {
	it("plans without a stop or a fix, every required guard held, no block mixed", () => {
		expectSound(planned, EXAMPLE.profile);
		expect(planned.status).toBe("feasible");
		expect(planned.gap).toBeNull(); // without a solver nothing is proved
		expect(planned.places.length).toBeGreaterThan(200);
		expect(planned.worth).toBeGreaterThan(0);
		expect(planned.worth).toBeLessThanOrEqual(Object.values(JOB.wants).reduce((sum, weight) => sum + weight, 0));
	});

	it("puts the slips right in their places where the tag says what was meant", () => {
		const at = (bank: string, place: number) => planned.places.find((one) => one.bank === bank && one.place === place);
		expect(at("data", 49)).toMatchObject({ receiveHz: 9_108_100, mode: "USB", listing: "us-boston/fax/9110", changed: true }); // centre keyed
		expect(at("data", 48)).toMatchObject({ receiveHz: 6_338_600, listing: "us-boston/fax/6340.5" }); // offset twice
		expect(at("data", 56)).toMatchObject({ receiveHz: 4_608_100, listing: "gb-northwood/fax/4610" }); // digit changed
		expect(at("voice", 142)).toMatchObject({ receiveHz: 8_719_000, mode: "USB" }); // AM for speech
		expect(at("voice", 24)).toMatchObject({ receiveHz: 4_369_000, transmitHz: 4_077_000 }); // sides exchanged
		expect(at("voice", 43)).toMatchObject({ receiveHz: 6_507_000, transmitHz: 6_206_000 }); // assigned figures
		expect(at("voice", 123)?.tag).not.toBe("BUDDY CHAT"); // the distress carrier as a chat channel
	});

	it("calls nothing by a tag that misleads, and leaves the owner's own words where they are true", () => {
		const at = (bank: string, place: number) => planned.places.find((one) => one.bank === bank && one.place === place);
		// put right by what the tag says, so the tag stays
		expect(at("voice", 142)?.tag).toBe("ZSC WX 8");
		expect(at("voice", 171)).toMatchObject({ tag: "SHANNON 8", receiveHz: 8_957_000, what: expect.stringMatching(/^Shannon/) });
		expect(at("voice", 171)?.notes.join()).toMatch(/put right, near-miss/);
		expect(at("data", 82)).toMatchObject({ tag: "DDH 7646", receiveHz: 7_646_000, mode: "FSK" }); // moved point
		// too long for the set: a part of it would name a coast station on a carrier between ships
		expect(at("voice", 129)).toMatchObject({ tag: "SHIP 16546", notes: ['was tagged "HORTA RADIO EVENING"'] });
		expect(at("voice", 128)).toMatchObject({ tag: "FRIENDS", what: "Friends ashore at Horta", notes: ['was tagged "GIANNI\'S"'] });
		expect(at("voice", 118)).toMatchObject({ tag: "SHIP 8191", notes: ['was tagged "SHIP 8294"'] });
	});

	it("finds a place for what the owner had before it brings anything new", async () => {
		const moved = planned.places.find(({ tag }) => tag === "NMG WX 12"); // lifted out of a block of working channels
		expect(moved).toMatchObject({ bank: "voice", receiveHz: 12_788_000, transmitHz: null, want: "weather-voice", changed: true });

		// a time signal among working channels, and one place left among what it can be scanned with
		const row = (place: number, tag: string, receiveHz: number): Row => {
			return { bank: "voice", place, tag, receive: hz(receiveHz), transmit: null, mode: "AM", line: 1_000 + place };
		};
		const held = EXAMPLE.asFound.filter(({ bank, place }) => bank !== "voice" || (place !== 75 && place !== 162));
		const last = [159, 160, 177, 178, 179, 180].map((place) => row(place, `WX ${place}`, 15_000_000 + 1_000 * place));
		const { places, removed, leftOut } = await planOf(withJob({}, { asFound: [...held, ...last, row(75, "WWV 10", 10_000_000)] }));
		expect(removed.map(({ tag }) => tag)).not.toContain("WWV 10");
		expect(places.find(({ place, bank }) => bank === "voice" && place === 162)).toMatchObject({
			tag: "WWV 10",
			listing: "us-wwv/time-signal/10000",
		});
		// so something new that comes before it in the order of wants had to stay out
		const without = leftOut.filter(({ why }) => /no block with a free place|no free place/.test(why)).map(({ listing }) => listing);
		expect(without.some((listing) => /volmet/.test(listing))).toBe(true);
	});

	it("leaves right rows where they are, tag and all", () => {
		const wrongLines = new Set(
			read("south-atlantic.seeded.csv")
				.split("\n")
				.map((line) => Number(line.split(",")[2])),
		);
		const right = EXAMPLE.asFound.filter(({ line }) => !wrongLines.has(line));
		const moved = right.filter(
			(row) =>
				!planned.places.some(
					(one) =>
						one.bank === row.bank &&
						one.place === row.place &&
						one.tag === row.tag &&
						one.receiveHz === row.receive &&
						one.transmitHz === row.transmit &&
						!one.changed,
				),
		);
		expect(right.length).toBeGreaterThan(160);
		// 95 stands twice in the list, and the last line is what the set holds; 8294 is pinned at 121, so its place among the ship carriers is free
		expect(moved.map(({ bank, place }) => `${bank} ${place}`)).toEqual(["voice 95", "voice 106"]);
	});

	it("says of every row that is gone why", () => {
		expect(planned.removed.length).toBeGreaterThan(10);
		for (const { why } of planned.removed) expect(why).not.toBe("");
		expect(planned.removed).toContainEqual(
			expect.objectContaining({ bank: "data", place: 69, why: expect.stringMatching(/listing-closed/) }),
		);
	});

	it("keeps the pins and the reserve", () => {
		for (const { bank, place } of JOB.pins) {
			expect(planned.places.find((one) => one.bank === bank && one.place === place)).toMatchObject({ pinned: true });
		}
		for (const { id, places } of EXAMPLE.profile.banks) {
			const full = planned.places.filter(({ bank }) => bank === id).length;
			expect(full).toBeLessThanOrEqual(places - (JOB.options.reservePlaces[id] ?? 0));
		}
	});

	it("sends on nothing that is published receive only, and on 12290 and 16420 only as guards", () => {
		const whole = directoryFor(EXAMPLE, directory());
		let looked = 0;
		for (const { listing, transmitHz, tag } of planned.places) {
			if (listing !== null && listingById(whole, listing)?.receiveOnly === true) {
				expect(transmitHz, tag).toBeNull();
				looked++;
			}
		}
		expect(looked).toBeGreaterThan(60);
		const onDistress = planned.places.filter(({ transmitHz }) => transmitHz === 12_290_000 || transmitHz === 16_420_000);
		expect(onDistress.map(({ want }) => want)).toEqual(["guard", "guard"]);
		expect(planned.leftOut).toContainEqual(expect.objectContaining({ listing: "ap17/1221", why: expect.stringMatching(/12359/) }));
	});

	it("pairs two-frequency channels as receive coast, transmit ship (RR Appendix 17)", () => {
		const pairs = planned.places.filter(({ receiveHz, transmitHz }) => transmitHz !== null && transmitHz !== receiveHz);
		expect(pairs.length).toBeGreaterThan(50);
		for (const { receiveHz, transmitHz, tag } of pairs) {
			expect(
				channelsAt(receiveHz).some(({ channel, side }) => side === "coast" && channel.ship === transmitHz),
				tag,
			).toBe(true);
		}
	});

	it("hears at least as much as before, want by want and leg by leg", () => {
		expect(planned.served.length).toBeGreaterThan(50);
		for (const { want, leg, hoursPerDay } of planned.served)
			expect(hoursPerDay.after, `${want} ${leg}`).toBeGreaterThanOrEqual(hoursPerDay.before);
		expect(planned.basis).toMatch(/rule of thumb/);
	});

	it("is the same whatever the order of the directory, and when made twice", async () => {
		const turned = { ...directory(), listings: directory().listings.toReversed(), stations: directory().stations.toReversed() };
		expect(await planOf(EXAMPLE, turned)).toEqual(planned);
		expect(JSON.stringify(await planOf(EXAMPLE))).toBe(JSON.stringify(planned));
	});

	it("plans a list that it has planned to itself", async () => {
		const again = await planOf({ ...EXAMPLE, asFound: plannedRows(planned) });
		const changed = again.places.filter(({ changed: isChanged }) => isChanged);
		expect(changed.map(({ tag }) => tag)).toEqual([]);
		expect(again.places.length).toBe(planned.places.length);
	});
});

describe("plan", () => {
	it.each(["twin-180", "single-200", "receiver-100"])("fills a blank %s", async (id) => {
		const profile = profileNamed(id)!;
		const result = await planOf({ ...BLANK, profile, job: { ...BLANK.job, options: { ...JOB.options, reservePlaces: {} } } });
		expectSound(result, profile);
		expect(result.status).toBe("feasible");
		expect(result.places.length).toBeGreaterThan(70);
		expect(result.places.every(({ changed }) => changed)).toBe(true);
		const tags = result.places.map(({ bank, tag }) => `${bank} ${tag}`);
		expect(new Set(tags).size).toBe(tags.length);
		if (profile.transmit.length === 0) expect(result.places.every(({ transmitHz }) => transmitHz === null)).toBe(true);
	});

	it.each([
		["a figure that is not so goes", "SHANNON 8975", 8_975_000, "voice", 8_957_000, /^EIP 8957$/],
		["a figure of the band stays", "SHANNON 8", 8_975_000, "voice", 8_957_000, /^SHANNON 8$/],
		["the name is cut to the set", "SHANNON VOLMET", 8_975_000, "voice", 8_957_000, /^SHANNON$/],
		["a guard carrier is called one", "DIST CHAT", 8_290_000, "voice", 8_291_000, /^DIST 8291$/],
	])("tags what was put right: %s", async (_what, tag, receive, bank, expected, becomes) => {
		const row: Row = { bank, place: 171, tag, receive: hz(receive), transmit: null, mode: "USB", line: 2 };
		const { places } = await planOf({ ...BLANK, asFound: [row] });
		const place = places.find(({ bank: b, place: p }) => b === bank && p === 171);
		expect(place?.receiveHz).toBe(expected);
		expect(place?.tag).toMatch(becomes);
	});

	it("keeps the leading words of a tag that is too long where they name what is heard", async () => {
		const row: Row = { bank: "voice", place: 171, tag: "SHANNON WEATHER", receive: hz(8_957_000), transmit: null, mode: "USB", line: 2 };
		const { places } = await planOf({ ...BLANK, asFound: [row] });
		expect(places.find(({ place, bank }) => place === 171 && bank === "voice")?.tag).toBe("SHANNON");
	});

	it("keeps charts and text in the bank for data, speech in the bank for speech", async () => {
		for (const { bank, mode, want } of (await planOf(BLANK)).places) {
			const isData = want === "safety-text" || want === "weather-charts" || want === "weather-text";
			expect(bank, `${want} ${mode}`).toBe(isData ? "data" : "voice");
		}
	});

	it("holds the guards and the safety text even where the list as found fills the set", async () => {
		const carriers = channels().flatMap(({ coast, use }) => (use === "duplex" && coast !== null ? [coast] : []));
		const full = EXAMPLE.profile.banks.flatMap(({ id, places }) =>
			Array.from({ length: places }, (_, i): Row => {
				const isVoice = id === "voice";
				const receive = isVoice ? (carriers[i] ?? hz(0)) : hz(6_740_000 + 1_000 * i);
				return {
					bank: id,
					place: i + 1,
					tag: `X ${i + 1}`,
					receive,
					transmit: null,
					mode: isVoice ? "USB" : "FSK",
					line: i + (isVoice ? 2 : 1_002),
				};
			}),
		);
		const result = await planOf(withJob({ pins: [], options: { ...JOB.options, reservePlaces: {} } }, { asFound: full }));
		expectSound(result, EXAMPLE.profile);
		expect(result.places.some(({ receiveHz, mode }) => receiveHz === 518_000 && mode === "FSK")).toBe(true);
		expect(result.removed.some(({ why }) => /gave way to/.test(why))).toBe(true);
	});

	it("clears what is not planned when the job says so", async () => {
		const cleared = await planOf(withJob({ options: { ...JOB.options, clearUnplanned: true } }));
		expectSound(cleared, EXAMPLE.profile);
		expect(cleared.places.length).toBeLessThan(120);
		expect(cleared.places.every(({ want, pinned }) => want !== null || pinned)).toBe(true);
	});

	it("gives nothing that is not wanted, and nothing that is banned", async () => {
		const few = await planOf({ ...BLANK, job: { ...BLANK.job, wants: { time: 1 }, bans: ["us-wwv"] } });
		expect(new Set(few.places.map(({ want }) => want))).toEqual(new Set(["guard", "time", "safety-text"]));
		expect(few.places.some(({ listing }) => listing?.startsWith("us-wwv/"))).toBe(false);
		expect(few.leftOut).toContainEqual({ listing: "us-wwv/time-signal/10000", why: "banned by the job" });
	});

	it("sends only as a guard without a ship licence", async () => {
		const licences = { ...JOB.vessel.licences, ship: false };
		const silent = await planOf({ ...BLANK, job: { ...BLANK.job, vessel: { ...JOB.vessel, licences } } });
		expect(silent.places.filter(({ transmitHz, want }) => transmitHz !== null && want !== "guard")).toEqual([]);
	});

	it("is infeasible, and says why, when pins cannot be kept", async () => {
		const result = await planOf(
			withJob({
				pins: [
					{ bank: "voice", place: 181, listing: "guard/2182" },
					{ bank: "voice", place: 2, listing: "guard/2182" },
					{ bank: "voice", place: 2, listing: "guard/4125" },
					{ bank: "data", place: 3, listing: "no/such/listing" },
				],
			}),
		);
		expect(result.status).toBe("infeasible");
		expect(result.conflicts).toEqual([
			"pin voice 181: the set has no such place",
			"pin voice 2: another pin has this place already, for distress, safety and calling, 2 MHz",
			"pin data 3: no listing, channel or guard carrier no/such/listing that this set can hold",
		]);
	});

	it("tells stale and unknown times but keeps them, and leaves closed ones out", async () => {
		const result = await planOf(BLANK);
		expect(result.findings.some(({ code }) => code === "listing-stale")).toBe(true);
		expect(result.findings.some(({ code }) => code === "listing-closed")).toBe(false);
		expect(result.leftOut).toContainEqual({ listing: "nz-zklf/fax/5807", why: "closed" });
		expect(result.leftOut).toContainEqual({
			listing: "safety/490",
			why: expect.stringMatching(/490 kHz FSK is not within the set's range/),
		});
	});

	it("makes a sound plan of any part of the list as found, in any order", async () => {
		let made = 0;
		await fc.assert(
			fc.asyncProperty(
				fc.shuffledSubarray([...EXAMPLE.asFound], { minLength: 0, maxLength: EXAMPLE.asFound.length }),
				fc.boolean(),
				async (rows, clearUnplanned) => {
					const asFound = rows.map((row, i) => ({ ...row, line: i + 2 }));
					const result = await planOf(withJob({ options: { ...JOB.options, clearUnplanned } }, { asFound }));
					expectSound(result, EXAMPLE.profile);
					expect(result.status).toBe("feasible");
					made++;
				},
			),
			{ seed: 20261124, numRuns: 8, endOnFailure: true },
		);
		expect(made).toBe(8);
	});

	it("gives every place what its bank is for", () => {
		expect(banksFor(EXAMPLE.profile, "data").map(({ id }) => id)).toEqual(["data"]);
		expect(banksFor(profileNamed("single-200")!, "data").map(({ id }) => id)).toEqual(["memory"]);
	});
});
