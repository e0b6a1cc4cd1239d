import type { Hz } from "@skipwright/units";
import type { ChannelSide } from "./channels.ts";
import type { DscCalling } from "./dscCalling.ts";
import type { MsiFrequency } from "./msi.ts";
import type { Allocation, Guard } from "./types.ts";

/** What a frequency is, by the tables of this package alone. */
export interface Identification {
	readonly hz: Hz;
	/** Read as a voice carrier. */
	readonly channels: readonly ChannelSide[];
	/** Read as the assigned frequency of a voice channel (carrier + 1.4 kHz). */
	readonly assignedOf: readonly ChannelSide[];
	readonly guards: readonly Guard[];
	readonly dscCalling: readonly { readonly calling: DscCalling; readonly side: "ship" | "coast" | "both" }[];
	readonly msi: readonly MsiFrequency[];
	/** Bands that hold the frequency itself; each names its Regions. */
	readonly allocations: readonly Allocation[];
	readonly sentence: string;
}

export function identify(_hz: Hz): Identification {
	throw new Error("not built yet");
}
