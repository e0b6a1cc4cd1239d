import type { Hz } from "@skipwright/units";

/** What a station offers on a frequency. Ids of the directory; the words for screens and papers are in `services.ts`. */
export type ServiceId =
	| "voice-working"
	| "dsc-watch"
	| "voice-weather"
	| "fax"
	| "navtex"
	| "nbdp-msi"
	| "rtty-weather"
	| "volmet"
	| "time-signal"
	| "news-broadcast";

/** The five words of a list's `mode` column. */
export const MODES = ["USB", "LSB", "AM", "CW", "FSK"] as const;
export type Mode = (typeof MODES)[number];

/** How a frequency is published. `assigned` is carrier + 1.4 kHz for J3E and the centre for every other emission. */
export const LISTED_MEANS = ["carrier", "centre", "assigned", "dial"] as const;
export type ListedMeans = (typeof LISTED_MEANS)[number];

/** Class of emission, three symbols (RR Appendix 1). */
export const EMISSION_CLASSES = ["J3E", "H3E", "R3E", "A3E", "A1A", "J2A", "F1B", "J2B", "J2D", "F1C", "F3C", "J3C", "J2C"] as const;
export type EmissionClass = (typeof EMISSION_CLASSES)[number];

/** ITU Region. */
export type Region = 1 | 2 | 3;

/** What one mode of a set shows and how it makes audio of it. */
export interface ModeDisplay {
	/** `carrier`: suppressed or full carrier; `centre`: middle of the two tones; `mark`: the mark tone's own frequency. */
	readonly shows: "carrier" | "centre" | "mark";
	/** Hz. Audio at which the centre of a data or chart signal comes out in this mode, where the set fixes it. */
	readonly audioCentreHz?: number | undefined;
	/** Hz between the two tones, where the mode shows the mark tone. */
	readonly shiftHz?: number | undefined;
	/** `normal`: mark is the lower radio frequency (ITU-R F.246); `reversed`: the higher. */
	readonly sense?: "normal" | "reversed" | undefined;
	/** Sideband of a mode whose audio is used for data; default upper (lower for LSB). */
	readonly sideband?: "upper" | "lower" | undefined;
	/** Hz. CW only: the set shows carrier minus this pitch. Absent or 0: shows the carrier. */
	readonly pitchHz?: number | undefined;
}

/** What each mode of a set shows. A mode that is absent is not in the set. */
export type DialConvention = Readonly<Partial<Record<Mode, ModeDisplay>>>;

/** One published frequency, the least that the dial needs to know. */
export interface Published {
	readonly hz: Hz;
	readonly means: ListedMeans;
	readonly emission: EmissionClass;
	/** Decides the audio centre: 1.9 kHz for charts, 1.7 kHz for DSC, NBDP and NAVTEX, the decoder's for teletype. */
	readonly service?: ServiceId | undefined;
	/** Exceptional sideband (J3E is upper unless a listing says lower). */
	readonly sideband?: "upper" | "lower" | undefined;
}

export interface Dial {
	/** Exact, before any rounding to the set's steps. */
	readonly dialHz: Hz;
	readonly mode: Mode;
	/** One sentence: how the dial follows from the published figure. */
	readonly why: string;
}

/** Occupied spectrum in hertz, inclusive of both edges. */
export interface Spectrum {
	readonly lowHz: number;
	readonly highHz: number;
}

/** A row of Appendix 17 voice (or of a US MF/HF supplement where the data says so). */
export interface Channel {
	readonly section: "A" | "B" | "C-1" | "C-2";
	/** 4, 6, 8, 12, 16, 18, 22, 25. */
	readonly bandMhz: number;
	/** Channel number, null for unnumbered C-1 and C-2 carriers. */
	readonly number: number | null;
	/** Carrier sent by the ship; null for coast-only channels. */
	readonly ship: Hz | null;
	/** Carrier sent by the coast station; equals `ship` for simplex. */
	readonly coast: Hz | null;
	readonly use: "duplex" | "duplex-calling" | "coast-only" | "simplex" | "ship-ship" | "ship-ship-cross-band";
	readonly source: string;
	readonly confidence: "verified" | "memory";
	readonly note: string;
}

/** One frequency that is guarded: distress, safety, calling. */
export interface Guard {
	/** Carrier for voice, assigned (centre) for DSC and NBDP. */
	readonly hz: Hz;
	readonly kind: "voice" | "dsc" | "nbdp" | "sar-voice";
	readonly emission: EmissionClass;
	readonly label: string;
	/** Voice carriers of which a set must hold one place each (receive is enough). */
	readonly required: boolean;
	readonly source: string;
	readonly confidence: "verified" | "memory";
	readonly note: string;
}

export type AllocationService =
	| "maritime"
	| "amateur"
	| "broadcasting"
	| "aeronautical"
	| "time-signal"
	| "fixed-mobile"
	| "distress-and-calling"
	| "radio-astronomy";

export interface Allocation {
	readonly lowHz: Hz;
	readonly highHz: Hz;
	readonly service: AllocationService;
	readonly regions: readonly Region[];
	/** Shared with, or secondary to, another service. */
	readonly shared: boolean;
	readonly source: string;
	readonly confidence: "verified" | "memory";
	readonly note: string;
}
