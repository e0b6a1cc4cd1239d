import type { Mip, SolverProgress } from "@skipwright/planner";
import { describe, expect, it } from "vitest";
import { seeded } from "./coverInstances.sample.ts";
import { highsSolver } from "./highsSolver.ts";

/** Things of seeded worth and so many seeded weights each: hard to prove when there are many. */
function knapsacks(things: number, limits: number): Mip {
	const random = seeded(7);
	const upTo = (most: number) => 1 + Math.floor(random() * most);
	return {
		columns: Array.from({ length: things }, () => ({ lower: 0, upper: 1, isWhole: true, worth: upTo(100) })),
		rows: Array.from({ length: limits }, () => ({
			entries: Array.from({ length: things }, (_, column) => ({ column, factor: upTo(60) })),
			least: null,
			most: things * 7,
		})),
	};
}

describe("highsSolver", () => {
	it("proves a small model, and says that its answer is the best", async () => {
		// 3 a + 4 b, a + b at most 1.5, both whole: b alone
		const column = { lower: 0, upper: 1, isWhole: true };
		const model: Mip = {
			columns: [
				{ ...column, worth: 3 },
				{ ...column, worth: 4 },
			],
			rows: [{ entries: [0, 1].map((at) => ({ column: at, factor: 1 })), least: null, most: 1.5 }],
		};
		const answer = await highsSolver(model, {});
		expect(answer).toMatchObject({ status: "optimal", objective: 4, bound: 4, gap: 0 });
		expect("values" in answer && [...answer.values]).toEqual([0, 1]);
	});

	it("says infeasible, of nothing too", async () => {
		const entries = [{ column: 0, factor: 1 }];
		const columns = [{ lower: 0, upper: 1, isWhole: true, worth: 1 }];
		expect(await highsSolver({ columns, rows: [{ entries, least: 2, most: null }] }, {})).toEqual({ status: "infeasible" });
		expect(await highsSolver({ columns: [], rows: [{ entries: [], least: 1, most: null }] }, {})).toEqual({ status: "infeasible" });
		expect(await highsSolver({ columns: [], rows: [] }, {})).toMatchObject({ status: "optimal", objective: 0 });
	});

	it("stops at a limit with the best found and its bound, the same every time, and shows how far it is", async () => {
		const model = knapsacks(60, 10);
		const told: SolverProgress[] = [];
		const answer = await highsSolver(model, { maxNodes: 5, onProgress: (progress) => told.push(progress) });
		if (answer.status !== "feasible") throw new Error(answer.status);
		expect(answer.bound).toBeGreaterThan(answer.objective);
		expect(answer.gap).toBeCloseTo((answer.bound - answer.objective) / answer.objective, 12);
		expect(await highsSolver(model, { maxNodes: 5 })).toEqual(answer);
		const known = told.filter(({ found, bound }) => found !== null && bound !== null);
		expect(known.length).toBeGreaterThan(0);
		for (const { found, bound } of known) {
			expect(bound).toBeGreaterThanOrEqual(answer.objective);
			expect(found).toBeLessThanOrEqual(answer.objective);
		}
	});

	it("takes an answer to start from, and never ends below it", async () => {
		const start = [{ column: 0, value: 1 }, ...Array.from({ length: 59 }, (_, i) => ({ column: i + 1, value: 0 }))];
		const model = knapsacks(60, 10);
		const answer = await highsSolver(model, { maxNodes: 0, start });
		expect("objective" in answer && answer.objective).toBeGreaterThanOrEqual(model.columns[0]!.worth);
	});

	it("is cancelled in mid-solve, and before it begins", async () => {
		const stop = new AbortController();
		const answer = await highsSolver(knapsacks(400, 60), { signal: stop.signal, onProgress: () => stop.abort() });
		expect(stop.signal.aborted).toBe(true);
		expect(answer.status).toBe("none");
		expect(await highsSolver(knapsacks(5, 1), { signal: AbortSignal.abort() })).toEqual({ status: "none", bound: null });
	});

	it("throws what HiGHS refuses", async () => {
		const columns = [{ lower: 0, upper: 1, isWhole: true, worth: Number.NaN }];
		await expect(highsSolver({ columns, rows: [] }, {})).rejects.toThrow();
	});
});
