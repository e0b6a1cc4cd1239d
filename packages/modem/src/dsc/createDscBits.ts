import type { SoftBits } from "../fsk/demodulate.ts";
import type { HeardBase } from "../receiver.ts";
import { bitEvidence, type Evidence } from "./bitEvidence.ts";
import type { DscCall, DscFault } from "./call.ts";
import { DSC_BAUD } from "./dscCall.ts";
import { parseDsc } from "./parseDsc.ts";
import { PHASING_BITS, phasingEvidence } from "./phasing.ts";
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

/** Reads calls from soft bits, of any number of carriers at once. */
export interface DscBits {
	/** Takes what a frame has brought, the stream being at `nowS`; returns the calls that are complete with it. */
	take(bits: readonly SoftBits[], nowS: number): readonly HeardDsc[];
	end(): readonly HeardDsc[];
}

/**
 * Natural logarithms of how much likelier than chance: a phasing sequence (three clean symbols of it give 20), the call after it, the
 * same with symbols lost. Bits of noise reach the second once in e^20 phasing sequences at most; a call that can be read has 70 and more.
 */
const PHASING = 10;
const CALL = 20;
const CALL_WITH_LOSSES = 30;
/** Least share of symbols read in a call that is reported with losses. */
const SHARE_READ = 0.5;

/** Bits said to have been before the first, so that a phasing sequence is recognised of which only the end was heard. */
const BEFORE = PHASING_BITS - 30;

/** Seconds within which an alert that comes again is part of the same attempt, and until its phasing must have been seen. */
const REPEAT_S = 4;
const REPEAT_SEEN_S = 7;
/** Seconds in which another carrier may bring the same call better; and Hz within which two calls at once are one. */
const SETTLE_S = 1;
const SAME_HZ = 200;

interface Opening {
	readonly start: number;
	readonly isInverted: boolean;
	readonly evidence: number;
}

interface Carrier {
	high: Float64Array;
	low: Float64Array;
	atS: Float64Array;
	/** Bits held, and how many have been dropped before them. */
	count: number;
	openings: readonly Opening[];
	readonly notes: Note[];
}

/** What the demodulator said of the carrier from a bit on. */
interface Note {
	readonly from: number;
	readonly to: number;
	readonly bits: Pick<SoftBits, "centreHz" | "uncertaintyHz" | "snrDb">;
}

interface Waiting {
	readonly heard: HeardDsc;
	readonly evidence: number;
	readonly dueS: number;
}

export function createDscBits(): DscBits {
	const carriers = new Map<number, Carrier>();
	let waiting: readonly Waiting[] = [];

	const take = (bits: readonly SoftBits[], nowS: number) => {
		for (const chunk of bits) {
			const carrier = carriers.get(chunk.carrier) ?? newCarrier();
			carriers.set(chunk.carrier, carrier);
			addBits(carrier, chunk);
			closeOpenings(carrier, chunk.isOver ? Number.POSITIVE_INFINITY : carrier.count, nowS);
			if (chunk.isOver) carriers.delete(chunk.carrier);
			else forget(carrier);
		}
		return due(nowS);
	};

	return {
		take,
		end() {
			for (const carrier of carriers.values()) closeOpenings(carrier, Number.POSITIVE_INFINITY, 0);
			carriers.clear();
			return due(Number.POSITIVE_INFINITY);
		},
	};

	/** Reads the calls that all bits are there of. */
	function closeOpenings(carrier: Carrier, until: number, nowS: number): void {
		const isComplete = ({ start }: Opening) => start + LONGEST_CALL_BITS <= until;
		for (const opening of carrier.openings.filter(isComplete)) {
			const found = heardOf(carrier, opening);
			if (found !== null) waiting = merged(waiting, { ...found, dueS: nowS + SETTLE_S });
		}
		carrier.openings = carrier.openings.filter((opening) => !isComplete(opening));
	}

	function due(nowS: number): readonly HeardDsc[] {
		const starts = [...carriers.values()].flatMap(({ openings, atS }) => openings.map(({ start }) => atS[start]!));
		const waitsOn = ({ heard: { endS, call }, dueS }: Waiting) => {
			if (dueS > nowS) return true;
			if (call?.format !== "distress alert" || nowS === Number.POSITIVE_INFINITY) return false;
			return nowS < endS + REPEAT_SEEN_S || starts.some((startS) => startS < endS + REPEAT_S + LONG_DOTS / DSC_BAUD);
		};
		const ready = waiting.filter((one) => !waitsOn(one));
		waiting = waiting.filter(waitsOn);
		return ready.map(({ heard }) => heard).sort((a, b) => a.startS - b.startS);
	}
}

function newCarrier(): Carrier {
	const size = 4 * LONGEST_CALL_BITS;
	return {
		high: new Float64Array(size),
		low: new Float64Array(size),
		atS: new Float64Array(size),
		count: 0,
		openings: [],
		notes: [],
	};
}

function addBits(carrier: Carrier, { softs, atS, centreHz, uncertaintyHz, snrDb }: SoftBits): void {
	if (softs.length === 0) return;
	makeRoom(carrier, softs.length + BEFORE);
	if (carrier.count === 0) {
		for (let i = 0; i < BEFORE; i++) carrier.atS[i] = atS[0]! - (BEFORE - i) / DSC_BAUD;
		carrier.count = BEFORE;
	}
	carrier.notes.push({ from: carrier.count, to: carrier.count + softs.length, bits: { centreHz, uncertaintyHz, snrDb } });
	for (let i = 0; i < softs.length; i++) {
		const { high, low } = bitEvidence(softs[i]!);
		carrier.high[carrier.count] = high;
		carrier.low[carrier.count] = low;
		carrier.atS[carrier.count] = atS[i]!;
		carrier.count++;
		if (carrier.count >= PHASING_BITS) lookForPhasing(carrier, carrier.count - PHASING_BITS);
	}
}

function makeRoom(carrier: Carrier, more: number): void {
	while (carrier.count + more > carrier.high.length) {
		for (const name of ["high", "low", "atS"] as const) {
			const wider = new Float64Array(2 * carrier[name].length);
			wider.set(carrier[name]);
			carrier[name] = wider;
		}
	}
}

/** Drops bits that no open call needs any more. */
function forget(carrier: Carrier): void {
	const keep = Math.min(carrier.count - PHASING_BITS, ...carrier.openings.map(({ start }) => start)) - LONG_DOTS;
	if (keep < LONGEST_CALL_BITS) return;
	for (const name of ["high", "low", "atS"] as const) carrier[name].copyWithin(0, keep, carrier.count);
	carrier.count -= keep;
	carrier.openings = carrier.openings.map((opening) => ({ ...opening, start: opening.start - keep }));
	const notes = carrier.notes.splice(0).filter(({ to }) => to > keep);
	carrier.notes.push(...notes.map(({ from, to, bits }) => ({ from: from - keep, to: to - keep, bits })));
}

/** Opens a call where a phasing sequence begins, in either sense; of several places close together the likeliest. */
function lookForPhasing(carrier: Carrier, start: number): void {
	const { upright, inverted } = phasingEvidence(carrier, start);
	const evidence = Math.max(upright, inverted);
	if (evidence < PHASING) return;
	const near = carrier.openings.filter((opening) => start - opening.start < PHASING_BITS);
	if (near.some((opening) => opening.evidence >= evidence)) return;
	carrier.openings = [
		...carrier.openings.filter((opening) => !near.includes(opening)),
		{ start, isInverted: inverted > upright, evidence },
	];
}

function inversionOf({ high, low }: Evidence): Evidence {
	return { high: low, low: high };
}

function heardOf(carrier: Carrier, { start, isInverted, evidence: phasing }: Opening): Omit<Waiting, "dueS"> | null {
	const { high, low, atS, count } = carrier;
	const end = Math.min(count, start + LONGEST_CALL_BITS);
	const held = { high: high.subarray(0, end), low: low.subarray(0, end) };
	const bits = isInverted ? inversionOf(held) : held;
	const call = softCall(bits, start);
	if (!isWorthReporting(call)) return null;
	const first = start - dotsBefore(bits, start);
	const last = Math.min(count, start + call.bits) - 1;
	const { ok, ...reading } = parseDsc(call.symbols, call.ecc);
	const halfBitS = 0.5 / DSC_BAUD;
	const heard: HeardDsc = {
		kind: "dsc",
		startS: Math.max(0, atS[first]! - halfBitS),
		endS: atS[last]! + halfBitS,
		...carrierNotes(carrier.notes, first, last),
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
		times: 1,
	};
	return { heard, evidence: phasing + call.evidence };
}

function isWorthReporting({ symbols, isSure, evidence }: SoftCall): boolean {
	if (isSure) return evidence > CALL;
	const read = symbols.filter((symbol) => symbol !== null).length;
	return evidence > CALL_WITH_LOSSES && symbols.length > 1 && symbols[0] !== null && read >= SHARE_READ * symbols.length;
}

/** Bits of the dot pattern before the phasing sequence, as far back as it can be made out. */
function dotsBefore({ high, low }: Evidence, start: number): number {
	let [sum, most, length] = [0, 0, 0];
	for (let back = 1; back <= Math.min(LONG_DOTS, start); back++) {
		sum += back % 2 === 1 ? low[start - back]! : high[start - back]!;
		if (sum >= most) [most, length] = [sum, back];
	}
	return length;
}

function carrierNotes(notes: readonly Note[], first: number, last: number): Pick<HeardBase, "audioHz" | "uncertaintyHz" | "snrDb"> {
	const own = notes.filter(({ from, to }) => from <= last && to > first).map(({ bits }) => bits);
	const mean = (value: (bits: Note["bits"]) => number) => own.reduce((sum, bits) => sum + value(bits), 0) / own.length;
	return {
		audioHz: mean(({ centreHz }) => centreHz),
		uncertaintyHz: Math.min(...own.map(({ uncertaintyHz }) => uncertaintyHz)),
		snrDb: mean(({ snrDb }) => snrDb),
	};
}

/** One call, one item: the same heard twice at once, worse copies beside a better, and an alert that is sent again. */
function merged(waiting: readonly Waiting[], found: Waiting): readonly Waiting[] {
	const twin = waiting.find(({ heard }) => isSameSignal(heard, found.heard));
	if (twin !== undefined) return waiting.map((one) => (one === twin ? better(twin, found) : one));
	const first = waiting.find(({ heard }) => isRepeat(heard, found.heard));
	if (first === undefined) return [...waiting, found];
	const { heard, evidence, dueS } = better(first, found);
	const { startS, times } = first.heard;
	const whole = { ...heard, startS, endS: found.heard.endS, times: times + 1 };
	return waiting.map((one) => (one === first ? { heard: whole, evidence, dueS: Math.max(dueS, found.dueS) } : one));
}

function isSameSignal(a: HeardDsc, b: HeardDsc): boolean {
	const common = Math.min(a.endS, b.endS) - Math.max(a.startS, b.startS);
	const atOnce = common > 0.5 * Math.min(a.endS - a.startS, b.endS - b.startS);
	const isSame = a.symbols.length === b.symbols.length && a.symbols.every((symbol, i) => symbol === b.symbols[i]);
	return atOnce && (isSame || (Math.abs(a.audioHz - b.audioHz) < SAME_HZ && !(a.ok && b.ok)));
}

/** An alert that follows on the same alert, as far as either could be read. */
function isRepeat(before: HeardDsc, after: HeardDsc): boolean {
	if (before.call?.format !== "distress alert" || after.call?.format !== "distress alert") return false;
	if (Math.abs(after.startS - before.endS) > REPEAT_S) return false;
	if (before.isInverted !== after.isInverted) return false;
	const pairs = before.symbols.map((symbol, i) => [symbol, after.symbols[i] ?? null]).filter((pair) => !pair.includes(null));
	return pairs.length >= SHARE_READ * before.symbols.length && pairs.every(([a, b]) => a === b);
}

function better(a: Waiting, b: Waiting): Waiting {
	if (a.heard.ok !== b.heard.ok) return a.heard.ok ? a : b;
	return b.evidence > a.evidence ? b : a;
}
