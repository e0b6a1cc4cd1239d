import type { DscCall, HeardItem } from "@skipwright/modem";

/** From memory of Radio Regulations Article 17. */
export const SECRECY =
	"Caution: what is above holds traffic that is not a broadcast to all. It is under the secrecy of correspondence (Radio Regulations Article 17): do not keep it, show it to others or use it.";

/** Whether everybody may keep and show it: a broadcast to all, and what is no traffic at all. Where that is not known, it is not. */
export function isToAll(heard: HeardItem | DscCall | null): boolean {
	if (heard === null) return false;
	if (!("kind" in heard)) return ["all ships", "area", "distress alert"].includes(heard.format);
	switch (heard.kind) {
		case "dsc":
			return isToAll(heard.call);
		case "text":
			return heard.identity !== null; // a NAVTEX message; plain texts may be anybody's
		case "teletype":
			return false;
		default:
			return true;
	}
}
