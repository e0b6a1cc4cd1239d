import type { Expectation } from "./expectation.ts";
import type { HeardItem } from "./heardItem.ts";
import { measureOffset, type Offset, TONE_SEARCH_HZ } from "./measureOffset.ts";
import { proofOf } from "./proofOf.ts";
import { usualSlip } from "./usualSlip.ts";

export const RESULTS = ["proved", "off tune", "likely", "not proved", "cannot tell"] as const;
export type Result = (typeof RESULTS)[number];

/** What could be expected at the time of listening. */
export interface Predicted {
	/** Chance from 0 to 1 that the station is copied there and then; null: nothing predicts it. */
	readonly chance: number | null;
	/** Whether it was on the air by its published times; null where they, or the time of listening, are not known. */
	readonly isDue: boolean | null;
}

export interface VerdictOptions {
	/** The ship's own identity: her test calls are told from others' traffic by it. */
	readonly ownMmsi?: string | null;
	/** Hz of the set's finest step, to say by how many steps it is off. */
	readonly stepHz?: number;
}

export interface Verdict {
	readonly result: Result;
	/** "cannot tell: band predicted closed", "off tune". */
	readonly words: string;
	/** Why, in sentences; what is not proved among them. */
	readonly why: readonly string[];
	/** The item it rests on; null where none does. */
	readonly item: HeardItem | null;
	/** Hz; positive where the dial reads high. Null where it cannot be measured. */
	readonly offsetHz: number | null;
	readonly uncertaintyHz: number | null;
	/** Steps of the set by which the dial must go up (below 0: down); null where that cannot be told. */
	readonly steps: number | null;
}

/** Chance below which a band counts as closed: one day in seven. The steps of reach call this "none". */
export const CLOSED_BELOW = 0.15;
/** Hz from nominal beyond which a signal without a name is sooner another station's. DSC is searched over 100 Hz. Own choice. */
const OWN_HZ = 150;
const SENDING = "Listening proves nothing of the sending side.";

/** What was heard, held against what should have been. A dead band is not a fault. */
export function verdict(
	expectation: Expectation,
	heard: readonly HeardItem[],
	predicted: Predicted,
	options: VerdictOptions = {},
): Verdict {
	const verdicts = candidatesOf(expectation, heard).map((items) => judged(expectation, items, predicted, options));
	return verdicts.toSorted(better)[0] ?? silent(expectation, heard, predicted);
}

/** The better of verdicts on one place first: by result, then by strength. */
export function better(a: Verdict, b: Verdict): number {
	return RESULTS.indexOf(a.result) - RESULTS.indexOf(b.result) || (b.item?.snrDb ?? 0) - (a.item?.snrDb ?? 0);
}

/** Items that are judged together: tones at once, everything else one by one. */
function candidatesOf({ kind, tonesHz }: Expectation, heard: readonly HeardItem[]): readonly (readonly HeardItem[])[] {
	const own = heard.filter((item) => item.kind === kind);
	if (kind !== "tone") return own.map((item) => [item]);
	const near = own.filter(({ audioHz }) => tonesHz.some((tone) => Math.abs(tone - audioHz) <= TONE_SEARCH_HZ));
	return near.length === 0 ? [] : [near.toSorted((a, b) => b.snrDb - a.snrDb)];
}

function judged(
	expectation: Expectation,
	items: readonly HeardItem[],
	{ isDue }: Predicted,
	{ ownMmsi = null, stepHz }: VerdictOptions,
): Verdict {
	const [item] = items as readonly [HeardItem];
	const proof = proofOf(expectation, item, isDue, ownMmsi);
	const offset = expectation.tellsTuning ? measureOffset(expectation, items) : null;
	const slip = offset === null ? null : usualSlip(expectation, offset.hz);
	const isFar = offset !== null && proof.grade !== "identity" && slip === null && Math.abs(offset.hz) > OWN_HZ;
	const isOff = offset !== null && !offset.isInconsistent && Math.abs(offset.hz) - 2 * offset.uncertaintyHz > expectation.tolerance.hz;
	const isSure = proof.grade === "identity" || proof.grade === "signal";
	const inverted = invertedWords(expectation, item);
	const result: Result = isFar ? "not proved" : isOff || inverted !== null ? "off tune" : isSure ? "proved" : "likely";
	const far = isFar ? ["It lies too far from where it should be: sooner another station's signal."] : [];
	const tuned = offset === null ? [noOffsetWords(expectation)] : offsetWords(expectation, offset, isOff, slip, stepHz);
	return {
		result,
		words: result,
		why: [proof.why, ...(inverted === null ? [] : [inverted]), ...tuned, ...far, ...(proof.provesSending ? [] : [SENDING])].filter(
			(line) => line !== "",
		),
		item,
		offsetHz: offset?.hz ?? null,
		uncertaintyHz: offset?.uncertaintyHz ?? null,
		steps: offset === null || stepHz === undefined ? null : Math.round(offset.hz / stepHz),
	};
}

/** Tones exchanged though the place stands on the upper sideband. */
function invertedWords({ sidebandSign, keying }: Expectation, item: HeardItem): string | null {
	if (keying?.sense !== "high is B" || (item.kind !== "dsc" && item.kind !== "text")) return null;
	return item.isInverted === (sidebandSign === -1) ? null : "The two tones came exchanged: wrong sideband, or the set's sense is reversed.";
}

function noOffsetWords({ kind, mode, tonesHz }: Expectation): string {
	if (kind === "voice") return "Speech tells the tuning by ear alone, to some tens of hertz.";
	if (kind !== "tone") return "";
	if (mode === "AM")
		return "In AM a tone comes out right however the dial stands: the tuning is not told. On USB, 1 kHz below the carrier, it would be.";
	return tonesHz.length === 0 ? "The station's tones are not known: put the dial 1 kHz below its carrier on USB and measure the note." : "";
}

function offsetWords(
	expectation: Expectation,
	offset: Offset,
	isOff: boolean,
	slip: string | null,
	stepHz: number | undefined,
): readonly string[] {
	const { tolerance } = expectation;
	const figure = `${signed(offset.hz)} Hz (± ${offset.uncertaintyHz.toFixed(1)})`;
	if (offset.isInconsistent)
		return [
			`The tones disagree by how much they are off (about ${figure}): the recorder's clock or another station; the tuning is not told.`,
		];
	const limit = `${tolerance.hz} Hz are allowed (${tolerance.source})`;
	if (!isOff) {
		const isUnsure = Math.abs(offset.hz) + 2 * offset.uncertaintyHz > tolerance.hz;
		return [`${figure} off nominal; ${limit}${isUnsure ? ": too near the limit to be sure, listen again" : ""}.`];
	}
	const reads = offset.hz > 0 ? "reads high: the set sits below what it shows" : "reads low: the set sits above what it shows";
	const steps = stepHz === undefined ? 0 : Math.round(offset.hz / stepHz);
	const way = offset.hz > 0 ? "up" : "down";
	const remedy =
		stepHz === undefined
			? `Turn the dial ${way} by ${Math.abs(offset.hz).toFixed(0)} Hz.`
			: steps === 0
				? `That is less than half of the set's step of ${stepHz} Hz: use its fine tuning, or have its reference adjusted.`
				: `Turn the dial ${way} by ${Math.abs(steps)} ${Math.abs(steps) === 1 ? "step" : "steps"} of ${stepHz} Hz; ${signed(offset.hz - steps * stepHz)} Hz are left.`;
	return [
		`The dial ${reads}, by ${figure}; ${limit}.`,
		...(slip === null
			? ["No usual slip gives this figure: the sender may be off, so hear a second station before the set is adjusted."]
			: [`A usual slip gives this figure: ${slip}.`]),
		remedy,
	];
}

function silent({ kind, isWatch, tonesHz, mode }: Expectation, heard: readonly HeardItem[], { chance, isDue }: Predicted): Verdict {
	const other = heard.length === 0 ? "Nothing was heard." : "Nothing of the kind expected was heard.";
	const nothing = { item: null, offsetHz: null, uncertaintyHz: null, steps: null };
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

/** @example `signed(23.04)` is `"+23.0"` */
function signed(hz: number): string {
	return `${hz < 0 ? "-" : "+"}${Math.abs(hz).toFixed(1)}`;
}
