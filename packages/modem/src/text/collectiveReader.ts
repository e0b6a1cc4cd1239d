import { exp, log } from "@skipwright/units";
import { COPY_PLACES } from "./collective.ts";
import { LOST } from "./printer.ts";
import { ALPHA, RPT, SEVEN_UNIT, SIGNAL_BITS } from "./sevenUnit.ts";

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
	/** Of the second copy's last bit, or of the stream's last one where that copy lies beyond it. */
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
export const PAIR_S = 0.14;
/** Bits by which a decision on signal and phase lags at least: 10.2 s. */
const LAG_BITS = 73 * PAIR_BITS;
/** How many more are gathered before the course is followed back, which takes as long for one as for all of them. */
const DECIDED_BITS = 8 * PAIR_BITS;
const RING_BITS = LAG_BITS + DECIDED_BITS + COPY_BITS;

/** Largest ratio believed of one bit: none is surer than 3000 to 1. */
const SOFTEST_LIMIT = 8;
/** Chance that a copy is struck out whole (static, a fade, another signal) whatever its bits claim. */
const STRUCK_COPY = 0.02;
/** Chance that a pair is: bounds what one bad pair can weigh against the phase. */
const STRUCK_PAIR = 0.1;
/** Share of idle signals and of phasing pairs against any one character. Without it, idle signals read as well from any of seven starts. */
const IDLE_WEIGHT = 4;
const WEIGHTS_SUM = SEVEN_UNIT.length - 1 + 2 * IDLE_WEIGHT;

/** Nats. Evidence needed before text is believed to begin; four pairs of a clear signal give it. */
const BEGIN_COST = 24;
/** Nats. What leaving the text, and a slip of the clock by whole bits, must be worth. */
const LEAVE_COST = 2;
const SLIP_COST = 10;

/** A signal whose likeliest reading is less sure than this is lost. */
const SURE = 0.9;

/** Per signal, as -1 (B is a 1 bit) and +1: signs to apply. */
const ELEMENTS: readonly Int8Array[] = SEVEN_UNIT.map(({ sent }) => Int8Array.from(sent, (element) => (element === "B" ? 1 : 0)));

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
	const scores = new Float64Array(STATES).fill(Number.NEGATIVE_INFINITY);
	scores[NO_TEXT] = 0;
	const from = Array.from({ length: SENSES }, () => new Int8Array(RING_BITS));
	const fromNoText = new Int8Array(RING_BITS);
	const read = Array.from({ length: SENSES }, () => new Int8Array(RING_BITS));
	const marks: (BitMark | undefined)[] = new Array(RING_BITS);
	let bits = 0;
	let decided = 0;
	for (const window of windows) window.fill(1);

	function take(soft: number, mark: BitMark): void {
		const at = bits % RING_BITS;
		marks[at] = mark;
		const limited = Number.isNaN(soft) ? 0 : Math.min(SOFTEST_LIMIT, Math.max(-SOFTEST_LIMIT, soft));
		higher[bits % SIGNAL_BITS] = 2 / (1 + exp(-limited));
		lower[bits % SIGNAL_BITS] = 2 / (1 + exp(limited));
		const phase = bits % PAIR_BITS;
		let bestText = NO_TEXT;
		for (let state = 1; state < STATES; state++) if (bestText === NO_TEXT || scores[state]! > scores[bestText]!) bestText = state;
		const noText = scores[NO_TEXT]!;
		const bestScore = scores[bestText]!;
		for (let sense = 0; sense < SENSES; sense++) {
			const evidence = readPair(sense, at);
			const state = 1 + sense * PAIR_BITS + phase;
			let best = scores[state]!;
			let source = state;
			if (noText - BEGIN_COST > best) {
				best = noText - BEGIN_COST;
				source = NO_TEXT;
			}
			if (bestScore - SLIP_COST > best) {
				best = bestScore - SLIP_COST;
				source = bestText;
			}
			from[sense]![at] = source;
			scores[state] = best + evidence;
		}
		const leaves = bestScore - LEAVE_COST > noText;
		fromNoText[at] = leaves ? bestText : NO_TEXT;
		if (leaves) scores[NO_TEXT] = bestScore - LEAVE_COST;
		bits++;
	}

	/** The pair that ends with this bit: notes its likeliest reading and returns its evidence, nats. */
	function readPair(sense: number, at: number): number {
		const window = windows[sense]!;
		const [one, zero] = sense === 0 ? [higher, lower] : [lower, higher];
		const second = (bits % (COPY_BITS + 1)) * CODES;
		const first = ((bits + 1) % (COPY_BITS + 1)) * CODES; // COPY_BITS ago
		const oldest = bits + 1; // of the seven bits, in their ring
		let sum = 0;
		let best = 0;
		let bestCode = LOST;
		for (let code = 0; code < CODES; code++) {
			const elements = ELEMENTS[code]!;
			let product = 1;
			for (let i = 0; i < SIGNAL_BITS; i++) product *= (elements[i] === 1 ? one : zero)[(oldest + i) % SIGNAL_BITS]!;
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
		read[sense]![at] = best > SURE * sum ? bestCode : LOST;
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
				state = fromNoText[at]!;
				continue;
			}
			const sense = state > PAIR_BITS ? 1 : 0;
			if ((state - 1) % PAIR_BITS !== bit % PAIR_BITS) continue;
			if (bit < until) signals.push({ code: read[sense]![at]!, mark: marks[at]!, isInverted: sense === 1 });
			state = from[sense]![at]!;
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
			for (let i = 0; i < COPY_BITS; i++) take(0, last); // nothing is known of second copies beyond the end
			return decide(bits);
		},
	};
}
