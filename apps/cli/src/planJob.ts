import { dirname, join } from "node:path";
import type { Directory } from "@skipwright/directory";
import { directoryFor, type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { type Plan, plan } from "@skipwright/planner";
import { checkList } from "@skipwright/set";
import type { IsoDate } from "@skipwright/units";
import type { Context } from "./context.ts";
import { reachHearing } from "./reachHearing.ts";
import { readText } from "./readText.ts";

/** A job file and all the files it names, read and checked. */
export function jobGiven(context: Context, file: string): ResolvedJob {
	const job = readJob(file, readText(context, file));
	const texts = references(job).map((name) => [name, readText(context, join(dirname(file), name))] as const);
	return resolveJob(job, new Map(texts));
}

/** The layout for a job on a day, by predicted reach over the voyage. @param sunspots the user's own number on the old scale */
export function planJob(resolved: ResolvedJob, directory: Directory, on: IsoDate, sunspots?: number): Plan {
	return plan(resolved, directory, { on, checkList, hearing: reachHearing(resolved, directoryFor(resolved, directory), sunspots) });
}
