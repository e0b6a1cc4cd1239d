import type { SoftBits } from "../fsk/demodulate.ts";
import { bitEvidence, type Evidence } from "./bitEvidence.ts";
import { DSC_BAUD } from "./dscCall.ts";
import { PHASING_BITS, phasingEvidence } from "./phasing.ts";
import { LONG_DOTS } from "./sequence.ts";
import { LONGEST_CALL_BITS } from "./softCall.ts";

/** A phasing sequence, and so a call, that begins at a bit. */
export interface Opening {
	readonly start: number;
	readonly isInverted: boolean;
	/** Natural logarithm of how much likelier than chance. */
	readonly evidence: number;
}

/** Bits of one carrier, as far back as an open call needs them. */
export interface CarrierBits extends Evidence {
	high: Float64Array;
	low: Float64Array;
	/** Seconds, middle of each bit. */
	atS: Float64Array;
	/** How many bits are held. */
	count: number;
	openings: readonly Opening[];
	notes: readonly Note[];
	/** Evidence of the last calls that could not be read whole. */
	unread: readonly UnreadCall[];
}

/** A call's bits from the first of its phasing sequence on, upright. */
export interface UnreadCall extends Evidence {
	readonly isInverted: boolean;
	readonly startS: number;
}

/** What the demodulator said of a run of bits. */
export interface Note {
	readonly from: number;
	readonly to: number;
	readonly bits: Pick<SoftBits, "centreHz" | "uncertaintyHz" | "snrDb">;
}

/** Natural logarithm: a phasing sequence so much likelier than chance opens a call. Three clean symbols of it give 20. */
const PHASING = 10;

/** Bits said to have been before the first, so that a phasing sequence is recognised of which only the end was heard. */
const BEFORE = PHASING_BITS - 30;

/** Seconds by which a bit of one carrier may lie off that of another to be the same bit, and a call's start off the same start. */
const SAME_BIT_S = 0.5 / DSC_BAUD;
const SAME_START_S = 2 / DSC_BAUD;

const ARRAYS = ["high", "low", "atS"] as const;

/** A carrier that begins at `firstS`; nothing was heard before. */
export function newCarrierBits(firstS: number): CarrierBits {
	const carrier = emptyCarrier();
	for (let i = 0; i < BEFORE; i++) carrier.atS[i] = firstS - (BEFORE - i) / DSC_BAUD;
	return { ...carrier, count: BEFORE };
}

/**
 * A carrier that begins at `firstS` where `before` was lost by the demodulator in the middle of calls that began at `startsS`: what was
 * heard of them goes on. The nominal clock of 100 baud carries from one to the other.
 */
export function continuedCarrierBits(firstS: number, before: CarrierBits, startsS: readonly number[]): CarrierBits {
	const carrier = emptyCarrier();
	let from = before.count - 1;
	for (let i = LONGEST_CALL_BITS - 1; i >= 0; i--) {
		const atS = firstS - (LONGEST_CALL_BITS - i) / DSC_BAUD;
		while (from >= 0 && before.atS[from]! > atS + SAME_BIT_S) from--;
		carrier.atS[i] = atS;
		if (from < 0 || before.atS[from]! < atS - SAME_BIT_S) continue;
		carrier.high[i] = before.high[from]!;
		carrier.low[i] = before.low[from]!;
	}
	carrier.count = LONGEST_CALL_BITS;
	carrier.unread = before.unread;
	for (let start = 0; start + PHASING_BITS <= carrier.count; start++) lookForPhasing(carrier, start);
	const isKnown = ({ start }: Opening) => startsS.some((atS) => Math.abs(atS - carrier.atS[start]!) < SAME_START_S);
	carrier.openings = carrier.openings.filter(isKnown);
	return carrier;
}

function emptyCarrier(): CarrierBits {
	const [high, low, atS] = ARRAYS.map(() => new Float64Array(4 * LONGEST_CALL_BITS)) as [Float64Array, Float64Array, Float64Array];
	return { high, low, atS, count: 0, openings: [], notes: [], unread: [] };
}

export function addBits(carrier: CarrierBits, { softs, atS, centreHz, uncertaintyHz, snrDb }: SoftBits): void {
	if (softs.length === 0) return;
	makeRoom(carrier, softs.length);
	const note = { from: carrier.count, to: carrier.count + softs.length, bits: { centreHz, uncertaintyHz, snrDb } };
	carrier.notes = [...carrier.notes, note];
	for (let i = 0; i < softs.length; i++) {
		const { high, low } = bitEvidence(softs[i]!);
		carrier.high[carrier.count] = high;
		carrier.low[carrier.count] = low;
		carrier.atS[carrier.count] = atS[i]!;
		carrier.count++;
		if (carrier.count >= PHASING_BITS) lookForPhasing(carrier, carrier.count - PHASING_BITS);
	}
}

function makeRoom(carrier: CarrierBits, more: number): void {
	while (carrier.count + more > carrier.high.length) {
		for (const name of ARRAYS) {
			const wider = new Float64Array(2 * carrier[name].length);
			wider.set(carrier[name]);
			carrier[name] = wider;
		}
	}
}

/** Opens a call where a phasing sequence begins, in either sense; of several places close together the likeliest. */
function lookForPhasing(carrier: CarrierBits, start: number): void {
	const { upright, inverted } = phasingEvidence(carrier, start);
	const evidence = Math.max(upright, inverted);
	if (evidence < PHASING) return;
	const near = carrier.openings.filter((opening) => start - opening.start < PHASING_BITS);
	if (near.some((opening) => opening.evidence >= evidence)) return;
	const others = carrier.openings.filter((opening) => !near.includes(opening));
	carrier.openings = [...others, { start, isInverted: inverted > upright, evidence }];
}

/** Bits of the call that opens there, turned upright: as many as the longest has. */
export function callEvidence({ high, low, count }: CarrierBits, { start, isInverted }: Opening): Evidence {
	const held = [high, low].map((array) => {
		const bits = new Float64Array(LONGEST_CALL_BITS);
		bits.set(array.subarray(start, Math.min(count, start + LONGEST_CALL_BITS)));
		return bits;
	}) as [Float64Array, Float64Array];
	return isInverted ? { high: held[1], low: held[0] } : { high: held[0], low: held[1] };
}

/** Drops bits that no open call needs any more. */
export function forgetBits(carrier: CarrierBits): void {
	const drop = Math.min(carrier.count - PHASING_BITS, ...carrier.openings.map(({ start }) => start)) - LONG_DOTS;
	if (drop < LONGEST_CALL_BITS) return;
	for (const name of ARRAYS) carrier[name].copyWithin(0, drop, carrier.count);
	carrier.count -= drop;
	carrier.openings = carrier.openings.map((opening) => ({ ...opening, start: opening.start - drop }));
	const notes = carrier.notes.filter(({ to }) => to > drop);
	carrier.notes = notes.map(({ from, to, bits }) => ({ from: from - drop, to: to - drop, bits }));
}
