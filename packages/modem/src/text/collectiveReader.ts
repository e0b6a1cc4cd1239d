import { exp, log } from "@skipwright/units";
import { COPY_PLACES } from "./collective.ts";
import { LOST } from "./printer.ts";
import { ALPHA, FIGS, RPT, SEVEN_UNIT, SIGNAL_BITS } from "./sevenUnit.ts";

/** What is known of a bit besides its likelihood. */
export interface BitMark {
	/** Its time, s from the start of the stream. */
	readonly atS: number;
	/** As estimated then. */
	readonly centreHz: number;
	readonly uncertaintyHz: number;
	readonly snrDb: number;
}

/** One signal read from both its copies. */
export interface ReadSignal {
	/** Place in `SEVEN_UNIT`, or `LOST`. */
	readonly code: number;
	/** Chance that another was sent. */
	readonly doubt: number;
	/** Of the second copy's last bit, which may lie beyond the stream's end. */
	readonly mark: BitMark;
	/** The tones are exchanged: Y was the higher. */
	readonly isInverted: boolean;
}

/** Reads collective FEC out of a stream of soft bits, and nothing out of anything else. */
export interface CollectiveReader {
	/** Takes one bit: its log-likelihood ratio, positive for the higher tone. Returns signals of some seconds ago, once decided. */
	bit(soft: number, mark: BitMark): readonly ReadSignal[];
	/** The rest, with signals of which one copy lies beyond the end. */
	end(): readonly ReadSignal[];
}

/** From the last bit of a first copy to that of its second: 35. */
const COPY_BITS = COPY_PLACES * SIGNAL_BITS;
/** A first and a second copy alternate. */
const PAIR_BITS = 2 * SIGNAL_BITS;
/** s, at 100 baud. */
const BIT_S = 0.01;
export const PAIR_S = PAIR_BITS * BIT_S;
/** Bits by which a decision on signal and phase lags at least: 10.2 s. */
const LAG_BITS = 73 * PAIR_BITS;
/** How many more are gathered before the course is followed back, which takes as long for one as for all of them. */
const DECIDED_BITS = 8 * PAIR_BITS;
const RING_BITS = LAG_BITS + DECIDED_BITS + COPY_BITS;

/**
 * Ratios beyond 4 count for a fifth only, and for 16 at most: static, and what follows a lost lock, are surer of themselves than
 * right. Found by trial on made signals: it costs nothing in noise and fading, and halves what static crashes cost.
 */
const BELIEVED = 4;
const BELIEVED_BEYOND = 0.2;
const BELIEVED_MOST = 16;
/** Chance that a copy is struck out whole (static, a fade, another signal) whatever its bits claim. */
const STRUCK_COPY = 0.0002;
/** Chance that a pair is: bounds what one bad pair can weigh against the phase. */
const STRUCK_PAIR = 0.1;
/** Share of idle signals and of phasing pairs against any one character. Without it, idle signals read as well from any of seven starts. */
const IDLE_WEIGHT = 4;
const WEIGHTS_SUM = SEVEN_UNIT.length - 1 + 2 * IDLE_WEIGHT;

/** Nats. Evidence needed before text is believed to begin; four pairs of a clear signal give it. */
const BEGIN_COST = 24;
/** Nats. What leaving the text must be worth. */
const LEAVE_COST = 2;

/** A signal whose likeliest reading is less sure than this is lost. */
const SURE = 0.8;
/** One to figures must be surer: a text has few shifts, and a false one misprints all until the next. */
const SURE_FIGS = 0.95;

/** First three and last four elements of each signal as numbers, B a 1: their likelihoods are worked out once for all signals. */
const HEAD_BITS = 3;
const TAIL_BITS = SIGNAL_BITS - HEAD_BITS;
const numberOf = (elements: string) => [...elements].reduce((value, element) => 2 * value + (element === "B" ? 1 : 0), 0);
const HEADS = Uint8Array.from(SEVEN_UNIT, ({ sent }) => numberOf(sent.slice(0, HEAD_BITS)));
const TAILS = Uint8Array.from(SEVEN_UNIT, ({ sent }) => numberOf(sent.slice(HEAD_BITS)));
/** XOR with these exchanges B and Y. */
const ALL_HEAD = (1 << HEAD_BITS) - 1;
const ALL_TAIL = (1 << TAIL_BITS) - 1;

const CODES = SEVEN_UNIT.length;
const SENSES = 2;
/** State 0 is "no text"; the others are sense and phase: the place of a second copy's last bit within fourteen. */
const STATES = 1 + SENSES * PAIR_BITS;
const NO_TEXT = 0;

/**
 * The likeliest course through 28 phases (place of the pair among 14 bits, either sense of the tones) and "no text", by dynamic
 * programming: each bit ends a second copy for exactly one phase, and the likelihood of that pair under the 35 signals, against
 * bits by chance, is that phase's evidence. So a stream joined anywhere, a slip and an inversion all find themselves.
 */
export function createCollectiveReader(): CollectiveReader {
	// likelihoods of the last COPY_BITS + 1 windows of seven bits, each against chance, for every signal and either sense
	const windows = Array.from({ length: SENSES }, () => new Float64Array((COPY_BITS + 1) * CODES));
	const higher = new Float64Array(SIGNAL_BITS).fill(1);
	const lower = new Float64Array(SIGNAL_BITS).fill(1);
	const heads = new Float64Array(1 << HEAD_BITS);
	const tails = new Float64Array(1 << TAIL_BITS);
	const scores = new Float64Array(STATES).fill(Number.NEGATIVE_INFINITY);
	scores[NO_TEXT] = 0;
	const begins = Array.from({ length: SENSES }, () => new Uint8Array(RING_BITS)); // 1 where the course comes from "no text"
	const beforeNoText = new Int8Array(RING_BITS); // the state that "no text" was reached from
	const read = Array.from({ length: SENSES }, () => new Int8Array(RING_BITS));
	const doubt = Array.from({ length: SENSES }, () => new Float64Array(RING_BITS));
	const marks: (BitMark | undefined)[] = new Array(RING_BITS);
	let bits = 0;
	let decided = 0;
	for (const window of windows) window.fill(1);

	function take(soft: number, mark: BitMark): void {
		const at = bits % RING_BITS;
		marks[at] = mark;
		const limited = believed(soft);
		higher[bits % SIGNAL_BITS] = 2 / (1 + exp(-limited));
		lower[bits % SIGNAL_BITS] = 2 / (1 + exp(limited));
		const phase = bits % PAIR_BITS;
		products(heads, HEAD_BITS, bits + 1);
		products(tails, TAIL_BITS, bits + 1 + HEAD_BITS);
		let bestText = NO_TEXT;
		for (let state = 1; state < STATES; state++) if (bestText === NO_TEXT || scores[state]! > scores[bestText]!) bestText = state;
		const noText = scores[NO_TEXT]!;
		const bestScore = scores[bestText]!;
		for (let sense = 0; sense < SENSES; sense++) {
			const evidence = readPair(sense, at);
			const state = 1 + sense * PAIR_BITS + phase;
			const isBeginning = noText - BEGIN_COST > scores[state]!;
			begins[sense]![at] = isBeginning ? 1 : 0;
			scores[state] = (isBeginning ? noText - BEGIN_COST : scores[state]!) + evidence;
		}
		const leaves = bestScore - LEAVE_COST > noText;
		beforeNoText[at] = leaves ? bestText : NO_TEXT;
		if (leaves) scores[NO_TEXT] = bestScore - LEAVE_COST;
		bits++;
	}

	/** Likelihoods, against chance, of each way in which `count` bits from the ring's place `from` on can have been sent. */
	function products(out: Float64Array, count: number, from: number): void {
		out[0] = 1;
		for (let i = 0, size = 1; i < count; i++, size *= 2) {
			const at = (from + i) % SIGNAL_BITS;
			for (let value = size - 1; value >= 0; value--) {
				out[2 * value + 1] = out[value]! * higher[at]!;
				out[2 * value] = out[value]! * lower[at]!;
			}
		}
	}

	/** The pair that ends with this bit: notes its likeliest reading and returns its evidence, nats. */
	function readPair(sense: number, at: number): number {
		const window = windows[sense]!;
		const second = (bits % (COPY_BITS + 1)) * CODES;
		const first = ((bits + 1) % (COPY_BITS + 1)) * CODES; // COPY_BITS ago
		const [headMask, tailMask] = sense === 0 ? [0, 0] : [ALL_HEAD, ALL_TAIL];
		let sum = 0;
		let best = 0;
		let bestCode = LOST;
		for (let code = 0; code < CODES; code++) {
			const product = heads[HEADS[code]! ^ headMask]! * tails[TAILS[code]! ^ tailMask]!;
			const likelihood = (1 - STRUCK_COPY) * product + STRUCK_COPY;
			window[second + code] = likelihood;
			const both = likelihood * window[first + code]! * (code === ALPHA ? IDLE_WEIGHT : 1);
			sum += both;
			if (both > best) {
				best = both;
				bestCode = code;
			}
		}
		const phasing = window[second + ALPHA]! * window[first + RPT]! * IDLE_WEIGHT;
		sum += phasing;
		if (phasing > best) {
			best = phasing;
			bestCode = RPT;
		}
		doubt[sense]![at] = 1 - best / sum;
		read[sense]![at] = best > (bestCode === FIGS ? SURE_FIGS : SURE) * sum ? bestCode : LOST;
		return log(((1 - STRUCK_PAIR) * sum) / WEIGHTS_SUM + STRUCK_PAIR);
	}

	/** Follows the likeliest course back and gives the signals on it that are older than `until`. */
	function decide(until: number): readonly ReadSignal[] {
		let state = NO_TEXT;
		for (let other = 1; other < STATES; other++) if (scores[other]! > scores[state]!) state = other;
		const signals: ReadSignal[] = [];
		for (let bit = bits - 1; bit >= decided; bit--) {
			const at = bit % RING_BITS;
			if (state === NO_TEXT) {
				state = beforeNoText[at]!;
				continue;
			}
			const sense = state > PAIR_BITS ? 1 : 0;
			if ((state - 1) % PAIR_BITS !== bit % PAIR_BITS) continue;
			if (bit < until) signals.push({ code: read[sense]![at]!, doubt: doubt[sense]![at]!, mark: marks[at]!, isInverted: sense === 1 });
			if (begins[sense]![at] === 1) state = NO_TEXT;
		}
		decided = until;
		return signals.reverse();
	}

	return {
		bit(soft, mark) {
			take(soft, mark);
			return bits - decided >= LAG_BITS + DECIDED_BITS ? decide(bits - LAG_BITS) : [];
		},
		end() {
			const last = marks[(bits + RING_BITS - 1) % RING_BITS];
			if (last === undefined) return [];
			for (let i = 0; i < COPY_BITS; i++) take(0, { ...last, atS: last.atS + (i + 1) * BIT_S }); // nothing is known there
			return decide(bits);
		},
	};
}

function believed(soft: number): number {
	const size = Math.abs(soft);
	if (!(size > BELIEVED)) return Number.isNaN(soft) ? 0 : soft;
	return Math.sign(soft) * Math.min(BELIEVED_MOST, BELIEVED + BELIEVED_BEYOND * (size - BELIEVED));
}
