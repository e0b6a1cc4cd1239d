import { type Listing, listingById } from "@skipwright/directory";
import type { HeardKind, TuningExpectation } from "@skipwright/modem";
import { timeTones } from "@skipwright/proving";
import {
	CHART_AUDIO_CENTRE_HZ,
	type DialConvention,
	dialFor,
	displayOf,
	emission,
	emissionFamily,
	KEYED_AUDIO_CENTRE_HZ,
	LISTED_MEANS,
	type ListedMeans,
	MODES,
	type Mode,
	type Published,
	publishedFor,
	roundToSteps,
	type ServiceId,
	sidebandSign,
} from "@skipwright/rules";
import { finestStep, modeOf, type Profile } from "@skipwright/set";
import { formatKhz, type Hz, parseKhz } from "@skipwright/units";
import { type Context, UsageError } from "./context.ts";
import { given } from "./given.ts";
import { directoryGiven, profileGiven } from "./sources.ts";

export interface ExpectedFlags {
	readonly listing?: string;
	readonly dial?: string;
	readonly mode?: string;
	readonly published?: string;
	readonly emission?: string;
	readonly set?: string;
	readonly tones?: readonly string[];
	readonly tolerance?: string;
	readonly step?: string;
	readonly shop?: string;
}

/** What should be heard, as far as it was told. */
export interface Expected {
	/** For a person; null where neither a listing nor a dial was given. */
	readonly what: string | null;
	/** Whether the correction can be told in figures of the dial. */
	readonly hasDial: boolean;
	/** The kind that is a broadcast to all by the listing given; null where there is none. */
	readonly kindToAll: HeardKind | null;
	/** What more to give, for tones that were heard; null where nothing helps. */
	readonly tonesHint: string | null;
	/** Null for a kind of which nothing is nominal here. */
	readonly of: (kind: HeardKind) => TuningExpectation | null;
}

/** Hz. The set within 10 Hz after warm-up: IMO resolution A.806(19). A chart's sender may add as much: its tolerance is not published (own choice). */
const TOLERANCE_HZ = 10,
	CHART_TOLERANCE_HZ = 20;
/** Kinds that lie anywhere in the audio unless a dial says where. */
const NEEDS_DIAL: readonly HeardKind[] = ["teletype", "voice"];
/** Broadcasts to all whose kind alone does not show that they are. */
const KIND_TO_ALL: Readonly<Partial<Record<ServiceId, HeardKind>>> = {
	navtex: "text",
	"nbdp-msi": "text",
	"rtty-weather": "teletype",
};
/** Hz. The finest step of a set that is not told. */
const USUAL_STEP_HZ = 100;
/** Hz. A note that a carrier beside the dial makes. */
const NOTE_HZ = { from: 200, to: 3_500 };

const PLAIN = { USB: { shows: "carrier" }, LSB: { shows: "carrier" }, AM: { shows: "carrier" }, CW: { shows: "carrier" } } as const;

/** @throws UsageError */
export function expectedGiven(context: Context, flags: ExpectedFlags): Expected {
	const profile = flags.set === undefined ? null : profileGiven(context, flags.set);
	const convention = profile?.modes ?? PLAIN;
	const published = publishedGiven(context, flags);
	const wanted = flags.mode === undefined ? undefined : given("--mode", flags.mode, (word) => modeWord(profile, word));
	const stepHz = flags.step === undefined ? (profile === null ? USUAL_STEP_HZ : finestStep(profile)) : positive("--step", flags.step);
	const place = published === null ? null : placeOf(published, flags, wanted, profile);
	const mode = place?.mode ?? wanted ?? "USB";
	const dialHz = place?.dialHz ?? (flags.dial === undefined ? null : given("--dial", flags.dial, parseKhz));
	const sign = sidebandSign(mode, displayOf(mode, convention));
	const note = noteOf(published, dialHz);
	const known = isTime(published) ? knownTones(published, place, sign) : [];
	const tonesHz = flags.tones?.map((text) => positive("--tones", text)) ?? (note.length > 0 ? note : known);
	const wantedHz = flags.tolerance === undefined ? null : positive("--tolerance", flags.tolerance);
	const kinds = published === null ? null : kindsOf(published);
	const what = dialHz === null ? null : `${flags.listing === undefined ? "" : `${flags.listing}, `}dial ${formatKhz(dialHz)} kHz ${mode}`;
	return {
		what,
		hasDial: dialHz !== null,
		kindToAll: published?.service === undefined ? null : (KIND_TO_ALL[published.service] ?? null),
		tonesHint: tonesHint(published, mode, tonesHz),
		of(kind) {
			if (mode === "AM" || (kinds !== null && !kinds.includes(kind))) return null;
			const nominalAudioHz =
				kind === "tone" ? tonesHz : NEEDS_DIAL.includes(kind) && what === null ? [] : usualOf(kind, place?.residueHz ?? 0, sign);
			if (nominalAudioHz.length === 0) return null;
			const toleranceHz = wantedHz ?? (kind === "chart" ? CHART_TOLERANCE_HZ : TOLERANCE_HZ);
			return {
				kind,
				nominalAudioHz,
				toleranceHz,
				dialHz: dialHz ?? 0,
				stepHz,
				mode: sign === 1 ? "USB" : "LSB",
				listedDialHz: kind === "tone" || kind === "voice" ? null : (place?.listedDialHz ?? null),
				usbDialHz: dialHz === null ? null : usbDialOf(published ?? signalAt(dialHz, mode, kind, convention), convention),
			};
		},
	};
}

/** What is published, by the listing or by the figure given; null where nothing is. */
function publishedGiven(context: Context, flags: ExpectedFlags): Published | null {
	if (flags.listing !== undefined) {
		if (flags.published !== undefined) throw new UsageError("cannot use --published with --listing: the listing says how it is published");
		const listing = listingById(directoryGiven(context, flags), flags.listing);
		if (listing === null) throw new UsageError(`cannot find ${flags.listing}: expected the id of a listing (skipwright directory find)`);
		return listing;
	}
	if (flags.dial === undefined) {
		if (flags.published !== undefined) throw new UsageError("cannot use --published without --dial");
		return null;
	}
	if (flags.emission === undefined) {
		if (flags.published === undefined || flags.published === "dial") return null;
		throw new UsageError(`cannot tell the dial of a published ${flags.published} without --emission: F1B, F3C, A3E ...`);
	}
	const means = LISTED_MEANS.find((word): word is ListedMeans => word === (flags.published ?? "dial"));
	if (means === undefined) throw new UsageError(`cannot take --published ${flags.published}: expected ${LISTED_MEANS.join(", ")}`);
	const { emissionClass } = given("--emission", flags.emission, emission);
	return { hz: given("--dial", flags.dial, parseKhz), means, emission: emissionClass };
}

/** Where the set stands. */
interface Place {
	readonly dialHz: Hz;
	readonly mode: Mode;
	/** Hz by which the exact dial lies above the one that the set is put to. */
	readonly residueHz: number;
	/** Hz. The exact dial, where the set is not put to it by rule but as somebody keyed it. */
	readonly listedDialHz: number | null;
}

/** Hz. Of a signal farther from its dial nothing comes into the audio. */
const MOST_KEYED_HZ = 5_000;

function placeOf(published: Published, flags: ExpectedFlags, mode: Mode | undefined, profile: Profile | null): Place {
	const dial = dialFor(published, profile?.modes ?? PLAIN, { mode });
	if (flags.listing !== undefined && flags.dial !== undefined) {
		const dialHz = given("--dial", flags.dial, parseKhz);
		if ("cannot" in dial) return { dialHz, mode: mode ?? "USB", residueHz: 0, listedDialHz: null };
		const residueHz = dial.dialHz - dialHz;
		if (Math.abs(residueHz) > MOST_KEYED_HZ) {
			throw new UsageError(
				`cannot take --dial ${flags.dial} for ${flags.listing}: it wants the dial at ${formatKhz(dial.dialHz)} kHz ${dial.mode}, and nothing of it is heard so far away`,
			);
		}
		return { dialHz, mode: dial.mode, residueHz, listedDialHz: dial.dialHz };
	}
	if ("cannot" in dial) throw new UsageError(`cannot say the dial: ${dial.cannot}`);
	const { tunableHz, residueHz } =
		profile === null ? { tunableHz: dial.dialHz, residueHz: 0 } : roundToSteps(dial.dialHz, finestStep(profile));
	return { dialHz: tunableHz, mode: dial.mode, residueHz, listedDialHz: null };
}

/** What would be published of a signal that the set is put to. */
function signalAt(dialHz: Hz, mode: Mode, kind: HeardKind, convention: DialConvention): Published {
	const published = { means: "centre", emission: kind === "chart" ? "F3C" : "F1B" } as const;
	return { ...published, hz: publishedFor(dialHz, mode, published, convention) };
}

function usbDialOf(published: Published, convention: DialConvention): Hz | null {
	const dial = dialFor(published, convention, { mode: "USB" });
	return "cannot" in dial ? null : dial.dialHz;
}

/** What an emission may turn out to be. */
function kindsOf({ emission: emissionClass }: Published): readonly HeardKind[] {
	switch (emissionFamily(emissionClass)) {
		case "chart":
			return ["chart"];
		case "keyed":
		case "data":
			return ["dsc", "text", "teletype"];
		case "speech":
			return ["voice", "tone"];
		default:
			return ["tone"];
	}
}

function usualOf(kind: HeardKind, residueHz: number, sign: 1 | -1): readonly number[] {
	return [(kind === "chart" ? CHART_AUDIO_CENTRE_HZ : KEYED_AUDIO_CENTRE_HZ) + sign * residueHz];
}

function isTime(published: Published | null): published is Listing {
	return published !== null && "service" in published && published.service === "time-signal";
}

/** Hz. Of the stations whose tones are known, that of their minute marks and, as its harmonic, of the 500 Hz (from memory). */
const MINUTE_TONE_HZ = 1_000;

/** Where the tones that a standard-time station is known to send should lie. */
function knownTones({ stationId }: Listing, place: Place | null, sign: 1 | -1): readonly number[] {
	const tonesHz = timeTones(stationId);
	return tonesHz.length === 0 ? [] : [...tonesHz, MINUTE_TONE_HZ].map((toneHz) => toneHz + sign * (place?.residueHz ?? 0));
}

function tonesHint(published: Published | null, mode: Mode, tonesHz: readonly number[]): string | null {
	if (!isTime(published)) return null;
	if (mode === "AM") return "In AM a tone comes out right however the dial stands; record on USB and give --mode USB.";
	return tonesHz.length > 0 ? null : "The station's tones are not known here; give them with --tones, or put the dial 1 kHz lower.";
}

/** The note of a carrier that the dial stands beside: 1000 Hz where it was put 1 kHz below. */
function noteOf(published: Published | null, dialHz: number | null): readonly number[] {
	if (published === null || dialHz === null || emissionFamily(published.emission) === "chart") return [];
	const noteHz = Math.abs(published.hz - dialHz);
	return noteHz >= NOTE_HZ.from && noteHz <= NOTE_HZ.to ? [noteHz] : [];
}

function modeWord(profile: Profile | null, word: string): Mode {
	try {
		return modeOf(profile, word);
	} catch {
		throw new RangeError(`expected ${MODES.join(", ")}`);
	}
}

function positive(flag: string, text: string): number {
	const value = Number(text);
	if (Number.isFinite(value) && value > 0) return value;
	throw new UsageError(`cannot take ${flag} ${text}: expected hertz above 0`);
}
