import { exp, log } from "@skipwright/units";
import type { Evidence } from "./bitEvidence.ts";
import { ENDS, FORMATS } from "./codeWords.ts";
import { PHASING_DX_COUNT, RX_AFTER_DX } from "./sequence.ts";
import { elementsOf, SYMBOL_ELEMENTS, SYMBOLS } from "./tenUnitCode.ts";

/** Symbols between the format specifier and the end of sequence: as few as can carry anything, as many as any format of M.493 asks for. */
const FEWEST_FIELDS = 4;
const MOST_FIELDS = 34;

/** Bits of the longest call. */
export const LONGEST_CALL_BITS = bitsOf(MOST_FIELDS);

/** Below this chance of being right a symbol counts as lost. */
const SURE_SYMBOL = 0.95;
/** And a whole call, the check used to choose, as not read. */
const SURE_CALL = 0.99;
/** Below this chance of its likeliest symbol nothing was heard in a place, and the check may not choose for it. */
const HEARD_SYMBOL = 0.1;
/** An end of sequence is there when it is so much likelier than chance (natural logarithm): one clean copy has 7. */
const SURE_END = 5;

/** Odds beforehand that a call is sent with a check that is wrong, or that its bits lie worse than they say. */
const WRONG_CHECK = 1e-4;

/** Symbols so much less likely than the best of their place are passed over: more than three bits wrong in both copies of a clean one. */
const LEAST_SHARE = 1e-15;

const LN_SYMBOLS = log(SYMBOLS);

export interface SoftCall {
	/** Format specifier once, then to the end of sequence; null for a lost symbol. Cut where no end was found. */
	readonly symbols: readonly (number | null)[];
	readonly ecc: number | null;
	/** All symbols read and the check agrees. */
	readonly isSure: boolean;
	/** Symbols that the check chose against what their bits alone say. */
	readonly corrected: number;
	/** How much likelier (natural logarithm) the bits are as some call than as chance. */
	readonly evidence: number;
	/** Bits from the first phasing character to the end. */
	readonly bits: number;
}

/**
 * The likeliest call in the bits after a phasing sequence that begins at `start`. Both copies of each symbol count together; of all
 * calls of all lengths whose check agrees, the likeliest is taken if it leaves the others, and a wrong check, no chance worth naming.
 * Otherwise each symbol stands for itself, and those that are not sure are lost.
 */
export function softCall(bits: Evidence, start: number): SoftCall {
	const fields = Array.from({ length: MOST_FIELDS + 2 }, (_, i) => copies(bits, start, i + 2, false));
	const format = restricted(addInto(copies(bits, start, 0, false), copies(bits, start, 1, false)), FORMATS.codes);
	const ends = fields.map((field, i) => restricted(endEvidence(bits, start, i + 2, field), ENDS.codes));
	const paths = checkedPaths(format, fields, ends);
	const { length, evidence } = paths;
	const places = [format, ...fields.slice(0, length), ends[length]!, fields[length + 1]!];
	const plain = places.map(surest);
	const end = plain.at(-2)!;
	const isWhole = ends[length]![end.symbol]! > SURE_END;
	const alone = plain.map(({ symbol, chance }) => (chance < SURE_SYMBOL ? null : symbol));
	const agrees = !alone.includes(null) && alone.reduce<number>((sum, symbol) => sum ^ symbol!, 0) === 0; // none is null
	const taken = { evidence, bits: bitsOf(length) };
	const isHeard = plain.every(({ chance }) => chance > HEARD_SYMBOL);
	if (isWhole && (agrees || (isHeard && paths.chance > SURE_CALL))) {
		const symbols = agrees ? (alone as number[]) : paths.symbols; // none is lost
		const corrected = symbols.filter((symbol, i) => symbol !== plain[i]!.symbol).length;
		return { symbols: symbols.slice(0, -1), ecc: symbols.at(-1)!, isSure: true, corrected, ...taken };
	}
	if (isWhole) return { symbols: alone.slice(0, -1), ecc: alone.at(-1)!, isSure: false, corrected: 0, ...taken };
	return { ...cutCall(format, fields), isSure: false, corrected: 0, evidence };
}

/** Bits from the first phasing character to the end: beside the fields the format twice, the end three times and the check. */
function bitsOf(fields: number): number {
	return 2 * (PHASING_DX_COUNT + fields + 6) * SYMBOL_ELEMENTS;
}

/** What is left of a call without an end: its symbols as far as they can be read. */
function cutCall(format: Float64Array, fields: readonly Float64Array[]): Pick<SoftCall, "symbols" | "ecc" | "bits"> {
	const symbols = [format, ...fields].map(surest).map(({ symbol, chance }) => (chance < SURE_SYMBOL ? null : symbol));
	const kept = symbols.slice(0, symbols.findLastIndex((symbol) => symbol !== null) + 1);
	return { symbols: kept, ecc: null, bits: 2 * (PHASING_DX_COUNT + 1 + kept.length) * SYMBOL_ELEMENTS };
}

/** Evidence of each symbol in message place `place` (0 and 1 hold the format), from both copies or the first alone. */
function copies(bits: Evidence, start: number, place: number, isFirstAlone: boolean): Float64Array {
	const sums = new Float64Array(SYMBOLS);
	const character = 2 * (PHASING_DX_COUNT + place);
	addCopy(sums, bits, start + character * SYMBOL_ELEMENTS);
	if (!isFirstAlone) addCopy(sums, bits, start + (character + RX_AFTER_DX) * SYMBOL_ELEMENTS);
	return sums;
}

/** Bits that were not heard say nothing. */
function addCopy(sums: Float64Array, { high, low }: Evidence, at: number): void {
	for (let i = 0; i < SYMBOL_ELEMENTS; i++) {
		const [b, y] = [high[at + i] ?? 0, low[at + i] ?? 0];
		if (b === y) continue;
		const isB = B_AT[i]!;
		for (let symbol = 0; symbol < sums.length; symbol++) sums[symbol] = sums[symbol]! + (isB[symbol] === 1 ? b : y);
	}
}

/** For each place of an element, which symbols have B there. */
const B_AT = Array.from({ length: SYMBOL_ELEMENTS }, (_, place) =>
	Uint8Array.from({ length: SYMBOLS }, (__, symbol) => elementsOf(symbol)[place]!),
);

/** The end of sequence comes twice more, without second copies, after the check. */
function endEvidence(bits: Evidence, start: number, place: number, own: Float64Array): Float64Array {
	const again = addInto(copies(bits, start, place + 2, true), copies(bits, start, place + 3, true));
	return addInto(again, own);
}

function addInto(sums: Float64Array, more: Float64Array): Float64Array {
	for (let i = 0; i < sums.length; i++) sums[i] = sums[i]! + more[i]!;
	return sums;
}

function restricted(evidence: Float64Array, codes: readonly number[]): Float64Array {
	return evidence.map((value, symbol) => (codes.includes(symbol) ? value : Number.NEGATIVE_INFINITY));
}

/** The likeliest symbol and its chance of being right, each held alike likely beforehand. */
function surest(evidence: Float64Array): { readonly symbol: number; readonly chance: number } {
	let symbol = 0;
	for (let other = 1; other < SYMBOLS; other++) if (evidence[other]! > evidence[symbol]!) symbol = other;
	let sum = 0;
	for (const value of evidence) sum += exp(value - evidence[symbol]!);
	return { symbol, chance: 1 / sum };
}

interface CheckedPaths {
	/** Fields of the likeliest length. */
	readonly length: number;
	/** The likeliest call of that length whose check agrees, the check last; and its chance among all calls of all lengths. */
	readonly symbols: readonly number[];
	readonly chance: number;
	readonly evidence: number;
}

/**
 * All calls whose check agrees, by the running modulo-2 sum (128 states): the likeliest of each length, and the sum of all of
 * them, against which it is weighed.
 */
function checkedPaths(format: Float64Array, fields: readonly Float64Array[], ends: readonly Float64Array[]): CheckedPaths {
	let best = format;
	let { shares, scale } = sharesOf(format, log(FORMATS.codes.length));
	const chosen: Uint8Array[] = [];
	const lengths: { readonly length: number; readonly path: number; readonly all: number; readonly end: number; readonly ecc: number }[] =
		[];
	for (let length = 0; length <= MOST_FIELDS; length++) {
		const [end, check] = [ends[length]!, fields[length + 1]!];
		if (length >= FEWEST_FIELDS)
			lengths.push({ length, ...closed(best, shares, scale, end, check, length * LN_SYMBOLS + log(FORMATS.codes.length)) });
		const step = extended(best, shares, fields[length]!);
		best = step.best;
		shares = step.shares;
		scale += step.scale;
		chosen.push(step.chosen);
	}
	const top = lengths.reduce((a, b) => (b.all > a.all ? b : a));
	const total = lengths.reduce((sum, { all }) => sum + exp(all - top.all), 0);
	const evidence = top.all + log(total / lengths.length);
	const symbols = [top.end, top.ecc];
	let state = top.end ^ top.ecc;
	for (let i = top.length - 1; i >= 0; i--) {
		const symbol = chosen[i]![state]!;
		symbols.unshift(symbol);
		state ^= symbol;
	}
	return { length: top.length, symbols: [state, ...symbols], chance: exp(top.path - top.all) / total, evidence };
}

/** Likelihoods scaled so that the greatest is 1, and what was taken out (natural logarithm), less the odds of each beforehand. */
function sharesOf(evidence: Float64Array, lnChoices: number): { shares: Float64Array; scale: number } {
	const most = evidence.reduce((a, b) => Math.max(a, b));
	return { shares: evidence.map((value) => exp(value - most)), scale: most - lnChoices };
}

/** One field more: for each running sum, the likeliest way to it and the sum over all ways. */
function extended(best: Float64Array, shares: Float64Array, field: Float64Array) {
	const next = new Float64Array(SYMBOLS).fill(Number.NEGATIVE_INFINITY);
	const all = new Float64Array(SYMBOLS);
	const chosen = new Uint8Array(SYMBOLS);
	const { shares: own, scale } = sharesOf(field, LN_SYMBOLS);
	for (let symbol = 0; symbol < SYMBOLS; symbol++) {
		const [value, share] = [field[symbol]!, own[symbol]!];
		if (share < LEAST_SHARE) continue;
		for (let state = 0; state < SYMBOLS; state++) {
			const to = state ^ symbol;
			const sum = best[state]! + value;
			if (sum > next[to]!) {
				next[to] = sum;
				chosen[to] = symbol;
			}
			all[to] = all[to]! + shares[state]! * share;
		}
	}
	const total = all.reduce((a, b) => a + b, 0);
	return { best: next, shares: all.map((value) => value / total), scale: scale + log(total), chosen };
}

/** An end and the check that it and the running sum ask for. */
function closed(best: Float64Array, shares: Float64Array, scale: number, end: Float64Array, check: Float64Array, lnChoices: number) {
	const lnEnds = log(ENDS.codes.length);
	let found = { path: Number.NEGATIVE_INFINITY, end: ENDS.codes[0]!, ecc: 0 };
	const mostCheck = check.reduce((a, b) => Math.max(a, b));
	const mostEnd = end.reduce((a, b) => Math.max(a, b));
	let sum = 0;
	let ends = 0;
	for (const code of ENDS.codes) {
		ends += exp(end[code]! - mostEnd);
		for (let state = 0; state < SYMBOLS; state++) {
			const ecc = state ^ code;
			const path = best[state]! + end[code]! + check[ecc]! - lnChoices - lnEnds;
			if (path > found.path) found = { path, end: code, ecc };
			sum += shares[state]! * exp(end[code]! - mostEnd + check[ecc]! - mostCheck);
		}
	}
	const anyCheck = check.reduce((total, value) => total + exp(value - mostCheck), 0) / SYMBOLS;
	return { ...found, all: scale + mostEnd + mostCheck - lnEnds + log(sum + WRONG_CHECK * ends * anyCheck) };
}
