import type { Profile } from "@skipwright/set";
import type { ScanKind } from "./candidate.ts";

/** Banks that may hold this kind, those made for it first. */
export function banksFor(profile: Profile, scan: ScanKind): readonly Profile["banks"][number][] {
	const purpose = scan === "data" ? "data" : "speech";
	return [...profile.banks.filter(({ holds }) => holds === purpose), ...profile.banks.filter(({ holds }) => holds === "any")];
}
