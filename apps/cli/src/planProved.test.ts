import { readFileSync } from "node:fs";
import { join } from "node:path";
import { directory } from "@skipwright/directory";
import { type Job, type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { type ChoiceOptions, handbookHearing, type Plan, plan, readPlan, type Solver } from "@skipwright/planner";
import { checkList } from "@skipwright/set";
import { isoDate } from "@skipwright/units";
import { describe, expect, it } from "vitest";
import { highsSolve } from "./highsSolve.ts";
import { loadHighs } from "./loadHighs.ts";

const EXAMPLES = join(import.meta.dirname, "..", "..", "..", "examples");
const read = (name: string) => readFileSync(join(EXAMPLES, name), "utf8");
const JOB = readJob("job", read("south-atlantic.job.json"));
const EXAMPLE = resolveJob(JOB, new Map(references(JOB).map((name) => [name, read(name)])));
const BLANK: ResolvedJob = { ...EXAMPLE, job: { ...JOB, pins: [] }, asFound: [] };

const highs = await loadHighs();
const solver: Solver = (model, options) => Promise.resolve(highsSolve(highs, { model, options }, () => undefined));

function planned(resolved: ResolvedJob, choice: ChoiceOptions): Promise<Plan> {
	return plan(resolved, directory(), { on: isoDate("2026-11-24"), checkList, hearing: handbookHearing(), choice });
}

function withOptions(resolved: ResolvedJob, options: Partial<Job["options"]>): ResolvedJob {
	return { ...resolved, job: { ...resolved.job, options: { ...resolved.job.options, ...options } } };
}

describe("a plan proved best", () => {
	it.each([
		["the example", EXAMPLE],
		["a blank set", BLANK],
		["a set with little room", withOptions(BLANK, { reservePlaces: { voice: 140, data: 85 } })],
		["a set that is cleared", withOptions(EXAMPLE, { clearUnplanned: true })],
	] as const)("%s: optimal, gap 0, without a stop or a fix, and the file reads back", async (_, resolved) => {
		const exact = await planned(resolved, { solver });
		expect([exact.status, exact.gap]).toEqual(["optimal", 0]);
		expect(exact.findings.filter(({ severity }) => severity !== "mind")).toEqual([]);
		expect(readPlan("plan.json", JSON.stringify(exact))).toEqual(exact);
		expect(await planned(resolved, { solver })).toEqual(exact);
		for (const { id, places } of resolved.profile.banks) {
			const full = exact.places.filter(({ bank }) => bank === id).length;
			expect(full).toBeLessThanOrEqual(places - (resolved.job.options.reservePlaces[id] ?? 0));
		}
	});

	it("says no more than it knows without a solver, when stopped before it begins, and at a limit", async () => {
		const quick = await planned(BLANK, {});
		expect([quick.status, quick.gap]).toEqual(["feasible", null]);
		const stopped = await planned(BLANK, { solver: () => Promise.resolve({ status: "none", bound: null }) });
		expect(stopped).toEqual(quick);
		const half: Solver = async (model, options) => {
			const answer = await solver(model, options);
			return "bound" in answer && "values" in answer ? { ...answer, status: "feasible", bound: answer.bound * 1.01 } : answer;
		};
		const limited = await planned(BLANK, { solver: half });
		expect(limited.status).toBe("feasible");
		expect(limited.gap).toBeGreaterThan(0.005);
		expect(limited.gap).toBeLessThan(0.015);
	});

	it("names the reserve, or the pins, that leave no place for what must be held", async () => {
		const { status, gap, conflicts } = await planned(withOptions(BLANK, { reservePlaces: { voice: 177 } }), { solver });
		expect([status, gap]).toEqual(["infeasible", null]);
		expect(conflicts).toContain("reserve of 177 in voice: 3 of it needed for what must be held");

		const content = { tag: "X", receiveHz: 4_149_000, transmitHz: 4_149_000, mode: "USB" } as const;
		const pins = Array.from({ length: 178 }, (_, i) => ({ bank: "voice", place: i + 1, content }));
		const full = await planned({ ...BLANK, job: { ...BLANK.job, pins, options: { ...JOB.options, reservePlaces: {} } } }, { solver });
		expect(full.status).toBe("infeasible");
		expect(full.conflicts).toContainEqual(
			expect.stringMatching(/^pins in voice: 4 of them would have to go .*voice 1, voice 2, .* and 172 more/),
		);
	});
});
