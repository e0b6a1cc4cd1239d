import { log, pow } from "@skipwright/units";
import { MODEM_RATE_HZ } from "../receiver.ts";
import { HF_CHANNELS, type HfChannel, throughHfChannel } from "../signal/hfChannel.ts";
import { joined, silence } from "../signal/join.ts";
import { prng } from "../signal/random.ts";
import { envelopeErrorRate, orthogonalErrorRate } from "./errorTheory.ts";
import { baudOf, compared, demodulated, type Keying, keyed, noisy, randomBits } from "./keying.sample.ts";

/** One way of keying and one channel, and the ratios at which errors are counted. */
export interface Trial {
	readonly name: string;
	readonly keying: Keying;
	readonly channel?: HfChannel;
	readonly ebN0Db: readonly number[];
}

/** Errors counted at one ratio, through the whole demodulator. */
export interface Counted {
	readonly ebN0Db: number;
	readonly bits: number;
	readonly wrong: number;
}

const OFF_TUNE = { centreHz: 1_760, fastPpm: 300 };

export const STEADY_TRIALS: readonly Trial[] = [
	{ name: "two oscillators, on tune", keying: { isContinuous: false }, ebN0Db: [5, 7, 9, 10, 11, 11.5] },
	{ name: "two oscillators, 60 Hz off, 300 ppm", keying: { ...OFF_TUNE, isContinuous: false }, ebN0Db: [5, 7, 9, 10, 11, 11.5] },
	{ name: "continuous phase, on tune", keying: {}, ebN0Db: [3, 4, 5, 6, 7, 8] },
	{ name: "continuous phase, 60 Hz off, 300 ppm", keying: OFF_TUNE, ebN0Db: [3, 4, 5, 6, 7, 8] },
];

export const FADING_TRIALS: readonly Trial[] = [
	{ name: "two oscillators", keying: { isContinuous: false }, channel: HF_CHANNELS.midModerate, ebN0Db: [6, 10, 14, 18, 22, 26] },
	{ name: "continuous phase", keying: {}, channel: HF_CHANNELS.midModerate, ebN0Db: [6, 10, 14, 18, 22, 26] },
];

/** Counts errors in so many bits at each ratio. Where a carrier was not found in time, the bits that it lost count as half wrong. */
export function countedErrors({ keying, channel, ebN0Db }: Trial, bits: number): readonly Counted[] {
	const sent = randomBits(bits, 1);
	const before = silence(1);
	const clean = joined(before, keyed(sent, keying), silence(2));
	const received = channel === undefined ? clean : throughHfChannel(clean, channel, prng(2));
	return ebN0Db.map((db, i) => {
		const { seen, wrong } = compared(demodulated(noisy(received, db, 3 + i)), sent, before.length / MODEM_RATE_HZ, baudOf(keying));
		return { ebN0Db: db, bits, wrong: wrong + Math.round((bits - seen) / 2) };
	});
}

/** Eb/N0, dB, that a curve of rates falling with the ratio needs for `rate`: by halving, within 0.001 dB. */
export function ratioFor(rate: number, curve: (ebN0Db: number) => number): number {
	let [low, high] = [-20, 40];
	while (high - low > 0.001) {
		const middle = (low + high) / 2;
		if (curve(middle) > rate) low = middle;
		else high = middle;
	}
	return (low + high) / 2;
}

/** Eb/N0, dB, at which counts reach `rate`: a straight line of the rate's logarithm between two of them; null where they do not. */
export function countedRatioFor(rate: number, counts: readonly Counted[]): number | null {
	for (let i = 1; i < counts.length; i++) {
		const [a, b] = [counts[i - 1]!, counts[i]!];
		if (a.wrong / a.bits < rate || b.wrong / b.bits > rate || b.wrong === 0) continue;
		const part = log(a.wrong / a.bits / rate) / log(a.wrong / a.bits / (b.wrong / b.bits));
		return a.ebN0Db + part * (b.ebN0Db - a.ebN0Db);
	}
	return null;
}

export interface Reference {
	readonly name: string;
	readonly rate: (ebN0Db: number) => number;
}

export const STEADY_REFERENCES: readonly Reference[] = [
	{ name: "textbook: 0.5 exp(-Eb/2N0)", rate: orthogonalErrorRate },
	{ name: "the same for tones 1.7 turns a bit apart", rate: (db) => envelopeErrorRate(db, 1.7) },
];

/** Rayleigh fading of both tones alike: the textbook's rate, averaged over an exponential distribution of Eb/N0. */
export const FADING_REFERENCES: readonly Reference[] = [
	{ name: "textbook, Rayleigh: 1/(2 + Eb/N0)", rate: (db) => 1 / (2 + pow(10, db / 10)) },
];
