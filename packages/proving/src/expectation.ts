import type { ScheduleKnown } from "@skipwright/directory";
import type { HeardKind } from "@skipwright/modem";
import type { Mode, ServiceId } from "@skipwright/rules";
import type { Hz } from "@skipwright/units";
import type { Tolerance } from "./tolerance.ts";

/** Two tones by turns. */
export interface Keying {
	/** Hz, any of them: sources may differ. */
	readonly shiftsHz: readonly number[];
	readonly bauds: readonly number[];
	/** "any" where broadcasts differ in which tone rests. */
	readonly sense: "high is B" | "any";
}

/** What a place should sound like when one of its listings is on the air: plain data for receivers and verdicts. */
export interface Expectation {
	readonly listing: string;
	readonly station: string;
	readonly service: ServiceId;
	/** For a person: "Cape Town, NAVTEX text, 518 kHz". */
	readonly what: string;
	readonly kind: HeardKind;
	/** As published. */
	readonly hz: Hz;
	/** What the dial must read: exact, rounded to the set's steps; the mode is the place's own where it can receive the emission. */
	readonly dialHz: Hz;
	readonly mode: Mode;
	/** +1 where audio rises with radio frequency, -1 on the lower sideband. */
	readonly sidebandSign: 1 | -1;
	/** Hz. Middle of the two tones, of black and white, with what rounding the dial leaves; null for speech, and for tones (see `tonesHz`). */
	readonly audioHz: number | null;
	/** Hz. Steady tones to be heard, any of them; empty but for kind "tone". */
	readonly tonesHz: readonly number[];
	/** False in AM, where a tone comes out right however the dial stands, and where nothing is nominal. */
	readonly tellsTuning: boolean;
	readonly tolerance: Tolerance;
	readonly keying: Keying | null;
	/** Who it should be, as far as its signal tells. */
	readonly identity: { readonly navtexLetter: string | null; readonly mmsi: string | null };
	/** Sent to all who care to listen: evidence of it may be kept. */
	readonly isToAll: boolean;
	/** Keeps watch and sends only when called: nothing to be heard at a stated time. */
	readonly isWatch: boolean;
	readonly times: { readonly known: ScheduleKnown; readonly published: string };
	/** How it sounds to an ear. */
	readonly sounds: string;
}
