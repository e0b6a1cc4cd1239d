import { listingById } from "@skipwright/directory";
import type { HeardKind, TuningExpectation } from "@skipwright/modem";
import {
	CHART_AUDIO_CENTRE_HZ,
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
	roundToSteps,
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
	/** Null for a kind of which nothing is nominal here. */
	readonly of: (kind: HeardKind) => TuningExpectation | null;
}

/** Hz. The set within 10 Hz after warm-up: IMO resolution A.806(19). A chart's sender may add as much: its tolerance is not published (own choice). */
const TOLERANCE_HZ = 10,
	CHART_TOLERANCE_HZ = 20;
/** Kinds that lie anywhere in the audio unless a dial says where. */
const NEEDS_DIAL: readonly HeardKind[] = ["teletype", "voice"];
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
	const tonesHz = flags.tones?.map((text) => positive("--tones", text)) ?? noteOf(published, dialHz);
	const wantedHz = flags.tolerance === undefined ? null : positive("--tolerance", flags.tolerance);
	const kinds = published === null ? null : kindsOf(published);
	const what = dialHz === null ? null : `${flags.listing === undefined ? "" : `${flags.listing}, `}dial ${formatKhz(dialHz)} kHz ${mode}`;
	return {
		what,
		hasDial: dialHz !== null,
		of(kind) {
			if (mode === "AM" || (kinds !== null && !kinds.includes(kind))) return null;
			const nominalAudioHz =
				kind === "tone" ? tonesHz : NEEDS_DIAL.includes(kind) && what === null ? [] : usualOf(kind, place?.residueHz ?? 0, sign);
			if (nominalAudioHz.length === 0) return null;
			const toleranceHz = wantedHz ?? (kind === "chart" ? CHART_TOLERANCE_HZ : TOLERANCE_HZ);
			return { kind, nominalAudioHz, toleranceHz, dialHz: dialHz ?? 0, stepHz, mode: sign === 1 ? "USB" : "LSB" };
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
	/** Hz by which the exact dial lies above the one that the set can be put to. */
	readonly residueHz: number;
}

function placeOf(published: Published, flags: ExpectedFlags, mode: Mode | undefined, profile: Profile | null): Place {
	const dial = dialFor(published, profile?.modes ?? PLAIN, { mode });
	if (flags.listing !== undefined && flags.dial !== undefined) {
		return { dialHz: given("--dial", flags.dial, parseKhz), mode: mode ?? ("cannot" in dial ? "USB" : dial.mode), residueHz: 0 };
	}
	if ("cannot" in dial) throw new UsageError(`cannot say the dial: ${dial.cannot}`);
	const { tunableHz, residueHz } =
		profile === null ? { tunableHz: dial.dialHz, residueHz: 0 } : roundToSteps(dial.dialHz, finestStep(profile));
	return { dialHz: tunableHz, mode: dial.mode, residueHz };
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
