import type { Heard } from "@skipwright/modem";
import type { Expectation } from "./expectation.ts";
import { KIND_WORDS } from "./kindWords.ts";
import { ownTest } from "./ownTest.ts";

export interface Keeping {
	readonly may: boolean;
	readonly why: string;
}

/** Source: Radio Regulations, Article 17 (from memory): others' correspondence is neither recorded for use, nor its existence disclosed. */
const SECRECY = "secrecy of correspondence, Radio Regulations Article 17 (from memory)";

/** Whether what was heard may be kept as evidence: only broadcasts to all, and the ship's own tests. */
export function mayKeep(expectation: Expectation, item: Heard, ownMmsi: string | null): Keeping {
	if (item.kind === "dsc") {
		if (ownTest(item, ownMmsi) !== null) return { may: true, why: "It is the ship's own test call." };
		const unknown = ownMmsi === null ? " The job names no MMSI, so that no call is known as the ship's own." : "";
		return {
			may: false,
			why: `A selective call that is not the ship's own test is other people's traffic: it is not kept (${SECRECY}).${unknown}`,
		};
	}
	if (!expectation.isToAll) {
		return {
			may: false,
			why: `What is sent on ${expectation.what} is traffic between stations and no broadcast: it is not kept (${SECRECY}).`,
		};
	}
	if (item.kind !== expectation.kind) {
		return {
			may: false,
			why: `${KIND_WORDS[item.kind]} is not what this station broadcasts, and may be other people's traffic: it is not kept (${SECRECY}).`,
		};
	}
	if (item.kind === "text" && item.identity === null) {
		return {
			may: false,
			why: `The text has no head of a broadcast (ZCZC and what follows), and may be other people's traffic: it is not kept (${SECRECY}).`,
		};
	}
	return { may: true, why: "It is a broadcast to all." };
}
