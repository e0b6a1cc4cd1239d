import type { ResolvedJob } from "@skipwright/job";
import type { CandidateIndex } from "./candidateIndex.ts";

/** As the job says, and the frequencies of one net: it moves between them. */
export function togetherIds({ job, ownListings }: ResolvedJob, { byId }: CandidateIndex): readonly (readonly string[])[] {
	const nets = [...Map.groupBy(ownListings, ({ coverage }) => coverage).values()].map((ones) => ones.map(({ id }) => id));
	const asked = [...job.together, ...nets];
	const groups = asked.map((ids) => [...new Set(ids.flatMap((id) => byId(id)?.id ?? []))]).filter((ids) => ids.length > 1);
	const taken = new Set<string>();
	return groups.flatMap((ids) => {
		if (ids.some((id) => taken.has(id))) return []; // the job's own come first
		for (const id of ids) taken.add(id);
		return [ids];
	});
}
