import type { SoftBits } from "../src/fsk/demodulate.ts";
import { gaussian, prng } from "../src/signal/random.ts";

/**
 * Log-likelihood ratios of bits as the textbook has them: orthogonal tones, known level and clock, each tone's envelope alone
 * (a receiver that knows everything but the phase). 1 is the higher tone.
 */
export function textbookSofts(bits: readonly number[], ebN0Db: number, seed: number): Float64Array {
	const next = gaussian(prng(seed));
	const ratio = 10 ** (ebN0Db / 10);
	const energy = (isOn: boolean) => ((isOn ? Math.sqrt(ratio) : 0) + next() / Math.SQRT2) ** 2 + next() ** 2 / 2;
	return Float64Array.from(bits, (bit) => {
		const [high, low] = [energy(bit === 1), energy(bit === 0)];
		return logBesselI0(2 * Math.sqrt(ratio * high)) - logBesselI0(2 * Math.sqrt(ratio * low));
	});
}

/** As a demodulator of 100 baud hands them back, in pieces of `piece` bits. */
export function asCarrier(softs: Float64Array, { carrier = 1, piece = 64, fromS = 0 } = {}): readonly SoftBits[] {
	return Array.from({ length: Math.ceil(softs.length / piece) }, (_, i): SoftBits => {
		const part = softs.slice(i * piece, (i + 1) * piece);
		return {
			carrier,
			centreHz: 1_700,
			uncertaintyHz: 1,
			snrDb: 0,
			softs: part,
			atS: part.map((__, k) => fromS + (i * piece + k + 0.5) / 100),
			isOver: (i + 1) * piece >= softs.length,
		};
	});
}

/** Series below 20, the first terms of the asymptotic one above (Abramowitz and Stegun 9.6.12 and 9.7.1). */
function logBesselI0(x: number): number {
	if (x > 20) return x - 0.5 * Math.log(2 * Math.PI * x) + Math.log(1 + 1 / (8 * x) + 9 / (128 * x * x));
	let [term, sum] = [1, 1];
	for (let k = 1; term > 1e-17 * sum; k++) {
		term *= (x / (2 * k)) ** 2;
		sum += term;
	}
	return Math.log(sum);
}

/**
 * Chance that a receiver of hard decisions reads a call whole, by the textbook's error rate 0.5 exp(-Eb/2N0) of non-coherent keying: every
 * symbol, and the check, without a wrong bit in at least one of its copies.
 */
export function hardCallChance(symbols: number, ebN0Db: number, copies: 1 | 2): number {
	const clean = (1 - 0.5 * Math.exp(-(10 ** (ebN0Db / 10)) / 2)) ** 10;
	return (1 - (1 - clean) ** copies) ** (symbols + 1);
}
