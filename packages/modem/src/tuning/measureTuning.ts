import { formatKhz, hz } from "@skipwright/units";
import type { GreyImage } from "../chart/chartFigures.ts";
import type { Heard } from "../hear/heard.ts";
import type { HeardTone } from "../tone/heardTone.ts";
import { toneOffset } from "../tone/toneOffset.ts";
import type { HeardVoice } from "../voice/heardVoice.ts";
import type { TuningExpectation } from "./expectation.ts";
import { slipOf, type TuningSlip } from "./slip.ts";

export type TuningVerdict = "within tolerance" | "off tune" | "slip" | "cannot tell";

/** How far the set is off, by what was heard beside what was expected. */
export interface Tuning {
	readonly verdict: TuningVerdict;
	/** Hz, heard minus nominal audio, as if on the upper sideband. Positive: the dial reads high, the set sits below what it shows. */
	readonly offsetHz: number | null;
	/** Hz, one sigma. */
	readonly uncertaintyHz: number | null;
	/** By how many of its steps the dial is to be turned, positive upwards, and what it then reads, Hz. */
	readonly steps: number | null;
	readonly rightDialHz: number | null;
	readonly slip: TuningSlip | null;
	/** The same in a sentence or two. */
	readonly words: string;
}

/** One sigma of a recorder's clock, share: common quartz, from memory. */
const RECORDER_CLOCK = 50e-6;
/** Sigmas that an offset must lie clear of the tolerance. */
const CLEAR = 2;
/** Hz within which a tone is taken for the one that was expected; beyond, the strongest is looked at for a slip. */
const NEAR_HZ = 150;
/** Of several tones expected, so many must have moved alike. */
const LEAST_PAIRS = 2;
/** Hz. Less is not told. */
const LEAST_TOLD_HZ = 0.1;
/** Share of a picture that is dark where black and white are exchanged. */
const DARK_SHARE = 0.75;

/**
 * Reads the tuning of the set from what was heard of one sender. Several items only of tones: those of one recording, so that the set
 * (all tones moved by the same hertz) and the recorder's clock (all in proportion) can be told apart.
 */
export function measureTuning(heard: Heard | readonly HeardTone[], expected: TuningExpectation): Tuning {
	if ("kind" in heard && heard.kind !== expected.kind) return cannotTell(`Expected ${WORDS[expected.kind]}, heard ${WORDS[heard.kind]}.`);
	if (!("kind" in heard) || heard.kind === "tone") return tuningOfTones("kind" in heard ? [heard] : heard, expected);
	if (heard.kind === "voice") return tuningOfVoice(heard);
	const nominalHz = expected.nominalAudioHz[0];
	if (nominalHz === undefined) return cannotTell("Where it should lie in the audio is not known.");
	if (isMirrored(heard, expected.mode)) return wrongSideband(heard, nominalHz, expected);
	return told(heard.audioHz - nominalHz, withClock(heard.uncertaintyHz, nominalHz), expected);
}

const WORDS: Readonly<Record<Heard["kind"], string>> = {
	dsc: "a selective call",
	text: "a text",
	teletype: "teletype",
	chart: "a chart",
	tone: "tones",
	voice: "speech",
};

function cannotTell(words: string): Tuning {
	return { verdict: "cannot tell", offsetHz: null, uncertaintyHz: null, steps: null, rightDialHz: null, slip: null, words };
}

function tuningOfTones(heard: readonly HeardTone[], expected: TuningExpectation): Tuning {
	const [only, ...more] = expected.nominalAudioHz;
	if (only === undefined) return cannotTell("Where the tones should lie in the audio is not known.");
	if (more.length === 0) return tuningOfOneTone(heard, only, expected);
	const offset = toneOffset(heard, expected.nominalAudioHz);
	switch (offset.verdict) {
		case "shift":
			if (offset.pairs.length < LEAST_PAIRS)
				return cannotTell("Cannot tell: only one of the expected tones was heard, if it was that one.");
			return told(offset.offsetHz, offset.uncertaintyHz, expected);
		case "scale": {
			const ppm = Math.round(Math.abs(offset.partsPerMillion));
			const speed = offset.partsPerMillion > 0 ? "slow" : "fast";
			return cannotTell(
				`The tones moved in proportion, ${ppm} parts in a million: the recorder's clock runs ${speed}; the set is not to blame.`,
			);
		}
		case "cannot tell":
			return cannotTell(`Cannot tell: ${offset.why}`);
	}
}

function tuningOfOneTone(heard: readonly HeardTone[], nominalHz: number, expected: TuningExpectation): Tuning {
	if (heard.length === 0) return cannotTell("No tone was heard.");
	const nearest = heard.reduce((a, b) => (Math.abs(b.audioHz - nominalHz) < Math.abs(a.audioHz - nominalHz) ? b : a));
	const strongest = heard.reduce((a, b) => (b.snrDb > a.snrDb ? b : a));
	const tone = Math.abs(nearest.audioHz - nominalHz) <= NEAR_HZ ? nearest : strongest;
	return told(tone.audioHz - nominalHz, withClock(tone.uncertaintyHz, nominalHz), expected);
}

function darkShare({ pixels }: GreyImage): number {
	let dark = 0;
	for (const pixel of pixels) if (pixel < 128) dark++;
	return pixels.length === 0 ? 0 : dark / pixels.length;
}

function withClock(uncertaintyHz: number, audioHz: number): number {
	const clockHz = RECORDER_CLOCK * audioHz;
	return Math.sqrt(uncertaintyHz * uncertaintyHz + clockHz * clockHz);
}

function tuningOfVoice({ isOutOfPlace, lowHz, highHz }: HeardVoice): Tuning {
	if (!isOutOfPlace) return cannotTell("Speech does not tell the tuning nearer than an ear does.");
	const words = `The speech lies from ${lowHz.toFixed(0)} to ${highHz.toFixed(0)} Hz, where speech does not: wrong sideband, or far off tune.`;
	return { ...cannotTell(words), verdict: "slip", slip: "wrong sideband" };
}

/**
 * A chart is mostly white paper; exchanged it is mostly black. Satellite pictures may be dark either way: its words say "or".
 * On the lower sideband tones, and black and white, change places by right.
 */
function isMirrored(heard: Exclude<Heard, HeardTone | HeardVoice>, mode: TuningExpectation["mode"]): boolean {
	if (heard.kind === "teletype") return false; // it is sent in either sense
	if (heard.kind !== "chart") return heard.isInverted !== (mode === "LSB");
	const dark = darkShare(heard.image);
	return (mode === "LSB" ? 1 - dark : dark) > DARK_SHARE;
}

function wrongSideband({ kind, audioHz, uncertaintyHz }: Heard, nominalHz: number, expected: TuningExpectation): Tuning {
	const sign = expected.mode === "USB" ? 1 : -1;
	const { usbDialHz } = expected;
	const how = kind !== "chart" ? "The tones came exchanged" : `The picture is mostly ${sign === 1 ? "black" : "white"}`;
	const wants = usbDialHz === null ? "" : ` The place wants USB at ${khz(usbDialHz)} kHz.`;
	return {
		verdict: "slip",
		offsetHz: sign * (audioHz - nominalHz),
		uncertaintyHz: withClock(uncertaintyHz, nominalHz),
		steps: null,
		rightDialHz: null,
		slip: "wrong sideband",
		words: `${how}: wrong sideband, or a sense switch is set the wrong way.${wants}`,
	};
}

/** @param higherHz heard minus nominal audio */
function told(higherHz: number, uncertaintyHz: number, expected: TuningExpectation): Tuning {
	const { mode, toleranceHz, stepHz, dialHz, listedDialHz } = expected;
	const offsetHz = mode === "LSB" ? -higherHz : higherHz;
	const keyedHz = listedDialHz === null ? 0 : dialHz - listedDialHz;
	const wantedHz = offsetHz - keyedHz;
	const steps = Math.round(wantedHz / stepHz) + 0; // never -0
	const rightDialHz = dialHz + steps * stepHz;
	const measured = { offsetHz, uncertaintyHz, steps, rightDialHz };
	const clear = CLEAR * uncertaintyHz;
	const isWithin = Math.abs(offsetHz) + clear <= toleranceHz;
	const isBeyond = Math.abs(offsetHz) - clear > toleranceHz;
	const turn = turnWords(steps, stepHz);
	const leftHz = oneDecimal(Math.abs(wantedHz - steps * stepHz));
	if (listedDialHz !== null && 2 * Math.abs(keyedHz) > stepHz) {
		const usualHz = (expected.nominalAudioHz[0] ?? 0) + (mode === "LSB" ? -keyedHz : keyedHz);
		const known = slipOf(-keyedHz, { ...expected, nominalAudioHz: [usualHz] });
		const keyed = `Keyed ${Math.abs(keyedHz)} Hz ${keyedHz < 0 ? "low" : "high"} against the listing's dial ${khz(listedDialHz)} kHz`;
		const why = known === null ? "" : ` (${known.words})`;
		const offset = `offset ${oneDecimal(offsetHz)} Hz, ±${sigmaWords(uncertaintyHz)}`;
		const set = isWithin ? "within" : isBeyond ? "off by more than" : "too near to tell from";
		const words = `${keyed}${why}; the set itself is ${set} ${toleranceHz} Hz (${offset}). ${capital(turn)}${steps === 0 ? "" : `, to ${khz(rightDialHz)} kHz`}.`;
		return { ...measured, verdict: "slip", slip: known?.slip ?? "another dial keyed", words };
	}
	const isRight = Math.abs(offsetHz) < Math.max(uncertaintyHz, LEAST_TOLD_HZ);
	const reads = isRight
		? `The dial is right to ${sigmaWords(uncertaintyHz)} Hz`
		: `The dial reads ${oneDecimal(Math.abs(offsetHz))} Hz ${offsetHz < 0 ? "low" : "high"} (±${sigmaWords(uncertaintyHz)})`;
	const known = slipOf(offsetHz, expected);
	if (known !== null) {
		const rest = oneDecimal(Math.abs(offsetHz - known.offsetHz));
		const words = `${capital(known.words)}; ${rest} Hz are left over (±${sigmaWords(uncertaintyHz)}). ${capital(turn)}, from ${khz(dialHz)} to ${khz(rightDialHz)} kHz.`;
		return { ...measured, verdict: "slip", slip: known.slip, words };
	}
	if (isWithin) return { ...measured, verdict: "within tolerance", slip: null, words: `${reads}; within tolerance (${toleranceHz} Hz).` };
	if (isBeyond) {
		const to = steps === 0 ? "" : `, to ${khz(rightDialHz)} kHz; ${leftHz} Hz are left over`;
		return { ...measured, verdict: "off tune", slip: null, words: `${reads}, more than ${toleranceHz} Hz: ${turn}${to}.` };
	}
	return { ...measured, verdict: "cannot tell", slip: null, words: `${reads}; too near the tolerance of ${toleranceHz} Hz to tell.` };
}

function turnWords(steps: number, stepHz: number): string {
	if (steps === 0) return "finer than its steps: use the fine tuning or have the set's reference adjusted";
	return `turn it ${steps > 0 ? "up" : "down"} ${stepsWords(steps, stepHz)}`;
}

function stepsWords(steps: number, stepHz: number): string {
	const count = Math.abs(steps);
	return `${count} ${count === 1 ? "step" : "steps"} of ${stepHz} Hz`;
}

function khz(dialHz: number): string {
	return formatKhz(hz(Math.max(0, Math.round(dialHz))));
}

function oneDecimal(value: number): string {
	return value.toFixed(1);
}

function sigmaWords(sigmaHz: number): string {
	return Math.max(LEAST_TOLD_HZ, sigmaHz).toFixed(1);
}

function capital(words: string): string {
	return words.charAt(0).toUpperCase() + words.slice(1);
}
