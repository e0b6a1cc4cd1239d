import { exp, log } from "@skipwright/units";
import type { PathCharacter } from "./startStopPath.ts";

/** Bits. The most that one broken start or stop can cost: a crash of static must not end a transmission. */
const WORST_BITS = -6;
const LN2 = Math.LN2;

/**
 * How often each combination comes, in thousandths: plain language and groups of figures half and half, a rough mean from memory. Only its
 * gross shape matters: random combinations score below 0, any text above.
 */
const CHANCE_THOUSANDTHS = [
	4, 80, 24, 41, 151, 25, 59, 43, 24, 17, 55, 4, 35, 9, 12, 4, 67, 4, 16, 41, 24, 40, 39, 32, 61, 7, 9, 24, 19, 10, 13, 15,
];

/**
 * Bits of 2 that starts and stops bring by chance: the likeliest course through random bits finds itself a start nearly always and a stop
 * in three cases of four (measured), so that a whole character says little, and a broken one much.
 */
const CHANCE_BITS = 1.5;
/** A code that came among so many before it proves nothing: idle patterns, dots and phasing signals repeat themselves. */
const REPEATS = 3;
/** Bits of 2 that a character must bring to belong to a transmission that is there. */
const BELONGING_BITS = 1;

/** Nats of all elements together: at Es/N0 of 8 dB a character has 28 on the mean, noise alone about 3. */
const LEAST_NATS = 7;

/** A sum of bits that begins anew at 0 and remembers its highest. */
export interface Score {
	readonly bits: number;
	readonly highestBits: number;
}

const NOTHING: Score = { bits: 0, highestBits: 0 };

function added({ bits, highestBits }: Score, gain: number): Score {
	const sum = bits + gain;
	return sum <= 0 ? NOTHING : { bits: sum, highestBits: Math.max(sum, highestBits) };
}

/** How well the characters of one reading fit a teletype. */
export interface Framing {
	add(character: PathCharacter): void;
	/** Starts and stops alone: 0 where a transmission may begin, falling where it has ended. */
	belonging(): Score;
	/** Starts, stops and what texts hold, against chance. */
	proof(): Score;
}

export function createFraming(): Framing {
	let [belonging, proof] = [NOTHING, NOTHING];
	const before: number[] = [];
	return {
		add(character) {
			const { code, startNats, stopNats } = character;
			const bits = framingBits(startNats) + framingBits(stopNats);
			belonging = added(belonging, isThere(character) ? bits - BELONGING_BITS : -1);
			const framing = bits - CHANCE_BITS;
			const text = log((32 * CHANCE_THOUSANDTHS[code]!) / 1_000) / LN2;
			proof = added(proof, before.includes(code) ? Math.min(0, framing) : framing + text);
			before.push(code);
			if (before.length > REPEATS) before.shift();
		},
		belonging: () => belonging,
		proof: () => proof,
	};
}

/** There is a signal in the character, and not noise alone. */
export function isThere({ nats }: PathCharacter): boolean {
	return nats > LEAST_NATS;
}

/** log2 of 2 p, p the chance that the element is as it should be, from its log likelihood ratio: 1 when sure, 0 when even. */
function framingBits(nats: number): number {
	return Math.max(WORST_BITS, 1 - (nats < -30 ? -nats : log(1 + exp(-nats))) / LN2);
}
