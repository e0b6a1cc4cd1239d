import { directory } from "@skipwright/directory";
import { directoryFor, type ResolvedJob } from "@skipwright/job";
import type { Plan } from "@skipwright/planner";
import { isoDate } from "@skipwright/units";
import type { Bench, BenchResult } from "../../../tools/bench-types.ts";
import { processorSeconds } from "../../../tools/measure.ts";
import { fakeContext } from "./fakeContext.ts";
import { jobGiven, plannerFor } from "./planJob.ts";
import { hearingsFor } from "./reachHearing.ts";

const RUNS = 3;

async function timed<Result>(work: () => Result | Promise<Result>): Promise<{ readonly result: Result; readonly seconds: number }> {
	const start = processorSeconds();
	const result = await work();
	return { result, seconds: processorSeconds() - start };
}

/** The whole of a plan, the papers apart, against its reach alone: the rest is choice, layout, checks and explanation. Processor seconds, all threads. */
export const bench: Bench = {
	name: "plan",
	run: async () => {
		const context = fakeContext();
		const jobs: readonly (readonly [string, ResolvedJob])[] = ["south-atlantic", "coastal-month", "high-latitude-summer", "ocean-year"].map(
			(name) => [name, jobGiven(context, `examples/${name}.job.json`)],
		);
		const results: BenchResult[] = [];
		for (const [name, job] of jobs) {
			const seconds: number[] = [];
			const floorSeconds: number[] = [];
			let planned: Plan | null = null;
			for (let run = 0; run < RUNS; run++) {
				const reach = await timed(() => hearingsFor(job, directoryFor(job, directory())));
				floorSeconds.push(reach.seconds);
				const whole = await timed(() => plannerFor(context, directory(), isoDate("2026-11-24"))(job));
				seconds.push(whole.seconds);
				planned = whole.result;
			}
			results.push({
				what: `plan ${name}: ${planned?.status}, gap ${planned?.gap}, order of places ${planned?.layout.status}`,
				floor: "its reach alone",
				count: planned?.places.length ?? 0,
				unit: "places",
				seconds,
				floorSeconds,
			});
		}
		return results;
	},
};
