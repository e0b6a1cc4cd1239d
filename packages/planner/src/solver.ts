/** One unknown of a linear model: at least `lower`, at most `upper` (null: no limit). */
export interface MipColumn {
	readonly lower: number;
	readonly upper: number | null;
	readonly isWhole: boolean;
	/** What one unit of it adds to what is made as large as possible. */
	readonly worth: number;
}

/** A sum of unknowns times factors, held between two limits (null: none). */
export interface MipRow {
	readonly entries: readonly { readonly column: number; readonly factor: number }[];
	readonly least: number | null;
	readonly most: number | null;
}

/** A mixed-integer linear model as plain data, to be made as large as possible. */
export interface Mip {
	readonly columns: readonly MipColumn[];
	readonly rows: readonly MipRow[];
}

export interface SolverProgress {
	/** Best found so far; null before anything is. */
	readonly found: number | null;
	/** What no answer can exceed; null before anything is known. */
	readonly bound: number | null;
	readonly seconds: number;
}

/** As far as it is needed here, what JavaScript's hosts call AbortSignal. */
export interface StopSignal {
	readonly aborted: boolean;
	addEventListener(type: "abort", listener: () => void): void;
	removeEventListener(type: "abort", listener: () => void): void;
}

export interface SolverOptions {
	/** Stops after so many branches: the same answer on every machine. */
	readonly maxNodes?: number;
	/** Stops after so many seconds. */
	readonly timeLimitS?: number;
	/** Proved when bound and objective differ by no more: just under 1 where every worth is whole. Default 0. */
	readonly absoluteGap?: number;
	/** An answer to start from: columns that decide the others. */
	readonly start?: readonly { readonly column: number; readonly value: number }[];
	readonly onProgress?: (progress: SolverProgress) => void;
	/** Aborted: stops at once, and answers "none". */
	readonly signal?: StopSignal;
}

export type MipAnswer =
	| {
			readonly status: "optimal" | "feasible";
			readonly objective: number;
			/** What no answer can exceed. */
			readonly bound: number;
			/** (bound - objective) / objective. */
			readonly gap: number;
			readonly values: Float64Array;
	  }
	| { readonly status: "infeasible" }
	/** Stopped before anything was found. */
	| { readonly status: "none"; readonly bound: number | null };

/** Solves a model: handed in by an app, which decides where the work runs. The same model and limits in nodes give the same answer. */
export type Solver = (model: Mip, options: SolverOptions) => Promise<MipAnswer>;
