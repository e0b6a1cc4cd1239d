import { sin } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";

const TURN = 2 * Math.PI;

/** Peak of a made signal where none is asked for: half of full scale leaves room for noise. */
export const DEFAULT_AMPLITUDE = 0.5;

export interface MadeOptions {
	/** Samples a second. Default `MODEM_RATE_HZ`. */
	readonly rateHz?: number;
	/** Peak, full scale 1. Default `DEFAULT_AMPLITUDE`. */
	readonly amplitude?: number;
}

/** One stretch of a single tone. */
export interface TonePart {
	readonly toneHz: number;
	readonly seconds: number;
}

/**
 * Tones one after another, continuous in phase. Each border lies where the seconds put it, between two samples if need be;
 * the length is the whole time to the nearest sample.
 */
export function keyedTones(
	parts: readonly TonePart[],
	{ rateHz = MODEM_RATE_HZ, amplitude = DEFAULT_AMPLITUDE }: MadeOptions = {},
): Float64Array {
	const borders = bordersOf(parts);
	const samples = new Float64Array(Math.round(borders.at(-1)! * rateHz));
	let turns = 0; // at the part's start
	for (const [i, { toneHz, seconds }] of parts.entries()) {
		const fromS = borders[i]!;
		const last = Math.min(samples.length, Math.ceil(borders[i + 1]! * rateHz));
		for (let n = Math.ceil(fromS * rateHz); n < last; n++) samples[n] = amplitude * sineOf(turns + toneHz * (n / rateHz - fromS));
		turns = fraction(turns + toneHz * seconds);
	}
	return samples;
}

/** Start of each part and end of the last, s; summed with what rounding drops carried along (Kahan). */
function bordersOf(parts: readonly TonePart[]): number[] {
	const borders = [0];
	let [sum, dropped] = [0, 0];
	for (const { seconds } of parts) {
		const term = seconds - dropped;
		const next = sum + term;
		dropped = next - sum - term;
		sum = next;
		borders.push(sum);
	}
	return borders;
}

export interface KeyingOptions extends MadeOptions {
	readonly baud: number;
	readonly lowHz: number;
	readonly highHz: number;
	/** Default true. False: two free-running oscillators, the sender switches between them. */
	readonly isContinuous?: boolean;
}

/** Bits as tones of equal length: 1 the higher tone, 0 the lower. */
export function keyedBits(
	bits: ArrayLike<number>,
	{ baud, lowHz, highHz, isContinuous = true, rateHz = MODEM_RATE_HZ, amplitude = DEFAULT_AMPLITUDE }: KeyingOptions,
): Float64Array {
	const samples = new Float64Array(Math.round((bits.length / baud) * rateHz));
	let turns = 0; // by how much the phase at the bit's start is ahead of an oscillator running since 0
	let before = 0;
	for (let i = 0; i < bits.length; i++) {
		const toneHz = bits[i] ? highHz : lowHz;
		if (isContinuous && i > 0) turns = fraction(turns + (before - toneHz) * (i / baud));
		before = toneHz;
		const last = Math.min(samples.length, Math.ceil(((i + 1) / baud) * rateHz));
		for (let n = Math.ceil((i / baud) * rateHz); n < last; n++) samples[n] = amplitude * sineOf(turns + toneHz * (n / rateHz));
	}
	return samples;
}

function sineOf(turns: number): number {
	return sin(TURN * fraction(turns));
}

function fraction(turns: number): number {
	return turns - Math.floor(turns);
}
