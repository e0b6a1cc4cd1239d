import type { Profile } from "@skipwright/set";
import { banksFor } from "./banksFor.ts";
import type { Candidate } from "./candidate.ts";
import { type Content, contentKey, hearingKey } from "./contentKey.ts";

/** Looks candidates up by what a place holds. */
export interface CandidateIndex {
	/** Candidates that a place with this content in this bank is, the likeliest first; one dial can be voice weather here and a chart there. */
	readonly held: (bank: string, content: Content) => readonly Candidate[];
	/** Candidates that such a place hears, whatever it sends. */
	readonly heard: (content: Content) => readonly Candidate[];
	/** By the id of the candidate, of one of its listings, or of a channel or guard that it stands for. */
	readonly byId: (id: string) => Candidate | null;
}

export function indexCandidates(profile: Profile, candidates: readonly Candidate[]): CandidateIndex {
	const byContent = new Map<string, Candidate[]>();
	const byHearing = new Map<string, Candidate[]>();
	const ids = new Map<string, Candidate>();
	for (const candidate of candidates) {
		for (const content of [candidate.content, ...candidate.alternatives]) {
			push(byContent, contentKey(content), candidate);
			push(byHearing, hearingKey(content), candidate);
		}
		for (const id of [candidate.id, ...candidate.aliases, ...candidate.sources.map(({ listing }) => listing.id)]) {
			if (!ids.has(id)) ids.set(id, candidate);
		}
	}
	return {
		held: (bank, content) => {
			const all = byContent.get(contentKey(content)) ?? [];
			const fitting = all.filter(({ scan }) => banksFor(profile, scan).some(({ id }) => id === bank));
			return fitting.length > 0 ? fitting : all;
		},
		heard: (content) => byHearing.get(hearingKey(content)) ?? [],
		byId: (id) => ids.get(id) ?? null,
	};
}

function push(map: Map<string, Candidate[]>, key: string, candidate: Candidate): void {
	map.set(key, [...(map.get(key) ?? []), candidate]);
}
