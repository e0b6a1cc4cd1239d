import type { ResolvedJob } from "@skipwright/job";
import { dscWatchProblems, fullDscWatch } from "@skipwright/set";
import { hz } from "@skipwright/units";
import type { PlannedWatch } from "./planDocument.ts";

/** As the job wants it, else the most that the rule lets the set hold. */
export function watchTable({ job, profile }: ResolvedJob): Omit<PlannedWatch, "off"> {
	const size = profile.dscWatch?.size ?? 0;
	if (size === 0) return { tableHz: null, problems: [] };
	const wanted = job.settings.wanted?.dscWatchHz;
	if (wanted !== undefined) return { tableHz: wanted.map(hz), problems: dscWatchProblems(wanted, size) };
	return { tableHz: fullDscWatch(size), problems: [] };
}
