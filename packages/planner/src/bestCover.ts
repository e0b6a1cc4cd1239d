import { fitsRoom } from "./bankRoom.ts";
import { type CoverMip, coverMip, withWorth } from "./coverMip.ts";
import { type CoverProblem, takesRoom } from "./coverProblem.ts";
import { scoreOf } from "./coverScore.ts";
import { countKinds, greedyCover } from "./greedyCover.ts";
import type { MipAnswer, MipRow, Solver, SolverOptions, SolverProgress, StopSignal } from "./solver.ts";

/** What is made as large as possible, one after the other, each held while the next is looked at. */
export type Stage = "worth" | "worth at low sunspots" | "least disturbance";

export interface BestOptions {
	/** Branches of the first stage; the others never take more than `TIE_NODES`. */
	readonly maxNodes?: number;
	/** Seconds in all. */
	readonly timeLimitS?: number;
	readonly signal?: StopSignal;
	readonly onProgress?: (stage: Stage, progress: SolverProgress) => void;
}

export type BestCover =
	| {
			/** `optimal`: no choice has a higher net worth; `feasible`: the best found before a limit. */
			readonly status: "optimal" | "feasible";
			/** Numbers of the items chosen beside what is present or must be held, rising. */
			readonly chosen: readonly number[];
			/** Worth less prices. */
			readonly net: number;
			/** What no choice can exceed; null where the solver had not told. */
			readonly bound: number | null;
	  }
	/** What must be held does not fit the room. */
	| { readonly status: "infeasible" };

/** Shares of the time limit: ties are settled in what the first stage leaves. Own choice. */
const TIME_SHARES: Readonly<Record<Stage, number>> = { worth: 0.8, "worth at low sunspots": 0.1, "least disturbance": 0.1 };
/** Branches spent on each way of telling equals apart: it is worth no long wait. Own choice. */
const TIE_NODES = 1_000;
/** Worths are whole, so that a bound less than 1 above an answer proves it; the rest is for rounding inside the solver. */
const PROVED_WITHIN = 0.9;

/**
 * The best choice by net worth; between equals the best at low sunspots, then the one that keeps most of what stands and keys least, then
 * the fewest places, then the earlier of items that do the same.
 */
export async function bestCover(problem: CoverProblem, solver: Solver, options: BestOptions): Promise<BestCover> {
	const model = coverMip(problem);
	const anyway = scoreOf(problem, []).net;
	const musts = problem.items.filter((item) => item.isMust && takesRoom(item));
	if (!fitsRoom(problem.room, countKinds(musts))) return { status: "infeasible" };
	const greedy = greedyCover(problem);
	const run = (stage: Stage, worth: Parameters<typeof withWorth>[1], rows: readonly MipRow[], start: readonly number[]) =>
		solver(withWorth(model, worth, rows), {
			absoluteGap: PROVED_WITHIN,
			start: startAt(model, start),
			...nodeLimit(stage, options.maxNodes),
			...(options.timeLimitS === undefined ? {} : { timeLimitS: options.timeLimitS * TIME_SHARES[stage] }),
			...(options.signal === undefined ? {} : { signal: options.signal }),
			onProgress: (progress) =>
				options.onProgress?.(stage, {
					...progress,
					found: progress.found === null ? null : progress.found + (stage === "worth" ? anyway : 0),
					bound: progress.bound === null ? null : progress.bound + (stage === "worth" ? anyway : 0),
				}),
		});

	const [byWorth, byLowWorth = null] = model.worths;
	const first = await run("worth", byWorth ?? [], [], greedy);
	if (first.status === "infeasible") return { status: "infeasible" };
	let chosen = betterOf(problem, chosenIn(first, model), greedy);
	const net = scoreOf(problem, chosen).net;
	const bound = first.status === "none" ? first.bound : Math.floor(first.bound + (1 - PROVED_WITHIN));
	const isProved = first.status === "optimal" && bound !== null && bound + anyway <= net;
	if (!isProved) return { status: "feasible", chosen: earliestTwins(problem, chosen), net, bound: bound === null ? null : bound + anyway };

	const held: MipRow[] = [atLeast(byWorth ?? [], net - anyway)];
	if (byLowWorth !== null && problem.lowCells !== null) {
		const lowNet = (items: readonly number[]) => scoreOf(problem, items, problem.lowCells ?? []).net;
		const found = chosenIn(await run("worth at low sunspots", byLowWorth, held, chosen), model);
		if (found !== null && scoreOf(problem, found).net === net && lowNet(found) > lowNet(chosen)) chosen = found;
		held.push(atLeast(byLowWorth, lowNet(chosen) - lowNet([])));
	}
	const changes = changesOf(problem);
	const fewest = problem.items.flatMap((_, item) => {
		const column = model.columnOf[item] ?? null;
		return column === null ? [] : [{ column, factor: -changes[item]! }];
	});
	const total = (items: readonly number[]) => items.reduce((sum, item) => sum + changes[item]!, 0);
	const found = chosenIn(await run("least disturbance", fewest, held, chosen), model);
	if (found !== null && scoreOf(problem, found).net === net && total(found) < total(chosen)) chosen = found;
	return { status: "optimal", chosen: earliestTwins(problem, chosen), net, bound: net };
}

function nodeLimit(stage: Stage, maxNodes: number | undefined): Pick<SolverOptions, "maxNodes"> {
	if (stage !== "worth") return { maxNodes: Math.min(TIE_NODES, maxNodes ?? TIE_NODES) };
	return maxNodes === undefined ? {} : { maxNodes };
}

function startAt({ columnOf }: CoverMip, chosen: readonly number[]): NonNullable<SolverOptions["start"]> {
	return columnOf.flatMap((column, item) => (column === null ? [] : [{ column, value: chosen.includes(item) ? 1 : 0 }]));
}

function chosenIn(answer: MipAnswer, { columnOf }: CoverMip): readonly number[] | null {
	if (!("values" in answer)) return null;
	return columnOf.flatMap((column, item) => (column !== null && answer.values[column]! > 0.5 ? [item] : []));
}

function betterOf(problem: CoverProblem, found: readonly number[] | null, greedy: readonly number[]): readonly number[] {
	if (found === null) return greedy.toSorted((a, b) => a - b);
	return scoreOf(problem, found).net >= scoreOf(problem, greedy).net ? found : greedy.toSorted((a, b) => a - b);
}

/** Half a unit of worth is given away, so that rounding inside the solver shuts no equal choice out. */
function atLeast(entries: MipRow["entries"], worth: number): MipRow {
	return { entries, least: worth - 0.5, most: null };
}

/** What choosing an item costs in the last stage: a place each, and far more for a place to be keyed; what stands and goes is a change too. */
function changesOf({ items }: CoverProblem): readonly number[] {
	const change = items.length + 1;
	return items.map((item) => (takesRoom(item) && item.isPreferred !== true ? change + 1 : 1 - change));
}

/** Of items that hear the same, do the same and cost the same, the earliest. */
function earliestTwins({ items, cells, lowCells, together = [] }: CoverProblem, chosen: readonly number[]): readonly number[] {
	const marks = items.map(({ kind, isStanding, bonus, price }) => [`${kind} ${isStanding} ${bonus} ${price}`]);
	for (const [set, all] of [cells, lowCells ?? []].entries()) {
		for (const [cell, { stations }] of all.entries()) {
			for (const [station, members] of stations.entries())
				for (const { item, parts } of members) marks[item]?.push(`${set} ${cell} ${station} ${parts}`);
		}
	}
	const tied = new Set(together.flat());
	const isOpen = items.map(({ isPresent, isMust }, item) => !isPresent && !isMust && !tied.has(item));
	const twins = Map.groupBy(
		items.flatMap((_, item) => (isOpen[item] ? [item] : [])),
		(item) => marks[item]!.join("; "),
	);
	const wanted = new Set(chosen);
	const earliest = [...twins.values()].flatMap((group) => group.slice(0, group.filter((item) => wanted.has(item)).length));
	return [...earliest, ...chosen.filter((item) => tied.has(item))].toSorted((a, b) => a - b);
}
