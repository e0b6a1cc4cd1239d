import { type BlockMip, blockMip, blockMipWith, keptOf, startAt } from "./blockMip.ts";
import { alikeInOrder, type BlockProblem, ITEM_TIERS, pointsOf } from "./blockProblem.ts";
import { pointsAtLeast } from "./fewestBlocks.ts";
import type { MipAnswer, MipRow, Solver, SolverOptions } from "./solver.ts";
import { stepwiseBlocks } from "./stepwiseBlocks.ts";

export interface BlockOptions {
	/** Branches of one solve; default `BLOCK_NODES`. */
	readonly maxNodes?: number;
	/** Seconds in all. */
	readonly timeLimitS?: number;
	readonly signal?: NonNullable<SolverOptions["signal"]>;
}

export type BestBlocks =
	| {
			/** `optimal`: nothing that could be held is left out, and no order of the blocks has fewer points; `feasible`: the best found. */
			readonly status: "optimal" | "feasible";
			/** Block of each item; null where it finds none. */
			readonly blockOf: readonly (number | null)[];
			/** `pointsOf` the answer. */
			readonly points: number;
			/** How many of the points may be too many; null where a limit came before it was known what can be held at all. */
			readonly excess: number | null;
	  }
	/** Nothing was found: stopped too early, or no solver and too little room. */
	| { readonly status: "none" };

/** Branches after which an order that is not proved is taken with its gap: it is worth no long wait. Own choice. */
export const BLOCK_NODES = 500;
/** Points are whole, so that a bound less than 1 from an answer proves it; the rest is for rounding inside the solver. */
const PROVED_WITHIN = 0.9;

/**
 * The blocks that items go to. First nothing is left out that finds a place at all: of what must be held as much as can be, then of what
 * stands, of what has lost its place, and of what is new, each by worth. Then the fewest points. Without a solver, or where it finds nothing,
 * a good way that leaves nothing out, if one is found.
 */
export async function bestBlocks(problem: BlockProblem, solver: Solver | undefined, options: BlockOptions = {}): Promise<BestBlocks> {
	const { maxNodes = BLOCK_NODES, timeLimitS, signal } = options;
	const stepwise = stepwiseBlocks(problem);
	const points = stepwise === null ? 0 : pointsOf(problem, stepwise);
	const excess = points - pointsAtLeast(problem);
	const quick: BestBlocks =
		stepwise === null ? { status: "none" } : { status: excess === 0 ? "optimal" : "feasible", blockOf: stepwise, points, excess };
	if (solver === undefined || quick.status === "optimal") return quick;

	const run = (model: BlockMip, worth: MipRow["entries"], rows: readonly MipRow[], start: SolverOptions["start"] = []) =>
		solver(blockMipWith(model, worth, rows), {
			...(start.length === 0 ? {} : { start }),
			absoluteGap: PROVED_WITHIN,
			maxNodes,
			...(timeLimitS === undefined ? {} : { timeLimitS: timeLimitS / (ITEM_TIERS.length + 2) }),
			...(signal === undefined ? {} : { signal }),
		});
	const whole = blockMip(problem, true);
	const all = await run(whole, whole.order, [], stepwise === null ? [] : startAt(whole, problem, inModelOrder(problem, stepwise)));
	if (all.status === "none") return quick;
	if (all.status !== "infeasible") return answered(problem, whole, all, true);

	const part = blockMip(problem, false);
	const rows: MipRow[] = [];
	let isProved = true;
	let last: MipAnswer = all;
	for (const tier of ITEM_TIERS.toReversed()) {
		const kept = keptOf(part, tier);
		if (kept.length === 0) continue;
		const answer = await run(part, kept, rows);
		if (!("values" in answer)) break;
		last = answer;
		isProved &&= answer.status === "optimal";
		const worth = kept.reduce((sum, { column, factor }) => sum + factor * Math.round(answer.values[column]!), 0);
		rows.push({ entries: kept, least: worth - 0.5, most: null });
	}
	const ordered = await run(part, part.order, rows);
	return answered(problem, part, "values" in ordered ? ordered : last, isProved && "values" in ordered);
}

/** Empty blocks as the model wants them: speech first, and of each side those that hold something known. */
function inModelOrder(problem: BlockProblem, blockOf: readonly number[]): readonly number[] {
	const has = (block: number, take: (item: BlockProblem["items"][number]) => boolean) =>
		problem.items.some((item, index) => blockOf[index] === block && take(item));
	return alikeInOrder(problem, blockOf, (block) => {
		const isOpen = has(block, ({ want }) => want !== null);
		return (has(block, ({ kind }) => kind === "speech") ? 0 : 2) + (isOpen ? 0 : 1);
	});
}

function answered(problem: BlockProblem, model: BlockMip, answer: MipAnswer, isProved: boolean): BestBlocks {
	if (!("values" in answer)) return { status: "none" };
	const blockOf = spread(problem, model, answer.values);
	const points = pointsOf(problem, blockOf);
	const excess = isProved ? Math.max(0, points - Math.ceil(-answer.bound - (1 - PROVED_WITHIN))) : null;
	return { status: answer.status === "optimal" && excess === 0 ? "optimal" : "feasible", blockOf, points, excess };
}

/** Items of a group to its blocks in order. */
function spread({ items }: BlockProblem, { groups, columnOf }: BlockMip, values: Float64Array): readonly (number | null)[] {
	const blockOf: (number | null)[] = items.map(() => null);
	for (const [group, { items: own }] of groups.entries()) {
		let next = 0;
		for (const [block, column] of columnOf[group]!.entries()) {
			for (let left = column === null ? 0 : Math.round(values[column]!); left > 0; left--) blockOf[own[next++]!] = block;
		}
	}
	return blockOf;
}
