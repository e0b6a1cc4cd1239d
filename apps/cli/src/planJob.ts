import { dirname, join } from "node:path";
import type { Directory } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { type ChoiceOptions, type Plan, type PlanHearings, plan, type SolverProgress, type Stage } from "@skipwright/planner";
import { checkList } from "@skipwright/set";
import type { IsoDate } from "@skipwright/units";
import type { Context } from "./context.ts";
import { highsSolver } from "./highsSolver.ts";
import { hearingsFor } from "./reachHearing.ts";
import { readText } from "./readText.ts";

/** A job file and all the files it names, read and checked. */
export function jobGiven(context: Context, file: string): ResolvedJob {
	const job = readJob(file, readText(context, file));
	const texts = references(job).map((name) => [name, readText(context, join(dirname(file), name))] as const);
	return resolveJob(job, new Map(texts));
}

export interface PlanWishes {
	/** The user's own sunspot number on the old scale. */
	readonly sunspots?: number;
	/** Seconds that the choice may take; without them it takes as long as the proof does. */
	readonly timeLimitS?: number;
	/** Also how far it rests on the strength of signals: every signal 6 dB weaker and stronger. Default false. */
	readonly levels?: boolean;
}

/** Plans jobs on one day with one directory. What is heard is worked out once for all that differ in nothing it rests on. */
export type Planner = (resolved: ResolvedJob, wishes?: PlanWishes) => Promise<Plan>;

/** The layout for jobs on a day, by predicted reach over the voyage, and proved best where time allows. Progress goes to standard error. */
export function plannerFor(context: Context, directory: Directory, on: IsoDate): Planner {
	const known = new Map<string, PlanHearings>();
	return (resolved, { sunspots, timeLimitS, levels = false } = {}) => {
		const { job, voyage, ownListings, ownStations } = resolved;
		const wanted = Object.entries(job.wants).flatMap(([want, weight]) => (weight > 0 ? [want] : []));
		const key = JSON.stringify([voyage, job.antenna, job.noise, wanted, ownListings, ownStations, sunspots, levels]);
		const hearings = known.get(key) ?? hearingsFor(resolved, directoryFor(resolved, directory), { sunspots, levels });
		known.set(key, hearings);
		const choice: ChoiceOptions = {
			solver: highsSolver,
			...(timeLimitS === undefined ? {} : { timeLimitS }),
			onProgress: (stage, progress) => context.err(progressLine(stage, progress)),
		};
		return plan(resolved, directory, { on, checkList, ...hearings, choice });
	};
}

/** "choosing by worth: 1.30 % from proved, 2.0 s" */
function progressLine(stage: Stage, { found, bound, seconds }: SolverProgress): string {
	const isTold = found !== null && bound !== null && found !== 0;
	const distance = isTold ? Math.abs((bound - found) / found) : null;
	const words = distance === null ? "looking" : distance < 1e-9 ? "proved" : `${(distance * 100).toFixed(2)} % from proved`;
	return `choosing by ${stage}: ${words}, ${seconds.toFixed(1)} s\n`;
}
