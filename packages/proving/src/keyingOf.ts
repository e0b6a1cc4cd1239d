import type { Listing } from "@skipwright/directory";
import type { HeardKind } from "@skipwright/modem";
import { KEYED_SHIFT_HZ, TELETYPE_SHIFT_HZ } from "@skipwright/rules";
import type { Keying } from "./expectation.ts";

/** Bauds of start-stop teletype that are met on the air (practice, from memory). */
const TELETYPE_BAUDS = [45.45, 50, 75];
/** Calls and texts: ITU-R M.493, M.625 (from memory). */
const KEYED_BAUD = 100;

/** How a listing is keyed, as far as its remarks say; sources that differ are all given. Null for what is not keyed. */
export function keyingOf({ notes }: Pick<Listing, "notes">, kind: HeardKind): Keying | null {
	if (kind === "dsc" || kind === "text") return { shiftsHz: [KEYED_SHIFT_HZ], bauds: [KEYED_BAUD], sense: "high is B" };
	if (kind !== "teletype") return null;
	const bauds = [...notes.matchAll(/\b(\d+(?:\.\d+)?) baud\b/g)].map(([, baud]) => Number(baud));
	const shiftsHz = [...notes.matchAll(/\bshift (\d+) Hz\b|\b(\d+) Hz shift\b|\bsays (\d+)\b/g)].map(([, a, b, c]) => Number(a ?? b ?? c));
	return {
		shiftsHz: shiftsHz.length === 0 ? [TELETYPE_SHIFT_HZ] : shiftsHz,
		bauds: bauds.length === 0 ? TELETYPE_BAUDS : bauds,
		sense: "any",
	};
}
