import { dirname, join } from "node:path";
import type { Directory } from "@skipwright/directory";
import { type ResolvedJob, readJob, references, resolveJob } from "@skipwright/job";
import { handbookHearing, type Plan, plan } from "@skipwright/planner";
import { checkList } from "@skipwright/set";
import type { IsoDate } from "@skipwright/units";
import type { Context } from "./context.ts";
import { readText } from "./readText.ts";

/** A job file and all the files it names, read and checked. */
export function jobGiven(context: Context, file: string): ResolvedJob {
	const job = readJob(file, readText(context, file));
	const texts = references(job).map((name) => [name, readText(context, join(dirname(file), name))] as const);
	return resolveJob(job, new Map(texts));
}

/** The layout for a job on a day. */
export function planJob(resolved: ResolvedJob, directory: Directory, on: IsoDate): Plan {
	return plan(resolved, directory, { on, checkList, hearing: handbookHearing() });
}
