import type { Mip, MipAnswer, SolverOptions, SolverProgress } from "@skipwright/planner";
import type { Highs, Model } from "highs";

/** A model and the limits of its solve, as plain data that a thread can be given. */
export interface HighsTask {
	readonly model: Mip;
	readonly options: Omit<SolverOptions, "onProgress" | "signal">;
}

/** Seconds between two words on how far it is. */
const PROGRESS_EVERY_S = 0.5;
/** HiGHS's kSolutionStatusFeasible. */
const IS_FEASIBLE = 2;

/** Solves at once, in this thread. @throws Error where HiGHS refuses the model or ends in a state that is no answer */
export function highsSolve(highs: Highs, { model, options }: HighsTask, onProgress: (progress: SolverProgress) => void): MipAnswer {
	if (model.columns.length === 0) return emptyAnswer(model);
	const native = highs.createModel({ ...modelData(model), sense: highs.constants.objectiveSense.maximize });
	try {
		const { absoluteGap = 0, maxNodes, timeLimitS, start } = options;
		native.options.set({ mip_rel_gap: 0, mip_abs_gap: absoluteGap, random_seed: 0, mip_min_logging_interval: PROGRESS_EVERY_S });
		if (maxNodes !== undefined) native.options.set("mip_max_nodes", maxNodes);
		if (timeLimitS !== undefined) native.options.set("time_limit", timeLimitS);
		if (start !== undefined) native.setSolution({ indices: start.map(({ column }) => column), values: start.map(({ value }) => value) });
		let seconds = 0;
		native.run({
			[highs.constants.callbackType.mipLogging]({ data }) {
				// before the first relaxation is solved, HiGHS gives the answer that it was started from as its bound
				const isKnown = (data.mip_total_lp_iterations ?? 0n) > 0n;
				const bound = isKnown ? finite(data.mip_dual_bound) : null;
				seconds = data.running_time ?? seconds;
				onProgress({ found: finite(data.mip_primal_bound), bound, seconds });
			},
		});
		const answer = answerOf(highs, native);
		if ("values" in answer) onProgress({ found: answer.objective, bound: answer.bound, seconds });
		return answer;
	} finally {
		native.dispose();
	}
}

/** HiGHS takes no model without columns. */
function emptyAnswer({ rows }: Mip): MipAnswer {
	if (rows.some(({ least, most }) => (least ?? 0) > 0 || (most ?? 0) < 0)) return { status: "infeasible" };
	return { status: "optimal", objective: 0, bound: 0, gap: 0, values: new Float64Array() };
}

/** The matrix row by row. */
function modelData({ columns, rows }: Mip) {
	const starts = [0];
	const indices: number[] = [];
	const values: number[] = [];
	for (const { entries } of rows) {
		for (const { column, factor } of entries) {
			indices.push(column);
			values.push(factor);
		}
		starts.push(indices.length);
	}
	const [numCols, numRows] = [columns.length, rows.length];
	return {
		numCols,
		numRows,
		colCost: columns.map(({ worth }) => worth),
		colLower: columns.map(({ lower }) => lower),
		colUpper: columns.map(({ upper }) => upper ?? Number.POSITIVE_INFINITY),
		rowLower: rows.map(({ least }) => least ?? Number.NEGATIVE_INFINITY),
		rowUpper: rows.map(({ most }) => most ?? Number.POSITIVE_INFINITY),
		integrality: columns.map(({ isWhole }) => (isWhole ? 1 : 0)),
		matrix: { format: "csr", numRows, numCols, starts, indices, values },
	} as const;
}

function answerOf({ constants: { modelStatus } }: Highs, solved: Model): MipAnswer {
	const status = solved.getModelStatus();
	if (status === modelStatus.infeasible) return { status: "infeasible" };
	const { optimal, timeLimit, iterationLimit, solutionLimit } = modelStatus;
	if (![optimal, timeLimit, iterationLimit, solutionLimit].some((one) => one === status)) {
		throw new Error(`Cannot solve: HiGHS ended with model status ${status}`);
	}
	const bound = finite(Number(solved.info.get("mip_dual_bound")));
	if (Number(solved.info.get("primal_solution_status")) !== IS_FEASIBLE) return { status: "none", bound };
	const objective = solved.getObjectiveValue();
	return {
		status: status === optimal ? "optimal" : "feasible",
		objective,
		bound: bound ?? Number.POSITIVE_INFINITY,
		gap: bound === objective ? 0 : ((bound ?? Number.POSITIVE_INFINITY) - objective) / Math.abs(objective),
		values: solved.getSolution().colValue,
	};
}

function finite(value: number | undefined): number | null {
	return value !== undefined && Number.isFinite(value) ? value : null;
}
