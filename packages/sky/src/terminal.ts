import type { Position } from "@skipwright/units";
import type { Antenna } from "./antenna.ts";
import type { ManMadeClass } from "./noiseManMade.ts";

/** One end of a circuit: it may send, receive or both. */
export interface Terminal {
	readonly position: Position;
	readonly antenna: Antenna;
	/** W, rated: peak envelope power of a single-sideband sender, the carrier of a double-sideband one. */
	readonly powerW: number;
	/** Class of man-made noise around it. */
	readonly manMade: ManMadeClass;
}

/** What is sent, and how well it is to be copied. */
export interface Signal {
	/** 0.5 to 30 or so. */
	readonly fMHz: number;
	/** Class of emission: J3E, F1B, F3C ... */
	readonly emission: string;
	readonly grade: "just-usable" | "marginal" | "good" | "safety";
	/** Of F1B: 100 with each character sent twice (default), or 50 for teletype. */
	readonly baud?: 50 | 100;
}
