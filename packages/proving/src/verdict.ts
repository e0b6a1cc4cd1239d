import { type Heard, measureTuning, type Tuning, type TuningSlip } from "@skipwright/modem";
import type { Expectation } from "./expectation.ts";
import { CLOSED_BELOW, fitsHere } from "./fitsHere.ts";
import { ownTest } from "./ownTest.ts";
import { GRADES, type Proof, proofOf } from "./proofOf.ts";

export const RESULTS = ["proved", "off tune", "likely", "not proved", "cannot tell"] as const;
export type Result = (typeof RESULTS)[number];

/** What could be expected at the time of listening. */
export interface Predicted {
	/** Chance from 0 to 1 that the station is copied there and then; null: nothing predicts it. */
	readonly chance: number | null;
	/** Whether it was on the air by its published times; null where they, or the time of listening, are not known. */
	readonly isDue: boolean | null;
	/** The same, some minutes early or late; default as `isDue`. */
	readonly isNearDue?: boolean | null;
	/** nm from the station; null where its place is not known. */
	readonly distanceNm?: number | null;
}

export interface VerdictOptions {
	/** The ship's own identity: her test calls are told from others' traffic by it. */
	readonly ownMmsi?: string | null;
	/** Hz. The set's finest step. */
	readonly stepHz: number;
	/** Hz. Where the dial stood; default where it should. */
	readonly dialHz?: number;
}

export interface Verdict {
	readonly result: Result;
	/** "cannot tell: band predicted closed", "off tune". */
	readonly words: string;
	/** Why, in sentences; what is not proved among them. */
	readonly why: readonly string[];
	/** How far the item shows what the place holds, tuning aside. */
	readonly grade: Proof["grade"];
	/** Whether the station expected is the one that was heard, as far as name, time and reach tell; false where nothing was heard. */
	readonly isNamed: boolean;
	/** The item it rests on; null where none does. */
	readonly item: Heard | null;
	/** Hz; positive where the dial reads high. Null where it cannot be measured. */
	readonly offsetHz: number | null;
	readonly uncertaintyHz: number | null;
	/** Steps of the set by which the dial must go up (below 0: down); null where that cannot be told. */
	readonly steps: number | null;
	/** The usual slip that this offset looks like. */
	readonly slip: TuningSlip | null;
}

/** Hz either way in which a tone is taken for one that was expected: by how much a set may be off, and in AM by how much a recorder's clock. */
const TONE_SEARCH_HZ = 150,
	TONE_SEARCH_AM_HZ = 5;
/** Hz from nominal beyond which a signal without a name is sooner another station's. DSC is searched over 100 Hz. Own choice. */
const OWN_HZ = 150;
/** Where a station was read that is not the one expected, or not known to be it. */
const WHOSE_RESULT: Readonly<Partial<Record<Proof["grade"], Result>>> = { other: "not proved", unknown: "cannot tell" };
const WHOSE_WORDS: Readonly<Partial<Record<Proof["grade"], string>>> = {
	other: "not proved for the station",
	unknown: "cannot tell: which station",
};
const SENDING = "Listening proves nothing of the sending side.";

/** What was heard, held against what should have been. A dead band is not a fault. */
export function verdict(expectation: Expectation, heard: readonly Heard[], predicted: Predicted, options: VerdictOptions): Verdict {
	const verdicts = candidatesOf(expectation, heard).map((items) => judged(expectation, items, predicted, options));
	return verdicts.toSorted(better)[0] ?? silent(expectation, heard, predicted);
}

/** The better of two first: by result, then by what it shows (an answer before the louder call), then by strength. */
function better(a: Verdict, b: Verdict): number {
	return (
		RESULTS.indexOf(a.result) - RESULTS.indexOf(b.result) ||
		GRADES.indexOf(a.grade) - GRADES.indexOf(b.grade) ||
		(b.item?.snrDb ?? 0) - (a.item?.snrDb ?? 0)
	);
}

/** Items that are judged together: tones at once, everything else one by one. */
function candidatesOf({ kind, tonesHz, mode }: Expectation, heard: readonly Heard[]): readonly (readonly Heard[])[] {
	const own = heard.filter((item) => item.kind === kind);
	if (kind !== "tone") return own.map((item) => [item]);
	const near = own.filter(({ audioHz }) =>
		tonesHz.some((tone) => Math.abs(tone - audioHz) <= (mode === "AM" ? TONE_SEARCH_AM_HZ : TONE_SEARCH_HZ)),
	);
	return near.length === 0 ? [] : [near.toSorted((a, b) => b.snrDb - a.snrDb)];
}

function judged(
	expectation: Expectation,
	items: readonly Heard[],
	predicted: Predicted,
	{ ownMmsi = null, stepHz, dialHz = expectation.dialHz }: VerdictOptions,
): Verdict {
	const [item] = items as readonly [Heard];
	const proof = proofOf(expectation, item, predicted, ownMmsi);
	const tuning = ownTest(item, ownMmsi) === "call" ? null : tuningOf(expectation, items, stepHz, dialHz); // her own oscillator tells nothing of itself
	const offsetHz = tuning?.offsetHz ?? null;
	const isOff = tuning?.verdict === "off tune" || tuning?.verdict === "slip";
	const isLetterRead = proof.grade === "identity" || proof.grade in WHOSE_WORDS; // all NAVTEX stations share the frequency
	const isFar = tuning?.verdict === "off tune" && !isLetterRead && Math.abs(tuning.offsetHz ?? 0) > OWN_HZ;
	const isSure = proof.grade === "identity" || proof.grade === "signal";
	const result: Result = isFar ? "not proved" : isOff ? "off tune" : isSure ? "proved" : (WHOSE_RESULT[proof.grade] ?? "likely");
	const whose = WHOSE_WORDS[proof.grade] ?? null;
	return {
		result,
		words:
			whose === null ? result : isOff ? `off tune; ${whose}` : `${whose}${tuning?.verdict === "within tolerance" ? "; tuned right" : ""}`,
		why: [
			proof.why,
			...(tuning === null
				? noTuningWords(expectation)
				: [
						tuning.words,
						...(tuning.offsetHz === null ? [] : [`Allowed: ${expectation.tolerance.hz} Hz (${expectation.tolerance.source}).`]),
					]),
			...(isFar ? ["It lies too far from where it should be: sooner another station's signal."] : []),
			...(tuning?.verdict === "off tune" && !isFar
				? ["The sender may be off as well: hear a second station before the set itself is adjusted."]
				: []),
			...(proof.provesSending ? [] : [SENDING]),
		],
		grade: proof.grade,
		isNamed: proof.grade === "identity" || (proof.grade === "signal" && item.kind !== "dsc" && fitsHere(predicted) === true),
		item,
		offsetHz,
		uncertaintyHz: offsetHz === null ? null : (tuning?.uncertaintyHz ?? null),
		steps: tuning?.steps ?? null,
		slip: tuning?.slip ?? null,
	};
}

/** Null where what is expected names no nominal audio. */
function tuningOf(expectation: Expectation, items: readonly Heard[], stepHz: number, dialHz: number): Tuning | null {
	const { kind, audioHz, tonesHz, sidebandSign, tellsTuning, tolerance, mode } = expectation;
	const [item] = items;
	const isTold = tellsTuning || (kind === "voice" && mode !== "AM"); // speech: only whether it lies where speech does
	if (!isTold || item === undefined) return null;
	const expected = {
		kind,
		nominalAudioHz: audioHz === null ? tonesHz : [audioHz],
		toleranceHz: tolerance.hz,
		dialHz,
		stepHz,
		mode: sidebandSign === 1 ? ("USB" as const) : ("LSB" as const),
		listedDialHz: null,
		usbDialHz: mode === "USB" ? expectation.dialHz : null,
	};
	const tones = items.filter((one) => one.kind === "tone");
	return measureTuning(item.kind === "tone" ? tones : item, expected);
}

function noTuningWords({ kind, mode, tonesHz }: Expectation): readonly string[] {
	if (kind !== "tone") return [];
	if (mode === "AM") {
		return ["In AM a tone comes out right however the dial stands: the tuning is not told. On USB, 1 kHz below the carrier, it would be."];
	}
	return tonesHz.length === 0
		? ["No steady tone of the station is known: put the dial 1 kHz below its carrier on USB and measure the note."]
		: [];
}

function silent({ kind, isWatch, tonesHz, mode }: Expectation, heard: readonly Heard[], { chance, isDue }: Predicted): Verdict {
	const other = heard.length === 0 ? "Nothing was heard." : "Nothing of the kind expected was heard.";
	const nothing = { grade: "none" as const, isNamed: false, item: null, offsetHz: null, uncertaintyHz: null, steps: null, slip: null };
	const cannot = (because: string, sentence: string): Verdict => ({
		result: "cannot tell",
		words: `cannot tell: ${because}`,
		why: [other, sentence],
		...nothing,
	});
	if (chance !== null && chance < CLOSED_BELOW) {
		return cannot(
			"band predicted closed",
			`The chance to hear it then is predicted as ${Math.round(100 * chance)} %: silence is no fault. Come back at a better hour.`,
		);
	}
	if (isWatch) return cannot("nothing was due", "The station keeps watch there and sends only when called: silence is no fault.");
	if (isDue === false) return cannot("nothing was due", "It was not on the air then by its published times: silence is no fault.");
	if (kind === "tone" && tonesHz.length === 0) {
		return cannot(
			"no steady tone is known",
			mode === "AM"
				? "Listen for its pulses by ear, or put the dial 1 kHz below its carrier on USB."
				: "Put the dial 1 kHz below its carrier on USB: the note should be 1000 Hz.",
		);
	}
	if (chance === null || isDue === null) {
		return cannot(
			"nothing predicted",
			"Whether it could be heard then is not known (time, times of sending or the station's place): silence shows nothing.",
		);
	}
	return {
		result: "not proved",
		words: "not proved",
		why: [
			other,
			`It was on the air, with a chance of ${Math.round(100 * chance)} % by prediction, a median of the month: try again before looking for a fault.`,
			"Look at dial, mode, squelch, antenna, and noise on board.",
		],
		...nothing,
	};
}
