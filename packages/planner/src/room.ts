import type { Profile } from "@skipwright/set";
import type { Candidate, ScanKind } from "./candidate.ts";

/** Free places by bank id. */
export interface Room {
	readonly profile: Profile;
	readonly free: ReadonlyMap<string, number>;
}

/** Banks that may hold this kind, those made for it first. */
export function banksFor(profile: Profile, scan: ScanKind): readonly Profile["banks"][number][] {
	const purpose = scan === "data" ? "data" : "speech";
	return [...profile.banks.filter(({ holds }) => holds === purpose), ...profile.banks.filter(({ holds }) => holds === "any")];
}

/** Counts places down. `take` says whether there was one. */
export function roomFor({ profile, free }: Room): { readonly take: (candidate: Candidate) => boolean } {
	const left = new Map(free);
	return {
		take({ scan }) {
			const bank = banksFor(profile, scan).find(({ id }) => (left.get(id) ?? 0) > 0);
			if (bank === undefined) return false;
			left.set(bank.id, (left.get(bank.id) ?? 0) - 1);
			return true;
		},
	};
}
