import type { DscCall, HeardItem, HeardKind } from "@skipwright/modem";

/** From memory of Radio Regulations Article 17. */
export const SECRECY =
	"Caution: what is above holds traffic that is not a broadcast to all. It is under the secrecy of correspondence (Radio Regulations Article 17): do not keep it, show it to others or use it.";

/**
 * Whether it is a broadcast to all, which everybody may keep and show; null where that is not known.
 * @param kindToAll kind that is one by the listing that was given
 */
export function isToAll(heard: HeardItem | DscCall | null, kindToAll: HeardKind | null = null): boolean | null {
	if (heard === null) return null;
	if (!("kind" in heard)) return ["all ships", "area", "distress alert"].includes(heard.format);
	if (heard.kind === kindToAll) return true;
	switch (heard.kind) {
		case "dsc":
			return isToAll(heard.call);
		case "text":
			return heard.identity !== null ? true : null; // a NAVTEX message; plain texts may be anybody's
		case "chart":
			return true;
		default:
			return null;
	}
}

/** Whether what is shown of it may be under the secrecy of correspondence; nothing is shown of what tones and voices say. */
export function isSecret(heard: HeardItem | DscCall | null, kindToAll: HeardKind | null = null): boolean {
	if (heard !== null && "kind" in heard && (heard.kind === "tone" || heard.kind === "voice")) return false;
	return isToAll(heard, kindToAll) !== true;
}
