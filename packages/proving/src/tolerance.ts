import type { HeardKind } from "@skipwright/modem";

/** How far from nominal the audio may lie, and who says so. */
export interface Tolerance {
	readonly hz: number;
	readonly source: string;
}

const SET: Tolerance = { hz: 10, source: "IMO resolution A.806(19): the set within 10 Hz after warm-up" };
const KEYED: Tolerance = { hz: 10, source: `${SET.source}; 47 CFR 80.209 asks the same of a ship's DSC and NBDP` };

/** By kind. Practice of commissioning (set warm for 30 min); what rests on no published figure says so. */
export const TOLERANCES: Readonly<Record<HeardKind, Tolerance>> = {
	dsc: KEYED,
	text: KEYED,
	teletype: SET,
	chart: { hz: 20, source: `${SET.source}; as much again for the sender, whose own tolerance is not published (own choice)` },
	tone: SET,
	voice: { hz: 20, source: "47 CFR 80.209: 20 Hz for speech" },
};
