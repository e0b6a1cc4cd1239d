import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory } from "@skipwright/directory";
import { type Job, type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { handbookHearing, type Plan, type PlannedPlace, plan, type Solver } from "@skipwright/planner";
import { checkList, type Profile, profileNamed } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { highsSolve } from "./highsSolve.ts";
import { loadHighs } from "./loadHighs.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const EXAMPLE = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));

const highs = await loadHighs();
const solver: Solver = (model, options) => Promise.resolve(highsSolve(highs, { model, options }, () => undefined));

function planned(change: Partial<Job>, rest: Partial<ResolvedJob> = {}, isProved = true): Promise<Plan> {
	const resolved = { ...EXAMPLE, ...rest, job: { ...JOB, ...change } };
	const choice = isProved ? { solver } : {};
	return plan(resolved, directory(), { on: isoDate("2026-11-24"), checkList, hearing: handbookHearing(), choice });
}

const at = ({ bank, place }: Pick<PlannedPlace, "bank" | "place">) => `${bank} ${place}`;

/** Wants in each block, summed over the blocks: the fewer, the better they keep together. */
function spread({ banks }: Profile, places: readonly PlannedPlace[]): number {
	const length = (bank: string) => banks.find(({ id }) => id === bank)?.blockLength ?? 1;
	const all = places.flatMap(({ bank, place, want }) =>
		want === null ? [] : [`${bank} ${Math.floor((place - 1) / length(bank))} ${want}`],
	);
	return new Set(all).size;
}

describe("disturbance", () => {
	it("moves nothing that is right at 1, more and more towards 0 where that brings order, and never a pin", async () => {
		const plans = new Map<number, Plan>();
		for (const disturbance of [1, 0.5, 0]) {
			plans.set(disturbance, await planned({ options: { ...JOB.options, disturbance } }));
		}
		const [usual, some, free] = [1, 0.5, 0].map((one) => plans.get(one)!);
		const changes = (one: Plan | undefined) => one?.places.filter(({ changed }) => changed).length ?? 0;
		expect(changes(some)).toBeGreaterThanOrEqual(changes(usual));
		expect(changes(free)).toBeGreaterThan(changes(usual) + 80);
		expect(spread(EXAMPLE.profile, free!.places)).toBeLessThanOrEqual(spread(EXAMPLE.profile, some!.places));
		expect(spread(EXAMPLE.profile, some!.places)).toBeLessThan(spread(EXAMPLE.profile, usual!.places));
		for (const one of plans.values()) {
			expect([one.status, one.gap]).toEqual(["optimal", 0]);
			expect(one.findings.filter(({ severity }) => severity !== "mind")).toEqual([]);
			for (const pin of JOB.pins) expect(one.places.find((place) => at(place) === at(pin))).toMatchObject({ pinned: true });
			// the same is held, wherever it stands
			const held = (places: readonly PlannedPlace[]) =>
				places.map(({ bank, receiveHz, transmitHz, mode }) => `${bank} ${receiveHz} ${transmitHz} ${mode}`).toSorted();
			expect(held(one.places)).toEqual(held(usual!.places));
		}
	});
});

describe("a set with three blocks of ten", () => {
	const single = profileNamed("single-200")!;
	const profile: Profile = { ...single, id: "single-30", banks: [{ id: "memory", places: 30, blockLength: 10, holds: "any" }] };
	const voyage = { points: [{ name: "Falmouth", at: [50.1, -5], from: "2027-02-01", to: "2027-02-20" }] };
	const text = JSON.parse(read("south-atlantic.job.json"));
	const wants = { "weather-voice": 4, "ship-calling": 2 };
	const small = readJob("job", JSON.stringify({ ...text, voyage, wants, asFound: null, pins: [], listings: { rows: [] }, options: {} }));

	it.each([
		["with the solver", true],
		["without", false],
	])("holds spoken weather beside the guards, the safety text and carriers between ships, %s", async (_, isProved) => {
		const { places, conflicts, leftOut, findings } = await planned(small, { ...resolveJob(small, new Map()), profile }, isProved);
		expect(conflicts).toEqual([]);
		expect(findings.filter(({ code, severity }) => severity !== "mind" || code === "block-mixed")).toEqual([]);
		const count = (want: string) => places.filter((one) => one.want === want).length;
		expect(count("guard")).toBe(6);
		// ten places for speech, twenty for the rest: of these the safety text takes eleven, and the six coasts around nine at most
		expect(["safety-text", "weather-voice", "ship-calling"].map(count)).toEqual([11, 6, 4]);
		expect(leftOut.filter(({ why }) => /no block with a free place/.test(why))).toEqual([]);
	});
});

describe("any pins, any reserve, any disturbance", () => {
	it("keeps both, and mixes no block", async () => {
		let made = 0;
		const free = [...Array.from({ length: 180 }, (_, i) => ({ bank: "voice", place: i + 1, listing: `ap17/${4_146 + 3 * (i % 2)}` }))];
		await fc.assert(
			fc.asyncProperty(
				fc.shuffledSubarray(free, { minLength: 0, maxLength: 4 }),
				fc.integer({ min: 0, max: 40 }),
				fc.constantFrom(0, 0.2, 1),
				fc.shuffledSubarray([...EXAMPLE.asFound], { minLength: 0, maxLength: 120 }),
				async (pins, voice, disturbance, rows) => {
					const asFound = rows.map((row, i) => ({ ...row, line: i + 2 }));
					const options = { ...JOB.options, reservePlaces: { voice, data: 20 }, disturbance };
					const { places, findings, conflicts } = await planned({ pins, options }, { asFound });
					expect(conflicts).toEqual([]);
					for (const pin of pins) expect(places.find((one) => at(one) === at(pin))).toMatchObject({ pinned: true });
					for (const { id, places: all } of EXAMPLE.profile.banks) {
						const full = places.filter(({ bank }) => bank === id).length;
						expect(full).toBeLessThanOrEqual(all - (options.reservePlaces[id as "voice" | "data"] ?? 0));
					}
					expect(new Set(places.map(at)).size).toBe(places.length);
					expect(findings.filter(({ severity }) => severity !== "mind")).toEqual([]);
					made++;
				},
			),
			{ seed: 20261127, numRuns: 4, endOnFailure: true },
		);
		expect(made).toBe(4);
	});
});
