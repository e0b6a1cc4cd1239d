import type { HeardBase } from "../receiver.ts";
import type { Evidence } from "./bitEvidence.ts";
import type { DscCall, DscFault } from "./call.ts";
import { type CarrierBits, callEvidence, type Note, type Opening, type UnreadCall } from "./carrierBits.ts";
import { DSC_BAUD } from "./dscCall.ts";
import { parseDsc } from "./parseDsc.ts";
import { LONG_DOTS } from "./sequence.ts";
import { LONGEST_CALL_BITS, type SoftCall, softCall } from "./softCall.ts";

/** A digital selective call heard. */
export interface HeardDsc extends HeardBase {
	readonly kind: "dsc";
	/** Format specifier once, then to the end of sequence, without the check; null for a lost symbol. */
	readonly symbols: readonly (number | null)[];
	readonly ecc: number | null;
	/** The check agrees and no symbol is lost. */
	readonly ok: boolean;
	readonly from: string | null;
	readonly to: string | null;
	readonly summary: string;
	/** Null where not even the format specifier could be read. */
	readonly call: DscCall | null;
	readonly faults: readonly DscFault[];
	/** Tones exchanged: the receiver stands on the lower sideband, or is set to the wrong sense. */
	readonly isInverted: boolean;
	/** Symbols that the check chose against what their own bits say: 0 for a call received clean. */
	readonly corrected: number;
	/** How often it came: a distress alert is sent several times on end. */
	readonly times: number;
}

/**
 * Natural logarithm of how much likelier than chance the bits after a phasing sequence must be as a call to be told. Noise reaches it in
 * one of e^20 phasing sequences at most; a call that can be read whole has 70 and more.
 */
const CALL = 20;
/** Least share of symbols read in a call that is told with losses. */
const SHARE_READ = 0.5;

/**
 * The call that opens there, as far as its bits are there; null where it could as well be chance.
 * @param before the same call as it may have come before: the evidence of all is added up
 */
export function heardDsc(
	carrier: CarrierBits,
	opening: Opening,
	before: readonly UnreadCall[] = [],
): { readonly heard: HeardDsc; readonly evidence: number } | null {
	const { start, isInverted } = opening;
	const { high, low, atS, count, notes } = carrier;
	const bits = callEvidence(carrier, opening);
	for (const one of before) addEvidence(bits, one);
	const call = softCall(bits, 0);
	if (!isWorthTelling(call)) return null;
	const from = start - dotsBefore(isInverted ? { high: low, low: high } : { high, low }, start);
	const last = Math.min(count, start + call.bits) - 1;
	const { ok, ...reading } = parseDsc(call.symbols, call.ecc);
	const halfBitS = 0.5 / DSC_BAUD;
	const heard: HeardDsc = {
		kind: "dsc",
		startS: before[0]?.startS ?? Math.max(0, atS[from]! - halfBitS),
		endS: atS[last]! + halfBitS,
		...carrierNotes(notes, from, last),
		symbols: call.symbols,
		ecc: call.ecc,
		ok,
		from: reading.call?.from ?? null,
		to: reading.call?.to ?? null,
		summary: isInverted ? `Tones exchanged (lower sideband, or the wrong sense). ${reading.summary}` : reading.summary,
		call: reading.call,
		faults: reading.faults,
		isInverted,
		corrected: call.corrected,
		times: before.length + 1,
	};
	return { heard, evidence: opening.evidence + call.evidence };
}

function addEvidence(sums: Evidence, more: Evidence): void {
	for (let i = 0; i < LONGEST_CALL_BITS; i++) {
		sums.high[i] = sums.high[i]! + more.high[i]!;
		sums.low[i] = sums.low[i]! + more.low[i]!;
	}
}

function isWorthTelling({ symbols, isSure, evidence }: SoftCall): boolean {
	const read = symbols.filter((symbol) => symbol !== null).length;
	return evidence > CALL && (isSure || (symbols.length > 1 && symbols[0] !== null && read >= SHARE_READ * symbols.length));
}

/** Natural logarithm. So much must a dot speak for itself on the mean: noise before the pattern comes out at 0 and would add to it by chance. */
const DOT = 0.35;

/** Bits of the dot pattern before the phasing sequence, as far back as it can be made out. */
function dotsBefore({ high, low }: Evidence, start: number): number {
	let [sum, most, length] = [0, 0, 0];
	for (let back = 1; back <= Math.min(LONG_DOTS, start); back++) {
		sum += (back % 2 === 1 ? low[start - back]! : high[start - back]!) - DOT;
		if (sum > most) [most, length] = [sum, back];
	}
	return length;
}

/** Each estimate of the centre counts as much as it is sure: a carrier just found, or found again, is placed roughly. */
function carrierNotes(notes: readonly Note[], first: number, last: number): Pick<HeardBase, "audioHz" | "uncertaintyHz" | "snrDb"> {
	const during = notes.filter(({ from, to }) => from <= last && to > first);
	const own = (during.length > 0 ? during : notes).map(({ bits }) => bits);
	const weights = own.map(({ uncertaintyHz }) => 1 / (uncertaintyHz * uncertaintyHz));
	const weight = weights.reduce((sum, one) => sum + one, 0);
	return {
		audioHz: own.reduce((sum, { centreHz }, i) => sum + weights[i]! * centreHz, 0) / weight,
		uncertaintyHz: Math.sqrt(own.length / weight), // they come one from another: together no surer than one
		snrDb: own.reduce((sum, { snrDb }) => sum + snrDb, 0) / own.length,
	};
}
