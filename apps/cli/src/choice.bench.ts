import { bestCover, type CoverCell, type CoverItem, type CoverProblem, greedyCover, HOUR_PARTS } from "@skipwright/planner";
import type { Bench, BenchResult } from "../../../tools/bench-types.ts";
import { seeded } from "./coverInstances.sample.ts";
import { highsSolver } from "./highsSolver.ts";

/** About what the example's voyage and the shipped directory ask: candidates, dated positions; wants and frequencies of a station as there. */
const CANDIDATES = 450;
const SAMPLES = 52;
const WANTS = 6;
const FREQUENCIES = 4;
const HOURS = 24;
const FREE = 140;
const WORTH = 1_000;
/** Half a per cent of what a want has in an hour of every sample, about what a place must bring. */
const PRICE_HOURS = 6;
const RUNS = 2;
/** Seconds in which the largest is not always proved: its gap is shown. */
const TIME_LIMIT_S = 20;

/**
 * Stations of four frequencies, each heard over a stretch of the voyage and of the day that begins and ends where chance has it, on the air
 * always or for a few minutes of some hours.
 */
function voyage(candidates: number, samples: number): CoverProblem {
	const random = seeded(42);
	const upTo = (most: number) => Math.floor(random() * (most + 1));
	const cells: Map<number, Map<number, { item: number; parts: number }[]>>[] = Array.from({ length: WANTS }, () => new Map());
	const items = Array.from({ length: candidates }, (_, item): CoverItem => {
		const station = Math.floor(item / FREQUENCIES);
		const own = cells[station % WANTS]!;
		const [firstSample, firstHour] = [upTo(samples - 1), upTo(HOURS - 1)];
		const [lastSample, hours] = [firstSample + upTo(Math.floor(samples / 2)), 2 + upTo(12)];
		const every = station % 3 === 0 ? 1 : 6;
		for (let sample = firstSample; sample <= Math.min(samples - 1, lastSample); sample++) {
			for (let hour = firstHour; hour < firstHour + hours; hour++) {
				if (hour % every !== station % every) continue;
				const cell = sample * HOURS + (hour % HOURS);
				const heard = own.get(cell) ?? new Map<number, { item: number; parts: number }[]>();
				heard.set(station, [...(heard.get(station) ?? []), { item, parts: every === 1 ? HOUR_PARTS : 4 }]);
				own.set(cell, heard);
			}
		}
		const price = PRICE_HOURS * 8 * HOUR_PARTS * WORTH;
		return { id: `item ${item}`, kind: "data", isPresent: false, isMust: false, isStanding: false, bonus: 0, price };
	});
	const all = cells.flatMap((own) => [...own.values()].map((heard): CoverCell => ({ worth: WORTH, stations: [...heard.values()] })));
	const room = [{ bank: "memory", kinds: ["data"] as const, free: FREE, inSpeechBlocks: 0, inOtherBlocks: FREE, emptyBlocks: [] }];
	return { items, cells: all, lowCells: null, room };
}

function gapText(net: number, bound: number | null): string {
	return bound === null ? "not known" : `${(((bound - net) / net) * 100).toFixed(3)} %`;
}

export const bench: Bench = {
	name: "choice",
	run: async () => {
		const results: BenchResult[] = [];
		for (const [moreCandidates, moreSamples] of [
			[1, 1],
			[5, 1],
			[1, 5],
		] as const) {
			const problem = voyage(CANDIDATES * moreCandidates, SAMPLES * moreSamples);
			const seconds: number[] = [];
			const floorSeconds: number[] = [];
			let status = "";
			for (let run = 0; run < RUNS; run++) {
				const start = performance.now();
				const answer = await bestCover(problem, highsSolver, { timeLimitS: TIME_LIMIT_S });
				const between = performance.now();
				greedyCover(problem);
				seconds.push((between - start) / 1_000);
				floorSeconds.push((performance.now() - between) / 1_000);
				status = answer.status === "feasible" ? `gap ${gapText(answer.net, answer.bound)}` : answer.status;
			}
			results.push({
				what: `${problem.items.length} candidates, ${SAMPLES * moreSamples} positions, ${problem.cells.length} cells: ${status}`,
				floor: "the greedy choice",
				count: problem.items.length,
				unit: "candidates",
				seconds,
				floorSeconds,
			});
		}
		return results;
	},
};
